import { holdJob } from '../../src/cli/hold-job.ts';
import { predictionJson } from '../../src/cli/json.ts';
import { predictJob } from '../../src/cli/predict-job.ts';
import { stopsFor } from '../../src/cli/stops-for.ts';
import type { Job } from '../../src/job/job.ts';
import type { ReportInput } from '../../src/report/report-input.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { readFromDisk } from '../job/from-disk.ts';

const kept = new Map<string, ReportInput>();

/** An example job in `jigs/` as `build` would tell it, with fewer trials and nothing held; worked out once for all tests. */
export function inputOf(name: string): ReportInput {
  const input = kept.get(name) ?? changedInput(name, (job) => job);
  kept.set(name, input);
  return input;
}

/** What of it stands on the bed: without a prediction, which takes most of the time. */
export function stoodOf(name: string): Pick<ReportInput, 'job' | 'placings' | 'stops' | 'hold'> {
  const read = readFromDisk(`jigs/${name}.yaml`);
  if (!read.ok) throw new Error(`${name} has faults`);
  const { job } = read.value;
  const placings = placingsOf(job);
  const stops = job.locating === 'stops' ? stopsFor(job, placings).parts : [];
  return { job, placings, stops, hold: { plan: null, notes: [] } };
}

/** The same of a job that is altered first, held or not. */
export function changedInput(name: string, change: (job: Job) => Job, isHeld = false): ReportInput {
  const read = readFromDisk(`jigs/${name}.yaml`);
  if (!read.ok) throw new Error(`${name} has faults`);
  const { holding } = read.value;
  const job = change(read.value.job);
  const placings = placingsOf(job);
  return {
    job,
    placings,
    prediction: predictJob(job, { seed: 1, trials: 2000 }),
    stops: job.locating === 'stops' ? stopsFor(job, placings).parts : [],
    hold: isHeld ? holdJob(job, holding, () => {}) : { plan: null, notes: [] },
    comparison: null,
    advice: null,
    viewer: null,
    version: '0.1.0',
  };
}

/** A number of the page: where it says it stands in the JSON, what it was rounded from, and its words. */
export interface ToldNumber {
  readonly of: string;
  readonly value: number;
  readonly text: string;
}

export function numbersOf(page: string): readonly ToldNumber[] {
  const found = page.matchAll(/<data value="([^"]*)" data-of="([^"]*)">([^<]*)<\/data>/g);
  return [...found].map(([, value, of, text]) => ({ of: of!, value: Number(value), text: text! }));
}

/** What is wrong with a page's numbers, held against the JSON of its prediction. */
export function wrongNumbers({ job, prediction }: ReportInput, page: string): readonly string[] {
  const json: unknown = JSON.parse(predictionJson(prediction));
  return numbersOf(page).flatMap((number) => {
    const there = number.of
      .split('.')
      .reduce<unknown>((at, key) => (at as Record<string, unknown> | null)?.[key], json);
    if (there !== number.value)
      return [`${number.of} is ${String(there)}, the page has ${number.value}`];
    const isTurn = /^needs\.(\d+)\./.exec(number.of);
    const unit = isTurn === null ? 'mm' : prediction.needs[Number(isTurn[1])]!.unit;
    const wrong = badlyRounded(number, job.shop.units === 'inch' && unit === 'mm' ? 25.4 : 1);
    return wrong === null ? [] : [wrong];
  });
}

/** Every number has a unit, and is its value rounded to the digits that are shown. */
function badlyRounded({ of, value, text }: ToldNumber, mmPerUnit: number): string | null {
  const plain = text.replaceAll('\u00a0', ' ').replaceAll('\u2009', '').replace('\u2212', '-');
  const [, words = '', digits, unit = ''] = /^(over |under )?(-?[\d.]+)(.*)$/.exec(plain) ?? [];
  if (digits === undefined) return `${of}: no number in "${text}"`;
  const places = digits.split('.')[1]?.length ?? 0;
  const shown = Number(digits);
  const isPercent = unit === ' %';
  const real = isPercent ? 100 * value : /^ (mm|in)\b/.test(unit) ? value / mmPerUnit : value;
  if (unit === '' && !['seed', 'trials', 'digitsAsked'].includes(of))
    return `${of}: no unit in "${text}"`;
  if (words !== '')
    return (words === 'over ') === real >= shown ? null : `${of}: "${text}" of ${real}`;
  // Chances are rounded down, times told as at least so many, parts to two digits, all others to the nearest.
  const step = 10 ** -places;
  const slack = / parts$/.test(unit)
    ? 0.05 * Math.abs(real)
    : / times$/.test(unit) || isPercent
      ? step
      : step / 2;
  if (isPercent && real > 100 && shown === 100) return null;
  return Math.abs(shown - real) <= slack * (1 + 1e-9) + 1e-9 ? null : `${of}: "${text}" of ${real}`;
}
