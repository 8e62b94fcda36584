import { describe, expect, it } from 'vitest';
import { expectDiscsAsSaid, expectMovedTheSame, expectShoesAsSaid } from './brute-laws.ts';

describe('trying places of the axis one by one', () => {
  it('never finds a disc over a body that was said to be beside it, nor nearer than said', () => {
    expect(expectDiscsAsSaid(23, 12)).toBeGreaterThan(400);
  });

  it('never finds the shoe over a body that was said to be beside it', () => {
    expect(expectShoesAsSaid(26, 20)).toBeGreaterThan(3);
  });
});

describe('moving everything together', () => {
  it('changes no clearance', () => {
    expectMovedTheSame(25, 25);
  });
});
