import { describe, it } from 'vitest';
import { EVERY_NEED } from '../setup/every-need.ts';
import { wholeShopJob } from '../setup/whole-shop.ts';
import { expectNoShareOfNothing, expectWideningWidens } from './spread-laws.ts';

const PLAIN = EVERY_NEED.map(({ name, kind }, index) => [name, kind, index] as const).filter(
  ([, kind]) => kind !== 'concentric' && kind !== 'misalignment',
);

describe('each need', () => {
  it.each(PLAIN)('gives no share to a source that is nil: %s (%s)', (_name, _kind, index) => {
    expectNoShareOfNothing(index);
  });

  it.each(PLAIN)('is never narrowed by any source made wider: %s (%s)', (_name, kind, index) => {
    const job = wholeShopJob(({ needs }) => ({ needs: [needs[index]!] }));
    const isSlow = kind === 'lip' || kind === 'meets';
    // The search for the worst case puts one thing after the other to its limits: where a figure bends it stays
    // short of what lies between them, and of a largest step, where several must change at once.
    const shortShare = kind === 'meets' ? 0.01 : 1e-3;
    expectWideningWidens(job, isSlow ? 1000 : 4000, () => true, shortShare);
  });
});
