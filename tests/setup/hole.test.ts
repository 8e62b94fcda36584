import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { newColumns } from '../../src/setup/columns.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { turnOverOf } from '../../src/setup/turnover.ts';
import { FLAT6, PAPER, plainJob } from './plain-job.ts';

const HOLE = { x: 190, y: 60 };

function job(turn: StopsJob['turn'], first: StopsJob['first']): StopsJob {
  const plain = plainJob();
  const found = {
    ...plain.zero.backUp,
    xy: { kind: 'hole' as const, feature: 'bore', tool: PAPER },
  };
  return {
    ...plain,
    turn,
    first,
    features: [
      {
        name: 'bore',
        face: first,
        shape: { kind: 'circle', diameterMm: 12 },
        at: HOLE,
        turnedRad: 0,
        cut: 'pocket',
        depthMm: 24,
        through: true,
        cutter: FLAT6,
      },
    ],
    zero:
      first === 'front'
        ? { frontUp: plain.zero.frontUp, backUp: found }
        : { frontUp: found, backUp: plain.zero.frontUp },
  };
}

/** How far a cut on the other face, at the hole's own drawn place, misses the hole as it was cut. */
function missed(which: StopsJob, off: (key: string, k: number) => number): [number, number] {
  const columns = newColumns();
  const model = turnOverOf(which, columns);
  const other = which.first === 'front' ? 'back' : 'front';
  const bore = model.landing('feature bore', which.first, HOLE);
  const over = model.landing('over', other, HOLE);
  const keys = columns.asked().map(deviationKey);
  const draws = new Float64Array(keys.length * BATCH);
  keys.forEach((key, k) => (draws[k * BATCH] = off(key, k)));
  model.lay(draws, 0);
  bore.locate(draws, 0);
  over.locate(draws, 0);
  return [over.x() - bore.x(), over.y() - bore.y()];
}

const jobs = fc
  .tuple(
    fc.constantFrom<StopsJob['turn']>('about-x', 'about-y'),
    fc.constantFrom<StopsJob['first']>('front', 'back'),
  )
  .map(([turn, first]) => job(turn, first));

describe('a zero in a hole that the first placing cut', () => {
  it('puts a cut on the other face over the hole, whatever was off when it was cut and laid', () => {
    fc.assert(
      fc.property(jobs, fc.integer({ min: 1, max: 1e6 }), (which, seed) => {
        const [x, y] = missed(which, (key, k) => {
          // What is new in the second placing itself: its touch, its own cut, and a leaning cutter.
          if (
            /^(zero-touch.(back|front)-up|repeatability.over|lost-motion.over|cutter-lean)/.test(
              key,
            )
          )
            return key.includes(which.first) ? 1e-3 : 0;
          const lean =
            /^(machine-lean|scale|square|taper|bevel|crook|movement|fence-angle|stop-square)/.test(
              key,
            );
          return Math.abs(Math.sin(seed + k)) * (lean ? 1e-3 : 0.1);
        });
        expect(Math.hypot(x, y)).toBeLessThan(1e-9);
      }),
      { seed: 4, numRuns: 40 },
    );
  });

  it('adds its touch, mirrored where the turn mirrors', () => {
    const touch = (axis: 'x' | 'y') => (key: string) =>
      key === `zero-touch/back-up/${axis}/1` ? 0.01 : 0;
    expect(missed(job('about-y', 'front'), touch('x'))[0]).toBeCloseTo(-0.01, 9);
    expect(missed(job('about-y', 'front'), touch('y'))[1]).toBeCloseTo(0.01, 9);
    expect(missed(job('about-x', 'front'), touch('x'))[0]).toBeCloseTo(0.01, 9);
    expect(missed(job('about-x', 'front'), touch('y'))[1]).toBeCloseTo(-0.01, 9);
  });
});
