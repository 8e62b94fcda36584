import fc from 'fast-check';
import type { Feature, Zero } from '../../../src/job/job.ts';
import { FLAT6, PAPER } from '../plain-job.ts';
import { setUp, type SetUp } from '../second-model/set-ups.ts';

/** The same random set-ups, the second zero found in a hole that the first placing cut through. */
export const holeSetUp: fc.Arbitrary<SetUp> = fc
  .tuple(setUp, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
  .map(([one, x, y]) => {
    const { job } = one;
    const bore: Feature = {
      name: 'bore',
      face: job.first,
      shape: { kind: 'circle', diameterMm: 12 },
      at: { x: (x * job.blank.widthMm) / 10, y: (y * job.blank.heightMm) / 10 },
      turnedRad: 0,
      cut: 'pocket',
      depthMm: job.blank.thickMm,
      through: true,
      cutter: FLAT6,
    };
    const { frontUp, backUp } = job.zero;
    const found = (zero: Zero): Zero => ({
      ...zero,
      xy: { kind: 'hole', feature: bore.name, tool: PAPER },
    });
    const zero =
      job.first === 'front'
        ? { frontUp, backUp: found(backUp) }
        : { frontUp: found(frontUp), backUp };
    return { ...one, job: { ...job, features: [bore], zero } };
  });
