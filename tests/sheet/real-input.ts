import { readFileSync } from 'node:fs';
import { predictJob } from '../../src/cli/predict-job.ts';
import { bodiesOf, stopsOf } from '../../src/jig/stops.ts';
import type { Need, Units } from '../../src/job/job.ts';
import { readJob } from '../../src/job/read.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { stopPicture } from '../../src/sheet/solid-picture.ts';
import type { StopsInput } from '../../src/sheet/sheet-input.ts';
import { predictionFor } from './a-prediction.ts';
import { clearancesOf } from '../../src/sweep/clearances.ts';

const kept = new Map<string, StopsInput>();

/**
 * What the program itself would put on the sheet of an example in `jigs/`; made once. The chances are made
 * up and only radial needs are asked, unless it is to be `predicted` as well, with fewer trials.
 */
export function realInput(
  name: string,
  units: Units = 'mm',
  chances: 'made-up' | 'predicted' = 'made-up',
): StopsInput {
  const key = `${name} ${units} ${chances}`;
  const input = kept.get(key) ?? madeInput(name, units, chances);
  kept.set(key, input);
  return input;
}

function madeInput(name: string, units: Units, chances: 'made-up' | 'predicted'): StopsInput {
  const bytes = readFileSync(`jigs/${name}`);
  const shopText = readFileSync('jigs/shop.yaml', 'utf8').replace('units: mm', `units: ${units}`);
  const shop = new Map([['shop.yaml', Buffer.from(shopText)]]);
  const read = readJob({ name, bytes }, shop);
  if (!read.ok) throw new Error(`${name} has faults`);
  const whole = read.value.job;
  if (whole.locating !== 'stops') throw new Error(`${name} has no stops`);
  const job = chances === 'predicted' ? whole : { ...whole, needs: whole.needs.filter(isRadial) };
  const placings = placingsOf(job);
  const stops = stopsOf(job, placings);
  if (stops.kind === 'cannot') throw new Error(stops.because);
  return {
    made: 'stops',
    job,
    placings,
    prediction:
      chances === 'predicted'
        ? predictJob(job, { seed: 1, trials: 2000 })
        : predictionFor(
            job,
            job.needs.map(() => 0.99),
          ),
    clearances: clearancesOf(job, placings, stops.parts.flatMap(bodiesOf)),
    stops: stops.parts,
    stopPictures: stops.parts.map((part) => stopPicture(part, 78, units)),
    fileNames: stops.parts.map((part) => `${part.name}.stl`),
    hold: { plan: null, notes: [] },
    version: '0.1.0',
  };
}

const isRadial = ({ kind }: Need): boolean => kind === 'concentric' || kind === 'misalignment';
