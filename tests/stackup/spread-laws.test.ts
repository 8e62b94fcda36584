import { describe, expect, it } from 'vitest';
import { EVERY_NEED } from '../setup/every-need.ts';
import { wholeShopJob } from '../setup/whole-shop.ts';
import { expectNoShareOfNothing, expectWideningWidens, predicted } from './spread-laws.ts';

const indexOf = (name: string): number => EVERY_NEED.findIndex((need) => need.name === name);

describe('a source that is nil', () => {
  it.each(['depth back', 'parallel'])('has no share of a need: %s', (name) => {
    expectNoShareOfNothing(indexOf(name));
  });

  it('but for a bias, which moves the figure and spreads nothing', () => {
    // Zero on top in front, on the bed at the back: the back is deeper by what the blank is thicker.
    const at = indexOf('depth back');
    const [nothing, bias] = [0, 0.1].map((value) => predicted(at, { kind: 'exactly', value }));
    expect(bias!.mean - nothing!.mean).toBeCloseTo(0.1, 9);
    expect(bias!.sd).toBeCloseTo(nothing!.sd, 9);
  });
});

describe('a wider spread', () => {
  it.each([
    ['depth back', /blank thickness|bed lean X|swarf|cup/],
    ['parallel', /machine lean|fence angle|blank square/],
  ] as const)('never narrows a need: %s', (name, ids) => {
    const job = wholeShopJob(({ needs }) => ({ needs: [needs[indexOf(name)]!] }));
    expectWideningWidens(job, 2000, (id) => ids.test(id));
  });
});
