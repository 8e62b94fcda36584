// Laws of every kind of need: what is done to the whole job is done to what it comes to.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import type { StopsJob, Need } from '../../src/job/job.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { bench, SECOND_MM, smallOff } from './benches.ts';
import { withEveryNeed } from './every-need.ts';
import { mirroredJob, mirroredOff } from './mirrored.ts';
import type { Off } from './misalign.ts';

const keysOf = (job: StopsJob): readonly string[] => misfitModel(job).deviations.map(deviationKey);

/** The same bench with its features, and z touched anywhere. */
const benches = fc
  .tuple(
    bench,
    fc.record({
      on: fc.tuple(fc.constantFrom('top', 'bed'), fc.constantFrom('top', 'bed')),
      x: fc.integer({ min: 20, max: 260 }),
      y: fc.integer({ min: 20, max: 160 }),
      up: fc.constantFrom<'front' | 'back' | null>('front', 'back', null),
      along: fc.constantFrom<'x' | 'y'>('x', 'y'),
    }),
  )
  .map(([{ job, seed }, { on, x, y, up, along }]) => {
    const { frontUp, backUp } = job.zero;
    const cup = { ...job.blank.cup, up, along, pressedFlat: false };
    const whole = withEveryNeed({
      ...job,
      blank: { ...job.blank, cup },
      zero: {
        frontUp: { ...frontUp, z: { ...frontUp.z, on: on[0], at: { x, y } } },
        backUp: { ...backUp, z: { ...backUp.z, on: on[1], at: { x: y, y: x / 2 } } },
      },
    });
    return { job: whole, off: smallOff(keysOf(whole), seed) };
  });

/** What all needs come to, one after the other, all from the same draws. */
function come(job: StopsJob, off: Off): readonly number[] {
  const model = misfitModel(job);
  const draws = new Float64Array(model.deviations.length * BATCH);
  model.deviations.forEach((deviation, k) => {
    const value = off[deviationKey(deviation)];
    if (value === undefined) throw new Error(`nothing for ${deviationKey(deviation)}`);
    draws[k * BATCH] = value;
  });
  const out = new Float64Array(model.outputCount * BATCH);
  model.evaluate(draws, 1, out);
  return Array.from({ length: model.outputCount }, (_, k) => out[k * BATCH]!);
}

/** Sign that a mirror gives each figure of a need. */
function signsOf(need: Need, axis: 'x' | 'y'): readonly number[] {
  if (need.kind === 'parallel') return [-1];
  if (need.kind === 'concentric' || need.kind === 'misalignment')
    return axis === 'x' ? [-1, 1] : [1, -1];
  return need.kind === 'lip' ? [1, 1] : [1];
}

describe('the needs of a whole job', () => {
  it.each([
    ['left for right', 'x', 5],
    ['near for far', 'y', 6],
  ] as const)('mirrored %s are the mirrored needs', (_name, axis, seed) => {
    fc.assert(
      fc.property(benches, ({ job, off: all }) => {
        // X of the blank is along its lower edge: in the mirror that was the upper one, which the taper turns.
        const off = axis === 'y' ? { ...all, 'taper/y': 0 } : all;
        const one = come(job, off);
        const other = come(mirroredJob(job, axis), mirroredOff(job, off, axis));
        const signs = job.needs.flatMap((need) => signsOf(need, axis));
        expect(one).toHaveLength(signs.length);
        const nominal = come(job, Object.fromEntries(Object.keys(off).map((key) => [key, 0])));
        one.forEach((value, k) => {
          expect(value).not.toBe(nominal[k]);
        });
        one.forEach((value, k) => {
          expect(Math.abs(other[k]! - signs[k]! * value)).toBeLessThan(SECOND_MM);
        });
      }),
      { seed, numRuns: 12 },
    );
  });

  it('are the same wherever the stops stand on the bed', () => {
    fc.assert(
      fc.property(benches, fc.integer({ min: 60, max: 300 }), ({ job, off }, x) => {
        const elsewhere: StopsJob = { ...job, onBed: { ...job.onBed, value: { x, y: 77 } } };
        expect(come(elsewhere, off)).toEqual(come(job, off));
      }),
      { seed: 7, numRuns: 8 },
    );
  });
});
