import { expect, it } from 'vitest';
import { expectBestOfAll, expectSoundPlans } from './plan-laws.ts';

it('is sound, and the best of all sets, many times', () => {
  expect(expectSoundPlans(161, 80)).toBeGreaterThan(100);
  expect(expectBestOfAll(162, 150)).toBeGreaterThan(500);
});
