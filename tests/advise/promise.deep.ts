// Over hundreds of random jobs: what the first advice promises is what a fresh prediction of the changed file gives, and
// the first of the list is the best of it on fresh draws. Tolerances are standard errors of the two samples.
import { describe, expect, it } from 'vitest';
import type { Case } from '../../src/advise/actions/action.ts';
import { trySingles } from '../../src/advise/actions/improve.ts';
import { gainOf } from '../../src/advise/estimate.ts';
import { AS_IT_IS, tried } from '../../src/advise/outcome.ts';
import { LEAST_GAIN } from '../../src/advise/numbers.ts';
import { readJob } from '../../src/job/read.ts';
import { aBench, toTheEnd, variantsOfTexts } from './a-bench.ts';
import { randomJob } from './random-jobs.ts';

const JOBS = 220;
const [TRIALS, FRESH] = [500, { seed: 77, trials: 500 }] as const;

interface Tale {
  readonly seed: number;
  readonly promised: number;
  readonly got: number;
  readonly se: number;
  readonly isBest: boolean;
}

function taleOf(seed: number): Tale | null {
  const { job, shop } = randomJob(seed);
  const variants = variantsOfTexts(job, shop);
  const bench = aBench(variants, TRIALS, seed);
  const asIs = bench.tryOut([]);
  if (asIs.kind === 'impossible') return null;
  const of: Case = { variants, job: asIs.job, outcome: asIs.outcome };
  const singles = toTheEnd(trySingles(bench, of)).tried;
  const [first] = singles;
  if (first === undefined || first.gain.value < LEAST_GAIN) return null;
  // The file as it would be written, read again; a test piece has no key.
  const bytes = new TextEncoder().encode(variants.text(first.action.edits));
  const read = readJob({ name: 'job.yaml', bytes }, variants.files);
  if (!read.ok) throw new Error(`${seed}: ${read.faults[0]!.message}`);
  const twist = { ...AS_IT_IS, dialledTurns: first.action.dialledTurns };
  const before = tried(asIs.job, FRESH)!;
  const after = tried(read.value.job, FRESH, twist)!;
  const fresh = gainOf(before.eachAll, after.eachAll);
  const isBest = singles.every(({ action, gain }) => {
    // What fell short by more than five standard errors does not catch up.
    if (gain.value < first.gain.value - 5 * Math.hypot(gain.se, first.gain.se)) return true;
    const other = bench.tryOut(action.edits);
    if (other.kind === 'impossible') return true;
    const there = tried(other.job, FRESH, { ...AS_IT_IS, dialledTurns: action.dialledTurns })!;
    const more = gainOf(after.eachAll, there.eachAll);
    return more.value <= more.se;
  });
  return {
    seed,
    promised: first.gain.value,
    got: fresh.value,
    se: Math.hypot(first.gain.se, fresh.se),
    isBest,
  };
}

describe('the first advice', () => {
  const tales = Array.from({ length: JOBS }, (_, k) => taleOf(k + 1)).flatMap((tale) => tale ?? []);

  it('is given for hundreds of jobs', () => {
    expect(tales.length).toBeGreaterThan(150);
  });

  it('gains what it promised', () => {
    const off = tales.map(({ promised, got, se }) => (got - promised) / se);
    // Normal: 3 in 1000 beyond 3, none beyond 5; the best of a list promises a little too much.
    expect(off.filter((one) => Math.abs(one) > 3).length).toBeLessThanOrEqual(0.02 * tales.length);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(5);
    const mean = off.reduce((sum, one) => sum + one, 0) / off.length;
    // Of three remedies that do the same (the size has three) the luckiest stands first: the mean of the largest of three
    // normals is 0.85 of its own sd, 0.6 of that of the difference of two samples; common draws make it less.
    expect(Math.abs(mean)).toBeLessThan(0.6);
  });

  it('is the best of the list on fresh draws, or within its standard error of it, 95 times in 100', () => {
    const bad = tales.filter(({ isBest }) => !isBest);
    expect(bad.length / tales.length).toBeLessThanOrEqual(0.05);
  });
});
