import { chiSquareShareBelow } from '../num/textbook.ts';
import type { Estimate } from './estimate.ts';
import { effectiveDof } from './estimate.ts';

export interface Pooled {
  readonly estimate: Estimate;
  /** How likely estimates as good as these say they are would differ so much; 1 for a single one. */
  readonly agreement: number;
}

/** Less than this, and somebody should measure again rather than take the mean. */
export const DISAGREE = 0.01;

/**
 * The mean of independent estimates of one thing, each weighed by how well it is known. When they
 * differ by more than they allow, the sd grows to cover it (Birge's ratio).
 * Source: R. T. Birge, Physical Review 40 (1932) 207-227.
 */
export function pooled(estimates: readonly Estimate[]): Pooled {
  const weights = estimates.map(({ sd }) => 1 / (sd * sd));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const value = estimates.reduce((sum, one, k) => sum + (weights[k]! / total) * one.value, 0);
  const chi2 = estimates.reduce((sum, one, k) => sum + weights[k]! * (one.value - value) ** 2, 0);
  const spare = estimates.length - 1;
  const dof = effectiveDof(
    estimates.map((one, k) => ({ sd: (weights[k]! / total) * one.sd, dof: one.dof })),
  );
  const agreement = spare === 0 ? 1 : 1 - chiSquareShareBelow(chi2, spare);
  const birge = spare === 0 ? 1 : Math.max(1, Math.sqrt(chi2 / spare));
  return { estimate: { value, sd: birge / Math.sqrt(total), dof }, agreement };
}
