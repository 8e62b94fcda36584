import { bodiesOf, stopsOf } from '../jig/stops.ts';
import { stlOf } from '../export/stl.ts';
import { solidOf } from '../jig/solid.ts';
import { touchClashText, touchRoom } from '../jig/touch-room.ts';
import type { StopPart } from '../jig/stop-part.ts';
import type { Job, StopsJob } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { benchSheet } from '../sheet/bench-sheet.ts';
import { clearancesInBed } from '../sheet/locating/way-of.ts';
import { stopPicture } from '../sheet/solid-picture.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { clearancesOf } from '../sweep/clearances.ts';
import { Refusal } from './exit.ts';
import { predictionJson } from './json.ts';
import { runPrediction, type RunOptions, type Surroundings } from './run-prediction.ts';
import type { NewFile } from './write-together.ts';

/** Two pictures stand side by side on the sheet. */
const STOP_PICTURE_MM = 78;

export interface Built {
  readonly job: Job;
  readonly prediction: Prediction;
  readonly files: readonly NewFile[];
}

/** Everything a job makes, in memory. @throws Refusal when no stop can be made, saying what would fit, or when stopped. */
export async function buildJob(
  job: Job,
  options: RunOptions,
  version: string,
  around: Surroundings,
): Promise<Built> {
  const prediction = await runPrediction(job, options, around);
  if (prediction.ended === 'interrupted')
    throw new Refusal(`${job.name}: stopped; nothing was written`);
  if (job.locating !== 'stops') {
    const placings = placingsOf(job);
    const clearances = clearancesInBed(job, placings);
    const told = { job, placings, prediction, clearances, version };
    const files = [
      { name: 'bench-sheet.html', bytes: benchSheet({ made: 'in-the-bed', ...told }) },
      { name: 'prediction.json', bytes: `${predictionJson(prediction)}\n` },
    ];
    return { job, prediction, files };
  }
  const { placings, parts } = stopsFor(job);
  const solids = parts.map((part) => ({
    name: `${fileNameOf(part.name)}.stl`,
    bytes: stlOf(solidOf(part.profile)),
  }));
  const clearances = clearancesOf(job, placings, parts.flatMap(bodiesOf));
  const sheet = benchSheet({
    made: 'stops',
    job,
    placings,
    prediction,
    clearances,
    stops: parts,
    stopPictures: parts.map((part) => stopPicture(part, STOP_PICTURE_MM, job.shop.units)),
    fileNames: solids.map(({ name }) => name),
    version,
  });
  const files = [
    { name: 'bench-sheet.html', bytes: sheet },
    { name: 'prediction.json', bytes: `${predictionJson(prediction)}\n` },
    ...solids,
  ];
  return { job, prediction, files };
}

/** The placings and their stops. @throws Refusal when no stop can be made, saying what would fit. */
export function stopsFor(job: StopsJob): {
  readonly placings: ReturnType<typeof placingsOf>;
  readonly parts: readonly StopPart[];
} {
  const placings = placingsOf(job);
  const stops = stopsOf(job, placings);
  if (stops.kind === 'cannot') {
    throw new Refusal(
      `${job.name}: no stop can be made: ${stops.because}; what would fit: ${stops.wouldFit}`,
    );
  }
  const clash = touchRoom(job, placings, stops.parts)[0];
  if (clash !== undefined) throw new Refusal(`${job.name}: ${touchClashText(clash)}`);
  return { placings, parts: stops.parts };
}

/** Lower-case letters, digits and dashes only. */
export function fileNameOf(text: string): string {
  const name = text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return name === '' ? 'job' : name;
}
