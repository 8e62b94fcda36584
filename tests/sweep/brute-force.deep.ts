import { describe, expect, it } from 'vitest';
import { expectDiscsAsSaid, expectMovedTheSame, expectShoesAsSaid } from './brute-laws.ts';

describe('trying places of the axis one by one, by the hundreds', () => {
  it('never finds a disc over a body that was said to be beside it, nor nearer than said', () => {
    expect(expectDiscsAsSaid(33, 500)).toBeGreaterThan(15_000);
  });

  it('never finds the shoe over a body that was said to be beside it', () => {
    expect(expectShoesAsSaid(34, 500)).toBeGreaterThan(50);
  });
});

describe('moving everything together, by the hundreds', () => {
  it('changes no clearance', () => {
    expectMovedTheSame(35, 500);
  });
});
