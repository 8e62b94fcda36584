import type { Job } from '../../job/job.ts';
import { misfitModel } from '../../setup/misfit.ts';
import { sourcesOf } from '../../sources/sources-of.ts';
import { gainOf } from '../estimate.ts';
import { hurtsOf, type Hurt } from '../hurts.ts';
import { LEAST_GAIN } from '../numbers.ts';
import { AS_IT_IS, tried } from '../outcome.ts';
import type { Bench } from '../variant.ts';
import type { Action } from './action.ts';

/** What an action takes away, of the need that is worst, and when there is nothing left to take away. */
export interface Why {
  readonly source: string;
  readonly words: string;
  /** Its share of the spread, before and after the action. */
  readonly before: number;
  /** Of the spread as it was: null where the source is gone altogether. */
  readonly after: number;
  /**
   * The action gains less than a point once the source is at this share of what it is; 0: whatever it is; null: not found out.
   */
  readonly paysAbove: number | null;
  /** What the source is now, as it is written. */
  readonly text: string;
}

/** Below this share of a spread a source is not a reason. */
const LEAST_SHARE = 0.04;
/** Enough to tell a point on the same blanks. */
const SCALE_TRIALS = 1000;
const SCALES = [0.5, 0.25, 0.125] as const;

/** The source that an action lessens most, by straight lines; null when there is none to speak of. */
export function whyOf(
  bench: Bench,
  job: Job,
  action: Action,
  changed: Job,
  need: number,
  hurts: readonly Hurt[],
): Why | null {
  if (action.dialledTurns > 0 || action.changes === 'the part') return null;
  const name = job.needs[need]!.name;
  const there = changed.needs.findIndex((one) => one.name === name);
  if (there < 0) return null;
  const after = hurtsOf(changed, there);
  const total = (all: readonly Hurt[]): number => all.reduce((sum, one) => sum + one.variance, 0);
  const whole = total(hurts);
  if (whole === 0) return null;
  const lessened = hurts
    .map((one) => {
      const left = after.find(({ source }) => source === one.source)?.variance ?? 0;
      return { one, before: one.share, after: left / whole };
    })
    .toSorted((a, b) => b.before - b.after - (a.before - a.after));
  const [most] = lessened;
  if (most === undefined || most.before - most.after < LEAST_SHARE) return null;
  const source = sourcesOf(job, misfitModel(job).deviations).find(
    ({ id }) => id === most.one.source,
  );
  return {
    source: most.one.source,
    words: most.one.words,
    before: most.before,
    after: most.after,
    paysAbove: paysAbove(bench, job, changed, most.one.source),
    text: source?.text ?? '',
  };
}

/** The first share, of halves of halves, of a source at which an action no longer gains a point. */
function paysAbove(bench: Bench, job: Job, changed: Job, source: string): number | null {
  const luck = { ...bench.luck, trials: Math.min(bench.luck.trials, SCALE_TRIALS) };
  for (const factor of SCALES) {
    const twist = { ...AS_IT_IS, scaled: { source, factor } };
    const before = tried(job, luck, twist);
    const after = tried(changed, luck, twist);
    if (before === null || after === null) return null;
    if (gainOf(before.eachAll, after.eachAll).value < LEAST_GAIN) return factor;
  }
  return 0;
}
