import type { Distribution } from '../../num/distribution.ts';
import { unreachable } from '../../num/invariant.ts';

/**
 * What stays when a spread is made smaller and smaller: nothing for what reaches nothing (`±0.4`, `0..0.1`), else the middle,
 * which is known and can be allowed for (a tool's bias, a clearance of 0.05 to 0.15).
 */
export function centreOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'exactly':
      return distribution.value;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either': {
      const { low, high } = distribution;
      return low <= 0 && high >= 0 ? 0 : (low + high) / 2;
    }
    case 'normal':
    case 'scaled-t':
      return distribution.mean;
    case 'half-normal':
      return 0;
    default:
      return unreachable(distribution);
  }
}

/** The same spread `by` times as large about its centre; every draw moves with it. `by` may be 0. */
export function scaledAbout(distribution: Distribution, by: number): Distribution {
  const centre = centreOf(distribution);
  const moved = (value: number): number => centre + by * (value - centre);
  if (by === 0) return { kind: 'exactly', value: centre };
  switch (distribution.kind) {
    case 'exactly':
      return distribution;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return {
        kind: distribution.kind,
        low: moved(distribution.low),
        high: moved(distribution.high),
      };
    case 'normal':
      return { ...distribution, sd: by * distribution.sd };
    case 'half-normal':
      return { ...distribution, sigma: by * distribution.sigma };
    case 'scaled-t':
      return { ...distribution, scale: by * distribution.scale };
    default:
      return unreachable(distribution);
  }
}

/** The figure by which a spread is written: half its width, the farther end of one that starts at 0, sd, sigma. */
export function sizeOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'exactly':
      return 0;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either': {
      const { low, high } = distribution;
      const centre = centreOf(distribution);
      return Math.max(high - centre, centre - low);
    }
    case 'normal':
      return distribution.sd;
    case 'half-normal':
      return distribution.sigma;
    case 'scaled-t':
      return distribution.scale;
    default:
      return unreachable(distribution);
  }
}
