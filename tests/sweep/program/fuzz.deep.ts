import { expect, it } from 'vitest';
import { expectAnswers, expectPlantedFound } from './fuzz-laws.ts';

it('answers any text, and finds what is planted, thousands of times', () => {
  expect(expectAnswers(105, 20_000)).toBeGreaterThan(5000);
  expectPlantedFound(106, 2_000);
});
