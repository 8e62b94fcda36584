import { expect, it } from 'vitest';
import { expectAsByCentres, expectAsOtherLibrary, expectMoreHoldsMore } from './grip-laws.ts';

it('holds as two other ways say, many times', async () => {
  expectAsByCentres(151, 600);
  expect(await expectAsOtherLibrary(152, 800)).toBeGreaterThan(150);
  expectMoreHoldsMore(153, 2_000);
});
