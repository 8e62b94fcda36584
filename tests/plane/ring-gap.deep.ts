import { expect, it } from 'vitest';
import { comparedGaps, comparedSteps, MISS_MM } from './ring-brute-force.ts';

const COUNT = 200;

it('judges outlines with hollows and arcs, landed somehow, as all their places do', () => {
  let stickingOut = 0;
  for (let k = 1; k <= COUNT; k++)
    for (const { seed, what, found, dense } of [
      ...comparedGaps(104729 * k),
      ...comparedSteps(104729 * k),
    ]) {
      expect(Math.abs(found - dense), `${what}, seed ${seed}`).toBeLessThan(MISS_MM);
      if (found < 0) stickingOut++;
    }
  expect(stickingOut).toBeGreaterThan(COUNT / 50);
}, 600_000);
