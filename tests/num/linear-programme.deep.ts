import { expect, it } from 'vitest';
import { expectAsOtherLibrary } from './linear-programme-laws.ts';

it('answers five thousand programmes as an independent library does', async () => {
  expect(await expectAsOtherLibrary(141, 5_000)).toBeGreaterThan(800);
});
