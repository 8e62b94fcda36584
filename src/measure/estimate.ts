import { normalQuantile } from '../num/normal-quantile.ts';
import { studentQuantile } from '../num/textbook.ts';

/**
 * A figure that was measured: with `dof` infinite its sd is known from the gauge, else it was found
 * from the readings themselves and so few make it uncertain (Student's t; JCGM 100:2008, G.3).
 */
export interface Estimate {
  readonly value: number;
  readonly sd: number;
  readonly dof: number;
}

/** Half-width of the interval that holds the true figure 95 times in 100; infinite without a spare reading. */
export const half95 = ({ sd, dof }: Estimate): number => sd * factor95(dof);

/** How many sd make half a 95 % interval. */
export function factor95(dof: number): number {
  if (dof < 1) return Infinity;
  return Number.isFinite(dof) ? studentQuantile(0.975, dof) : normalQuantile(0.975);
}

/**
 * The sd of one reading: what the readings scatter by, but not less than what the gauge is known to be
 * good to, since a few readings can agree by luck.
 */
export function readingSd(
  scatter: number,
  dof: number,
  gaugeSd: number,
): { readonly sd: number; readonly dof: number } {
  return dof > 0 && scatter > gaugeSd ? { sd: scatter, dof } : { sd: gaugeSd, dof: Infinity };
}

/** Degrees of freedom of a sum of independent parts. Source: Welch-Satterthwaite, JCGM 100:2008, G.4.1. */
export function effectiveDof(
  parts: readonly { readonly sd: number; readonly dof: number }[],
): number {
  const total = parts.reduce((sum, { sd }) => sum + sd * sd, 0);
  const below = parts.reduce((sum, { sd, dof }) => sum + (sd * sd) ** 2 / dof, 0);
  return below === 0 ? Infinity : (total * total) / below;
}

/** A sum of independent estimates, each times its own factor. */
export function combined(
  parts: readonly { readonly of: Estimate; readonly times: number }[],
): Estimate {
  const scaled = parts.map(({ of, times }) => ({ sd: Math.abs(times) * of.sd, dof: of.dof }));
  return {
    value: parts.reduce((sum, { of, times }) => sum + times * of.value, 0),
    sd: Math.hypot(...scaled.map(({ sd }) => sd)),
    dof: effectiveDof(scaled),
  };
}
