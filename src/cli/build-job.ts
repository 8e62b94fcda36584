import { bodiesOf } from '../jig/stops.ts';
import { fileNameOf } from '../export/plain-words.ts';
import type { StopPart } from '../jig/stop-part.ts';
import { fenceAlone } from '../jig/fence-job.ts';
import type { Job } from '../job/job.ts';
import type { ReadJob } from '../job/read.ts';
import { placingsOf } from '../setup/place.ts';
import { benchSheet } from '../sheet/bench-sheet.ts';
import { clearancesInBed } from '../sheet/locating/way-of.ts';
import { holdPage } from '../sheet/hold-page.ts';
import { manifest, type ManifestEntry } from '../sheet/manifest.ts';
import type { SheetInput } from '../sheet/sheet-input.ts';
import { stopPicture } from '../sheet/solid-picture.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { clearancesOf } from '../sweep/clearances.ts';
import type { BuildGroup } from './build-groups.ts';
import { buildJig } from './build-jig.ts';
import { report } from '../report/report.ts';
import { pageScript } from './page-script.ts';
import { clampsIn, runsWhileHeld } from './clamps-on.ts';
import { EXIT, Refusal } from './exit.ts';
import { holdJob } from './hold-job.ts';
import { predictionJson } from './json.ts';
import { runPrediction, type RunOptions, type Surroundings } from './run-prediction.ts';
import { stopsFor } from './stops-for.ts';
import type { NewFile } from './write-together.ts';

/** Two pictures stand side by side on the sheet. */
const STOP_PICTURE_MM = 78;

export interface Built {
  readonly job: Job;
  readonly prediction: Prediction;
  readonly files: readonly NewFile[];
  /** Wanted, not made, and why. */
  readonly missing: readonly string[];
}

/** What a job makes, in memory. @throws Refusal when a part of it cannot be made, saying what would fit, or when stopped. */
export async function buildJob(
  { job, holding }: Pick<ReadJob, 'job' | 'holding'>,
  options: RunOptions,
  version: string,
  around: Surroundings,
  groups: ReadonlySet<BuildGroup>,
): Promise<Built> {
  const stopped = job.locating === 'stops' ? job : job.jig['fence-stop'] && fenceAlone(job);
  const placings = placingsOf(job);
  const stops = stopped ? stopsFor(stopped, placings) : null;
  const parts = stops?.parts ?? [];
  // Drawing a solid is most of the work: once for the sheet and for the page of what was built.
  const stopPictures = parts.map((part) => stopPicture(part, STOP_PICTURE_MM, job.shop.units));
  const needsClamps = groups.has('programs') && runsWhileHeld(job);
  const hold =
    needsClamps || ['sheet', 'report', 'hold'].some((group) => groups.has(group as BuildGroup))
      ? holdJob(job, holding, () => {})
      : { plan: null, notes: [] };
  const jig = buildJig(job, placings, parts, stopPictures, groups, version, {
    tracks: holding.tracks,
    boardScrews: holding.boardScrews,
    clamps: needsClamps && hold.plan !== null ? clampsIn(hold.plan) : null,
  });
  const prediction = await runPrediction(job, options, around);
  if (prediction.ended === 'interrupted')
    throw new Refusal(`${job.name}: stopped; nothing was written`, EXIT.stopped);
  const told = { job, placings, prediction, hold, version };
  const sheet = groups.has('sheet') ? sheetOf(told, parts, stopPictures) : null;
  const why = groups.has('report')
    ? report({ ...told, stops: parts, comparison: null, advice: null, viewer: pageScript() })
    : null;
  const forBench: readonly ManifestEntry[] = [
    ...(sheet === null ? [] : [SHEET]),
    ...(why === null ? [] : [REPORT]),
    ...(groups.has('hold') ? [HOLD] : []),
    ...(groups.has('prediction') ? [PREDICTION] : []),
  ];
  const page = manifest({
    jobName: job.name,
    groups: [{ title: 'For the bench', entries: forBench }, ...jig.groups],
    missing: jig.missing,
    version,
  });
  const files = [
    ...(sheet === null ? [] : [{ name: 'bench-sheet.html', bytes: sheet }]),
    ...(why === null ? [] : [{ name: 'report.html', bytes: why }]),
    ...(groups.has('prediction')
      ? [{ name: 'prediction.json', bytes: `${predictionJson(prediction, job.dialled ?? null)}\n` }]
      : []),
    ...(hold.plan !== null && groups.has('hold')
      ? [{ name: 'hold.html', bytes: holdPage(job, hold.plan, hold.notes, version) }]
      : []),
    ...jig.files,
    { name: 'index.html', bytes: page },
  ];
  return { job, prediction, files, missing: jig.missing };
}

/** The bench sheet, of stops or of what stands in the bed. */
function sheetOf(
  told: Pick<SheetInput, 'job' | 'placings' | 'prediction' | 'hold' | 'version'>,
  stops: readonly StopPart[],
  stopPictures: readonly string[],
): string {
  const { job, placings } = told;
  if (job.locating !== 'stops') {
    const [stop] = stops;
    return benchSheet({
      ...told,
      made: 'in-the-bed',
      job,
      clearances: clearancesInBed(job, placings, stops.flatMap(bodiesOf)),
      ...(stop === undefined
        ? {}
        : {
            printedFence: {
              stop,
              picture: stopPictures[0]!,
              fileName: `${fileNameOf(stop.name)}.stl`,
            },
          }),
    });
  }
  return benchSheet({
    ...told,
    made: 'stops',
    job,
    clearances: clearancesOf(job, placings, stops.flatMap(bodiesOf)),
    stops,
    stopPictures,
    fileNames: stops.map((part) => `${fileNameOf(part.name)}.stl`),
  });
}

const SHEET: ManifestEntry = {
  name: 'bench sheet',
  count: 1,
  purpose: 'The order of work at the machine, from laying the blank to checking the part.',
  notes: [],
  picture: null,
  files: ['bench-sheet.html'],
};

const REPORT: ManifestEntry = {
  name: 'report',
  count: 1,
  purpose:
    'Why: where the back lands, what makes it, where each figure comes from, the bed as solids.',
  notes: [],
  picture: null,
  files: ['report.html'],
};

const HOLD: ManifestEntry = {
  name: 'holding down',
  count: 1,
  purpose:
    'Where clamps and screws go in both placings, what they must stay clear of, what comes free. Forces are estimates.',
  notes: [],
  picture: null,
  files: ['hold.html'],
};

const PREDICTION: ManifestEntry = {
  name: 'prediction',
  count: 1,
  purpose: 'How far the back will be off, in figures for programs.',
  notes: [],
  picture: null,
  files: ['prediction.json'],
};
