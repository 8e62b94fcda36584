import { join } from 'node:path';
import { fileNameOf } from '../export/plain-words.ts';
import { rs274Of } from '../export/rs274.ts';
import { airCut } from '../jig/program/air-cut.ts';
import { levelBoard } from '../jig/program/level-board.ts';
import type { Program } from '../jig/program/program.ts';
import { faultText } from '../job/fault.ts';
import type { Job, Units } from '../job/job.ts';
import { readBedCare, type BedCare } from '../job/readings/bed-care.ts';
import { bedAdvice } from '../measure/bed-advice.ts';
import { acrossPart, effectOnNeeds, onMeasuredBed, partPlaces } from '../measure/bed-effect.ts';
import { bedHeightsOf } from '../measure/bed-surface.ts';
import { surveyOf, type BedSurvey } from '../measure/bed-survey.ts';
import { doubtsOf } from '../measure/doubts.ts';
import { shimPlan } from '../measure/shims.ts';
import { skimPlan } from '../measure/skim.ts';
import { cornerAt, frontUpCorner } from '../setup/place.ts';
import { invariant } from '../num/invariant.ts';
import { bedMap } from '../sheet/bed-map.ts';
import { readProgram } from '../sweep/program/read.ts';
import { bedJson, bedText, type BedFindings } from './bed-text.ts';
import { doubtFaults } from './bed-doubts.ts';
import { EXIT, Refusal } from './exit.ts';
import { find, named, today, valueOf } from './find.ts';
import { loadJob } from './load.ts';
import { saveMeasured } from './save-measured.ts';
import type { Say } from './verbs.ts';
import { writeTogether, type NewFile } from './write-together.ts';

export interface BedOptions {
  readonly json: boolean;
  readonly save: boolean;
  /** Where picture and program go; null: nowhere. */
  readonly out: string | null;
}

/** How the bed lies by its height readings, what that does to a job's part, and what to do about it. */
export function bedVerb(path: string, options: BedOptions, say: Say): number {
  const file = named(path);
  const care = valueOf(path, readBedCare(file, find, today()));
  const isJob = care.shopFile !== path;
  const findings = findingsOf(care, isJob ? loadJob(path).job : null);
  if (options.json) say(bedJson(findings));
  else say(bedText(findings));
  if (options.out !== null) {
    const files = filesOf(findings);
    writeTogether(options.out, files);
    if (!options.json) for (const { name } of files) say(`wrote ${join(options.out, name)}`);
  }
  if (options.save) {
    const saved = saveMeasured(care.shopFile, care.shop, measuredOf(findings), findings.heights);
    if (!options.json) say(`wrote ${saved}: predict counts with what was measured from now on`);
  }
  return EXIT.good;
}

function findingsOf(care: BedCare, job: Job | null): BedFindings {
  const doubts = doubtsOf(care.readings, care.board);
  const survey = doubts.length > 0 ? null : surveyOf(care.readings, care.gaugeSdMm);
  if (survey === null) {
    const faults = doubtFaults(doubts, care);
    throw new Refusal(
      [`${care.readIn}: the readings cannot be worked with`, ...faults.map(faultText)].join('\n'),
    );
  }
  const shims = shimPlan(care.readings, care.screws, care.shims, care.gaugeSdMm);
  const skim = skimPlan(survey, care.board.thickMm);
  const heights = bedHeightsOf(care.readings, care.gaugeSdMm, {
    measured: care.measured ?? today(),
    because: readWith(care),
  });
  const laid = job === null ? null : onMeasuredBed(job, heights);
  const effects = laid === null ? null : effectOnNeeds(laid);
  return {
    care,
    job,
    survey,
    shims,
    skim,
    effects,
    across: laid === null ? null : acrossPart(laid),
    places: laid === null ? null : partPlaces(laid, heights),
    heights,
    advice: bedAdvice(survey, shims, skim, effects),
    level: levelBoard(
      {
        shopName: care.shop.name,
        xMm: Math.min(care.board.xMm, care.travelMm?.x ?? Infinity),
        yMm: Math.min(care.board.yMm, care.travelMm?.y ?? Infinity),
        depthMm: skim.depthMm,
      },
      care.cutters,
    ),
  };
}

function filesOf({ care, job, survey, shims, skim, level }: BedFindings): readonly NewFile[] {
  const picture = bedMap({
    survey,
    board: care.board,
    units: care.units,
    part: job === null ? null : partOf(job),
    plan: shims.kind === 'plan' ? shims.plan : null,
    title: care.shop.name,
  });
  const files: NewFile[] = [{ name: 'bed.svg', bytes: `${picture.html}\n` }];
  if (level.kind === 'made' && skim.isThickEnough)
    for (const program of [level.value.program, airCut(level.value.program)])
      files.push({ name: `${fileNameOf(program.name)}.nc`, bytes: written(program, care.units) });
  return files;
}

/** The text, once a reader of its own has found nothing to say against it. */
function written(program: Program, units: Units): string {
  const text = rs274Of(program, units);
  const read = readProgram(text, { units });
  // Up to its safe height and over the witness it comes from wherever the cutter was left.
  const first = read.moves[0]?.line ?? 0;
  const wrong = read.findings.find(({ kind, line }) => kind !== 'beware' || line > first);
  invariant(wrong === undefined, `${program.name}, line ${wrong?.line}: ${wrong?.message}`);
  return text;
}

function partOf(job: Job) {
  const corner = cornerAt(job, frontUpCorner(job));
  const onBed = job.onBed.value;
  return {
    at: { x: onBed.x - corner.x, y: onBed.y - corner.y },
    xMm: job.blank.widthMm,
    yMm: job.blank.heightMm,
  };
}

function measuredOf({ care, survey }: BedFindings) {
  const one = (of: string, { value, sd, dof }: BedSurvey['leanX']) => ({
    of,
    value,
    sd,
    dof,
    measured: care.measured ?? today(),
    because: readWith(care),
  });
  return [
    one('bed.lean-x', survey.leanX),
    one('bed.lean-y', survey.leanY),
    one('bed.unevenness', survey.uneven),
  ];
}

const readWith = (care: BedCare): string =>
  `${care.readings.length} heights of ${care.readIn}, read with ${care.gaugeText}`;
