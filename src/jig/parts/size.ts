import { invariant } from '../../num/invariant.ts';
import { cannot, figure, mm, type Cannot } from '../answer.ts';

/** A size that has a default of its own is always there. */
export function given(value: number | null): number {
  invariant(value !== null, 'a size without a default');
  return value;
}

/** The first of some demands that is not met, as a refusal, or null. */
export function unmet(part: string, demands: readonly Demand[]): Cannot | null {
  for (const { what, isMm, least, most, because } of demands) {
    if (least !== undefined && isMm < least)
      return cannot(
        `${part}: ${what} ${mm(isMm)} is too little: ${because}`,
        `${what}: ${figure(upwards(least))} or more`,
      );
    if (most !== undefined && isMm > most)
      return cannot(
        `${part}: ${what} ${mm(isMm)} is too much: ${because}`,
        `${what}: ${figure(downwards(most))} or less`,
      );
  }
  return null;
}

export interface Demand {
  /** The key of the size. */
  readonly what: string;
  readonly isMm: number;
  readonly least?: number;
  readonly most?: number;
  readonly because: string;
}

/** Two decimals that are on the safe side of the limit. */
const upwards = (value: number): number => Math.ceil(value * 100 - 1e-6) / 100;
const downwards = (value: number): number => Math.floor(value * 100 + 1e-6) / 100;
