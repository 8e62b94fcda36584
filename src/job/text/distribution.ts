import { unreachable } from '../../num/invariant.ts';
import type { Distribution } from '../../num/distribution.ts';

/** The same deviation times `by`, which must be above 0 (a diameter's becomes a radius's with 0.5). */
export function scaled(d: Distribution, by: number): Distribution {
  switch (d.kind) {
    case 'exactly':
      return { kind: d.kind, value: d.value * by };
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return { kind: d.kind, low: d.low * by, high: d.high * by };
    case 'normal':
      return { kind: d.kind, mean: d.mean * by, sd: d.sd * by };
    case 'half-normal':
      return { kind: d.kind, sigma: d.sigma * by };
    case 'scaled-t':
      return { kind: d.kind, mean: d.mean * by, scale: d.scale * by, dof: d.dof };
    default:
      return unreachable(d);
  }
}

/** The same deviation moved by `by`; null for a half-normal, which starts at 0 by its nature. */
export function shifted(d: Distribution, by: number): Distribution | null {
  switch (d.kind) {
    case 'exactly':
      return { kind: d.kind, value: d.value + by };
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return { kind: d.kind, low: d.low + by, high: d.high + by };
    case 'normal':
      return { kind: d.kind, mean: d.mean + by, sd: d.sd };
    case 'half-normal':
      return by === 0 ? d : null;
    case 'scaled-t':
      return { kind: d.kind, mean: d.mean + by, scale: d.scale, dof: d.dof };
    default:
      return unreachable(d);
  }
}

/** The smallest deviation that can be drawn; minus infinity for those without limits. */
export function lowestOf(d: Distribution): number {
  switch (d.kind) {
    case 'exactly':
      return d.value;
    case 'rectangular':
    case 'triangular':
    case 'arcsine':
    case 'either':
      return d.low;
    case 'half-normal':
      return 0;
    case 'normal':
    case 'scaled-t':
      return -Infinity;
    default:
      return unreachable(d);
  }
}
