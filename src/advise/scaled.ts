import { BATCH } from '../num/batch.ts';
import { limitsOf, meanOf } from '../num/spread-of.ts';
import type { Source } from '../sources/source.ts';
import { inputsOf } from '../stackup/inputs.ts';
import type { Twist } from './outcome.ts';

/**
 * Draws one source at a share of its spread: about its mean, or, of what is never negative (a gap, a hump), about 0.
 */
export function scalerOf(
  sources: readonly Source[],
  { scaled }: Twist,
): (draws: Float64Array) => void {
  if (scaled === null) return () => undefined;
  const columns = inputsOf(sources).flatMap(({ source }, k) => {
    if (source.id !== scaled.source) return [];
    const [low] = limitsOf(source.distribution);
    return [{ k, about: low >= 0 ? 0 : meanOf(source.distribution) }];
  });
  return (draws) => {
    for (const { k, about } of columns)
      for (let i = k * BATCH; i < (k + 1) * BATCH; i++)
        draws[i] = about + scaled.factor * (draws[i]! - about);
  };
}
