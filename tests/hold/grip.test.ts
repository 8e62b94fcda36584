import { expect, it } from 'vitest';
import { expectAsByCentres, expectAsOtherLibrary, expectMoreHoldsMore } from './grip-laws.ts';

it('holds as the worst centre of turning says', () => {
  expectAsByCentres(51, 10);
});

it('holds as an independent library says', async () => {
  expect(await expectAsOtherLibrary(52, 12)).toBeGreaterThan(2);
});

it('holds no less for another contact', () => {
  expectMoreHoldsMore(53, 30);
});
