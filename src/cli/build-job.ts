import { bodiesOf, stopsOf } from '../jig/stops.ts';
import { fileNameOf } from '../export/plain-words.ts';
import { stlOf } from '../export/stl.ts';
import { solidOf } from '../jig/solid.ts';
import { touchClashText, touchRoom } from '../jig/touch-room.ts';
import type { StopPart } from '../jig/stop-part.ts';
import type { Job, StopsJob } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { benchSheet } from '../sheet/bench-sheet.ts';
import { stopPicture } from '../sheet/solid-picture.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import type { Prediction } from '../stackup/prediction.ts';
import { clearancesOf } from '../sweep/clearances.ts';
import { Refusal } from './exit.ts';
import { predictionJson } from './json.ts';
import { predictJob } from './predict-job.ts';
import type { NewFile } from './write-together.ts';

/** Two pictures stand side by side on the sheet. */
const STOP_PICTURE_MM = 78;

export interface Built {
  readonly job: Job;
  readonly prediction: Prediction;
  readonly files: readonly NewFile[];
}

/** Everything a job makes, in memory. @throws Refusal when no stop can be made, saying what would fit. */
export function buildJob(job: Job, options: PredictOptions, version: string): Built {
  const prediction = predictJob(job, options);
  if (job.locating !== 'stops') {
    const files = [{ name: 'prediction.json', bytes: `${predictionJson(prediction)}\n` }];
    return { job, prediction, files };
  }
  const { placings, parts } = stopsFor(job);
  const solids = parts.map((part) => ({
    name: `${fileNameOf(part.name)}.stl`,
    bytes: stlOf(solidOf(part.profile)),
  }));
  const clearances = clearancesOf(job, placings, parts.flatMap(bodiesOf));
  const sheet = benchSheet({
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
