import { unreachable } from './invariant.ts';
import type { Distribution } from './distribution.ts';
import { studentQuantile } from './textbook.ts';

/** Mean of a distribution; of a scaled t with one degree of freedom there is none (NaN). */
export function meanOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'exactly':
      return distribution.value;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return (distribution.low + distribution.high) / 2;
    case 'normal':
      return distribution.mean;
    case 'half-normal':
      return distribution.sigma * Math.sqrt(2 / Math.PI);
    case 'scaled-t':
      return distribution.dof > 1 ? distribution.mean : NaN;
    default:
      return unreachable(distribution);
  }
}

/** Standard deviation; infinite for a scaled t of two degrees of freedom or fewer. Source: JCGM 101:2008 table 1. */
export function sdOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'exactly':
      return 0;
    case 'rectangular':
      return (distribution.high - distribution.low) / Math.sqrt(12);
    case 'triangular':
      return (distribution.high - distribution.low) / Math.sqrt(24);
    case 'arcsine':
      return (distribution.high - distribution.low) / Math.sqrt(8);
    case 'either':
      return (distribution.high - distribution.low) / 2;
    case 'normal':
      return distribution.sd;
    case 'half-normal':
      return distribution.sigma * Math.sqrt(1 - 2 / Math.PI);
    case 'scaled-t':
      return distribution.dof > 2
        ? distribution.scale * Math.sqrt(distribution.dof / (distribution.dof - 2))
        : Infinity;
    default:
      return unreachable(distribution);
  }
}

/** Limits for the worst case; of an unbounded one 3 sd, of a t its 99.7 % point (registration.md, rule 12). */
export function limitsOf(distribution: Distribution): readonly [number, number] {
  switch (distribution.kind) {
    case 'exactly':
      return [distribution.value, distribution.value];
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return [distribution.low, distribution.high];
    case 'normal':
      return [distribution.mean - 3 * distribution.sd, distribution.mean + 3 * distribution.sd];
    case 'half-normal':
      return [0, 3 * distribution.sigma];
    case 'scaled-t': {
      const half = distribution.scale * studentQuantile(0.9985, distribution.dof);
      return [distribution.mean - half, distribution.mean + half];
    }
    default:
      return unreachable(distribution);
  }
}
