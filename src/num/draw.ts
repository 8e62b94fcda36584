import { sineOf } from './elementary.ts';
import { unreachable } from './invariant.ts';
import type { Distribution } from './distribution.ts';
import { normalQuantile } from './normal-quantile.ts';
import { fillHalfNormal, fillNormal } from './normal-table.ts';
import { studentByNormal } from './student-draw.ts';
import { uniformOf } from './stream.ts';

/**
 * Fills `count` draws of `distribution` into `draws` from `at`, one word each, by the inverse of its
 * distribution function, so that draws rise with the words (taken as unsigned).
 * Source: JCGM 101:2008, 6.4 and annex C.
 */
export function fillDraws(
  distribution: Distribution,
  words: Int32Array,
  draws: Float64Array,
  at: number,
  count: number,
): void {
  switch (distribution.kind) {
    case 'normal':
      fillNormal(words, distribution.mean, distribution.sd, draws, at, count);
      return;
    case 'half-normal':
      fillHalfNormal(words, distribution.sigma, draws, at, count);
      return;
    case 'rectangular': {
      const { low, high } = distribution;
      const width = high - low;
      for (let i = 0; i < count; i++) draws[at + i] = low + width * uniformOf(words[i]! >>> 0);
      return;
    }
    case 'scaled-t': {
      const { mean, scale, dof } = distribution;
      const student = studentByNormal(dof);
      fillNormal(words, 0, 1, draws, at, count);
      for (let i = at; i < at + count; i++) draws[i] = mean + scale * student(draws[i]!);
      return;
    }
    case 'either': {
      // The upper half of the words, taken as unsigned, has its sign bit set.
      const { low, high } = distribution;
      for (let i = 0; i < count; i++) draws[at + i] = words[i]! < 0 ? high : low;
      return;
    }
    case 'exactly':
    case 'triangular':
    case 'arcsine': {
      const quantile = quantileOf(distribution);
      for (let i = 0; i < count; i++) draws[at + i] = quantile(uniformOf(words[i]! >>> 0));
      return;
    }
    default:
      unreachable(distribution);
  }
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
      return (p) => middle + half * sineOf(Math.PI * (p - 0.5));
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
