import fc from 'fast-check';
import { expect } from 'vitest';
import type { Step } from '../../../src/jig/answer.ts';
import { camClamp } from '../../../src/jig/parts/cam-clamp.ts';
import { dowelBoard } from '../../../src/jig/parts/dowel-board.ts';
import type { JigPart } from '../../../src/jig/parts/part.ts';
import { shimPads } from '../../../src/jig/parts/shim-pads.ts';
import { stepBlock } from '../../../src/jig/parts/step-block.ts';
import { strapClamp } from '../../../src/jig/parts/strap-clamp.ts';
import { toeClamp } from '../../../src/jig/parts/toe-clamp.ts';
import { wedgePair } from '../../../src/jig/parts/wedge-pair.ts';
import { defaultJigSizes as sizes } from '../../../src/job/jig-sizes.ts';
import { evenly } from '../../plane/evenly.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import { camBase } from '../../../src/jig/parts/cam-base.ts';
import { nestFrame } from '../../../src/jig/parts/nest-frame.ts';
import { aJob } from '../a-job.ts';
import { nested } from './every-part.ts';
import { partsOf as stopsOf } from '../program/some-programs.ts';
import { expectLawfulPart } from './laws.ts';

const job = aJob();
const stops = stopsOf(job);
const share = evenly(0.3, 2.5);

/** Lengths times some shares; counts as they are. */
const scaled = <T extends object>(all: T, shares: readonly number[]): T =>
  Object.fromEntries(
    Object.entries(all).map(([key, value]: [string, unknown], i) => [
      key,
      typeof value !== 'number' || /count|columns|rows/.test(key) ? value : value * shares[i % 4]!,
    ]),
  ) as T;

/** Of any sizes a part is sound, or refused with what would fit; at least some of each. */
export async function expectAnyPartLawful(seed: number, numRuns: number): Promise<void> {
  const seen = { made: 0, cannot: 0 };
  await fc.assert(
    fc.asyncProperty(
      fc.record({ which: fc.integer({ min: 0, max: 8 }), a: share, b: share, c: share, d: share }),
      async ({ which, a, b, c, d }) => {
        const by = [a, b, c, d];
        const makers: readonly (() => Step<readonly JigPart[]>)[] = [
          () => camClamp(job, scaled(sizes('cam-clamp'), by)),
          () => wedgePair(job, scaled(sizes('wedge-pair'), by)),
          () => toeClamp(job, scaled(sizes('toe-clamp'), by)),
          () => stepBlock(job, scaled(sizes('step-block'), by)),
          () => strapClamp(job, stops, scaled(sizes('strap-clamp'), by)),
          () => dowelBoard(job, scaled(sizes('dowel-board'), by)),
          () =>
            camBase(
              { ...job, jig: { 'cam-clamp': { ...sizes('cam-clamp'), thick: 9 } } },
              scaled(sizes('cam-base'), by),
            ),
          () => nestFrame(nested, placingsOf(nested), scaled(sizes('nest-frame'), by)),
          () => shimPads(scaled(sizes('shim-pads'), by)),
        ];
        const step = makers[which]!();
        seen[step.kind]++;
        if (step.kind === 'cannot') expect(step.wouldFit).not.toBe('');
        else for (const part of step.value) await expectLawfulPart(part);
      },
    ),
    { seed, numRuns },
  );
  expect(seen.made).toBeGreaterThan(0);
  expect(seen.cannot).toBeGreaterThan(0);
}
