import { unreachable } from './invariant.ts';
import type { Distribution } from './distribution.ts';
import { normalQuantile } from './normal-quantile.ts';
import { studentByNormal } from './student-draw.ts';
import { uniformOf, type Stream } from './stream.ts';

/**
 * Fills `count` draws of `distribution` into `draws` from `at`, one word of the stream each, by the
 * inverse of its distribution function, so that draws rise with the words.
 * Source: JCGM 101:2008, 6.4 and annex C.
 */
export function fillDraws(
  distribution: Distribution,
  stream: Stream,
  draws: Float64Array,
  at: number,
  count: number,
): void {
  const quantile = quantileOf(distribution);
  for (let i = at; i < at + count; i++) draws[i] = quantile(uniformOf(stream()));
}

/** The value below which a share `p`, 0 < p < 1, of the distribution lies. */
export function quantileOf(distribution: Distribution): (p: number) => number {
  switch (distribution.kind) {
    case 'exactly': {
      const { value } = distribution;
      return () => value;
    }
    case 'rectangular': {
      const { low, high } = distribution;
      return (p) => low + (high - low) * p;
    }
    case 'triangular': {
      const { low, high } = distribution;
      const half = (high - low) / 2;
      return (p) =>
        p < 0.5 ? low + half * Math.sqrt(2 * p) : high - half * Math.sqrt(2 * (1 - p));
    }
    case 'arcsine': {
      const middle = (distribution.low + distribution.high) / 2;
      const half = (distribution.high - distribution.low) / 2;
      return (p) => middle - half * Math.cos(Math.PI * p);
    }
    case 'normal': {
      const { mean, sd } = distribution;
      return (p) => mean + sd * normalQuantile(p);
    }
    case 'half-normal': {
      const { sigma } = distribution;
      // Through the lower tail, whose digits survive near 0.
      return (p) => -sigma * normalQuantile((1 - p) / 2);
    }
    case 'either': {
      const { low, high } = distribution;
      return (p) => (p < 0.5 ? low : high);
    }
    case 'scaled-t': {
      const { mean, scale, dof } = distribution;
      const student = studentByNormal(dof);
      return (p) => mean + scale * student(normalQuantile(p));
    }
    default:
      return unreachable(distribution);
  }
}
