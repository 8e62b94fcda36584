import { dxfOf } from '../export/dxf.ts';
import { fileNameOf } from '../export/plain-words.ts';
import { rs274Of } from '../export/rs274.ts';
import { stlOf } from '../export/stl.ts';
import { svgOf } from '../export/svg.ts';
import { threeMfOf } from '../export/three-mf.ts';
import { partFacets, type JigPart } from '../jig/parts/part.ts';
import { partsOf } from '../jig/parts/parts-of.ts';
import { sideBySide } from '../jig/parts/print-bed.ts';
import { plateDrawing } from '../jig/plate/plate-drawing.ts';
import type { InBed } from '../jig/program/in-bed.ts';
import type { Program } from '../jig/program/program.ts';
import { writtenClash } from '../jig/program/read-back.ts';
import {
  programsOf,
  type PlannedProgram,
  type ProgramsAnswer,
} from '../jig/program/programs-of.ts';
import { solidOf, solidOfFacets } from '../jig/solid.ts';
import { stopFacets, stopSolid } from '../jig/stop-solid.ts';
import type { StopPart } from '../jig/stop-part.ts';
import type { Step } from '../jig/answer.ts';
import type { TestPiece } from '../jig/test-piece/test-piece.ts';
import { wasteCombs } from '../jig/test-piece/waste-combs.ts';
import { testPiece } from '../jig/test-piece/layout.ts';
import type { Job } from '../job/job.ts';
import { bedTemplate } from '../sheet/bed-template.ts';
import type { ManifestEntry, ManifestGroup } from '../sheet/manifest.ts';
import { partPicture } from '../sheet/part-picture.ts';
import { programPicture } from '../sheet/program-picture.ts';
import { testPieceCard } from '../sheet/test-piece-card.ts';
import type { Placings } from '../sweep/clearances.ts';
import { readProgram } from '../sweep/program/read.ts';
import type { BuildGroup } from './build-groups.ts';
import { Refusal } from './exit.ts';
import type { NewFile } from './write-together.ts';

const PICTURE_MM = 70;

export interface JigBuilt {
  readonly files: readonly NewFile[];
  readonly groups: readonly ManifestGroup[];
  /** Wanted, not made, and why. */
  readonly missing: readonly string[];
}

/** Everything of the jig, in memory. @throws Refusal when something that was asked for cannot be made. */
export function buildJig(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
  stopPictures: readonly string[],
  groups: ReadonlySet<BuildGroup>,
  version: string,
  bed: InBed,
): JigBuilt {
  const parts = partsOf(job, placings, stops);
  if (parts.kind === 'cannot')
    throw new Refusal(`${job.name}: ${parts.because}; what would fit: ${parts.wouldFit}`);
  const programs = programsOf(job, placings, stops, bed);
  const asked = programs.refused.find(({ wanted }) => wanted === 'asked for');
  if (asked !== undefined)
    throw new Refusal(`${job.name}: ${asked.because}; what would fit: ${asked.wouldFit}`);
  const stopEntries = groups.has('stops')
    ? stops.map((stop, i) => stopMade(stop, stopPictures[i]!))
    : [];
  const partEntries = groups.has('parts') ? parts.value.map((part) => partMade(job, part)) : [];
  const programEntries = groups.has('programs')
    ? [
        ...programs.programs.map((program) => programMade(job, program)),
        ...cardMade(job, stops, version),
      ]
    : [];
  const paper = groups.has('parts') ? templateMade(job, stops, version) : [];
  const together = groups.has('parts') ? allTogether(job, stops, parts.value) : [];
  return {
    files: [
      ...[...stopEntries, ...partEntries, ...programEntries].flatMap(({ files }) => files),
      ...[...together, ...paper].flatMap(({ files }) => files),
    ],
    groups: [
      { title: 'Stops', entries: stopEntries.map(({ entry }) => entry) },
      {
        title: 'Parts',
        entries: [...partEntries, ...together, ...paper].map(({ entry }) => entry),
      },
      { title: 'Programs', entries: programEntries.map(({ entry }) => entry) },
    ],
    missing: groups.has('programs')
      ? programs.refused.map(({ because, wouldFit }) => `${because}; what would fit: ${wouldFit}`)
      : [],
  };
}

interface Made {
  readonly entry: ManifestEntry;
  readonly files: readonly NewFile[];
}

const made = (entry: Omit<ManifestEntry, 'files'>, files: readonly NewFile[]): Made => ({
  entry: { ...entry, files: files.map(({ name }) => name) },
  files,
});

function stopMade(stop: StopPart, picture: string): Made {
  return made(
    {
      name: stop.name,
      count: 1,
      purpose: 'Brings the blank to the same place, front up and back up.',
      notes: stop.notes,
      picture: { html: picture },
    },
    [{ name: `${fileNameOf(stop.name)}.stl`, bytes: stlOf(stopSolid(stop)) }],
  );
}

function partMade(job: Job, part: JigPart): Made {
  const { name, count, purpose, notes, form } = part;
  const file = fileNameOf(name, 'part');
  const solid = form.kind === 'plate' ? solidOfFacets(partFacets(part)) : solidOf(form.profile);
  const drawing = form.kind === 'plate' ? plateDrawing(form.plate) : null;
  return made(
    {
      name,
      count,
      purpose,
      notes,
      picture: { html: partPicture(part, PICTURE_MM, job.shop.units) },
    },
    [
      { name: `${file}.stl`, bytes: stlOf(solid) },
      ...(drawing === null
        ? []
        : [
            { name: `${file}.dxf`, bytes: dxfOf(drawing) },
            { name: `${file}.svg`, bytes: svgOf(drawing) },
          ]),
    ],
  );
}

function allTogether(
  job: Job,
  stops: readonly StopPart[],
  parts: readonly JigPart[],
): readonly Made[] {
  const all = [
    ...stops.map((stop) => ({ name: stop.name, facets: stopFacets(stop) })),
    ...parts.map((part) => ({ name: part.name, facets: partFacets(part) })),
  ];
  if (all.length === 0) return [];
  return [
    made(
      {
        name: 'everything to print',
        count: 1,
        purpose: 'The stops and all parts, one object each, with their names, side by side.',
        notes: [],
        picture: null,
      },
      [{ name: 'jig.3mf', bytes: threeMfOf(job.name, sideBySide(all)) }],
    ),
  ];
}

function programMade(job: Job, { cut, air }: ProgramsAnswer['programs'][number]): Made {
  const { program, bodies } = cut;
  return made(
    {
      name: program.name,
      count: 1,
      purpose: `Cutter: ${program.cutter.name}. Run the air cut first.`,
      notes: program.header,
      picture: programPicture(program, bodies, PICTURE_MM),
    },
    [program, air].map((one) => ({
      name: `${fileNameOf(one.name, 'program')}.nc`,
      bytes: writtenOf(job, one, cut),
    })),
  );
}

/** The text, once a reader of its own has gone its whole way past everything on the bed. @throws Refusal at a clash. */
function writtenOf(job: Job, program: Program, { cutter, bodies }: PlannedProgram): string {
  const { units } = job.shop;
  const text = rs274Of(program, units);
  const clash = writtenClash(job, program, cutter, bodies, readProgram(text, { units }));
  if (clash !== null)
    throw new Refusal(`${job.name}: ${clash.because}; what would fit: ${clash.wouldFit}`);
  return text;
}

/** The cards that combs are read by; their programs have been made by then. */
function cardMade(job: Job, stops: readonly StopPart[], version: string): readonly Made[] {
  const own = job.jig['test-piece'];
  const waste = job.jig['waste-combs'];
  const card = (what: string, file: string, piece: Step<TestPiece>): readonly Made[] =>
    piece.kind === 'cannot'
      ? []
      : [
          made(
            {
              name: `reading card of the ${what}`,
              count: 1,
              purpose: `Where to measure the ${what}, and what the readings say.`,
              notes: [],
              picture: null,
            },
            [{ name: file, bytes: testPieceCard(job, piece.value, version) }],
          ),
        ];
  return [
    ...(own === undefined
      ? []
      : card('test piece', 'test-piece-card.html', testPiece(job, stops, own))),
    ...(waste === undefined
      ? []
      : card('combs in the waste', 'waste-combs-card.html', wasteCombs(job, waste))),
  ];
}

function templateMade(job: Job, stops: readonly StopPart[], version: string): readonly Made[] {
  const overlapMm = job.jig.template?.overlap ?? null;
  if (overlapMm === null) return [];
  if (overlapMm > MOST_OVERLAP_MM)
    throw new Refusal(
      `${job.name}: template: overlap ${overlapMm} mm leaves too little of a sheet; what would fit: overlap: ${MOST_OVERLAP_MM} or less`,
    );
  return [
    made(
      {
        name: 'template of the bed',
        count: 1,
        purpose: 'Stops, blank and holes at their true size on paper: to mark out, or to check.',
        notes: ['Paper is good to half a millimetre or so: it shows where, not how true.'],
        picture: null,
      },
      [{ name: 'bed-template.html', bytes: bedTemplate(job, stops, overlapMm, version) }],
    ),
  ];
}

/** Of sheets 180 mm wide. */
const MOST_OVERLAP_MM = 60;
