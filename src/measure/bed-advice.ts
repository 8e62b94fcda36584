import type { NeedEffect } from './bed-effect.ts';
import type { BedSurvey } from './bed-survey.ts';
import { half95 } from './estimate.ts';
import type { ShimAnswer } from './shims.ts';
import type { SkimPlan } from './skim.ts';

/** What to do about a bed, and the figure that decided it. */
export type BedAdvice =
  /** Within what shims are good to. */
  | { readonly kind: 'leave alone'; readonly because: 'parallel'; readonly rangeMm: number }
  /** The part at hand hardly feels it: the largest share of what a need allows. */
  | { readonly kind: 'leave alone'; readonly because: 'needs'; readonly share: number }
  | { readonly kind: 'shim'; readonly expectedMm: number }
  | { readonly kind: 'skim'; readonly depthMm: number; readonly shimmedMm: number | null }
  /** Too thin to skim and not to be shimmed. */
  | { readonly kind: 'new board'; readonly thinnestMm: number };

/** How parallel shims make a bed at best, mm (common practice, no source). */
export const SHIMS_GOOD_TO_MM = 0.1;
/** A bed that takes less than this of what each need allows is not what to mend first (estimate). */
const SMALL_SHARE = 0.2;

export function bedAdvice(
  survey: BedSurvey,
  shims: ShimAnswer,
  skim: SkimPlan,
  effects: readonly NeedEffect[] | null,
): BedAdvice {
  const { rangeMm } = survey;
  if (rangeMm <= SHIMS_GOOD_TO_MM) return { kind: 'leave alone', because: 'parallel', rangeMm };
  if (effects !== null) {
    const shares = effects.map(
      ({ effect, margin }) => (Math.abs(effect.value) + half95(effect)) / margin,
    );
    const share = Math.max(0, ...shares);
    if (share < SMALL_SHARE) return { kind: 'leave alone', because: 'needs', share };
  }
  const shimmedMm = shims.kind === 'plan' ? shims.plan.expected.rangeMm : null;
  if (shimmedMm !== null && shimmedMm <= SHIMS_GOOD_TO_MM)
    return { kind: 'shim', expectedMm: shimmedMm };
  if (skim.isThickEnough) return { kind: 'skim', depthMm: skim.depthMm, shimmedMm };
  return shimmedMm !== null
    ? { kind: 'shim', expectedMm: shimmedMm }
    : { kind: 'new board', thinnestMm: skim.thinnestMm };
}
