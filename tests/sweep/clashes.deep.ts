import { expect, it } from 'vitest';
import { expectClashesAsSampled, expectFeaturesAsProgram } from './clash-laws.ts';

it('finds every clash that sampling finds, and no other, two thousand times', () => {
  expect(expectClashesAsSampled(131, 2_000)).toBeGreaterThan(1000);
  expect(expectFeaturesAsProgram(132, 1_000)).toBeGreaterThan(300);
});
