import { expect, it } from 'vitest';
import { verdictOf, type Held } from '../../src/hold/verdict.ts';

const square = (half: number): Held['support'] => [
  [-half, -half, 0],
  [half, -half, 0],
  [half, half, 0],
  [-half, half, 0],
];
/** Pressed down at the four corners, so that it hardly slides. */
const held: Held = {
  presses: square(100).map((at) => ({ at, newtons: 250 })),
  ties: [],
  stops: [],
  support: square(100),
  friction: 1,
};
const box = { lowX: -100, lowY: -100, highX: 100, highY: 100 };

it('tips before it slides where the cutter pulls high up', () => {
  const low = verdictOf(held, { sidewaysN: 60, liftN: 0, box, topMm: 1 }, 2.5);
  const high = verdictOf(held, { sidewaysN: 60, liftN: 0, box, topMm: 400 }, 2.5);
  expect(high.worst.gives).toBe('tips');
  // Turned over an edge, or by the covering direction over a corner: 1000 N x 100 mm over 60 N x 400 mm, at most.
  expect(high.factor).toBeLessThan((1000 * 100) / (60 * 400));
  expect(low.factor).toBeGreaterThan(2 * high.factor);
});

it('holds less when it is lifted too', () => {
  const flat = verdictOf(held, { sidewaysN: 60, liftN: 0, box, topMm: 20 }, 2.5);
  const lifted = verdictOf(held, { sidewaysN: 60, liftN: 100, box, topMm: 20 }, 2.5);
  expect(lifted.factor).toBeLessThan(flat.factor);
  expect(lifted.neededFactor).toBe(2.5);
});
