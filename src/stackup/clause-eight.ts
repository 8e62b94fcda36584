import type { Source } from '../sources/source.ts';
import type { Chance } from './chance.ts';
import { RARE, toleranceOf } from './digits.ts';
import type { Straight } from './first-order.ts';
import { inputsOf } from './inputs.ts';
import type { FirstOrder } from './prediction.ts';

/** A jump of slope counts when it alone would move the result by this share of its standard deviation. */
const FELT = 0.1;

/**
 * Whether first order is good enough here: its 95 % ends against those of the trials, to one digit of the
 * standard deviation (JCGM 101:2008, clause 8), and its bad parts against theirs, which the standard does not ask.
 *
 * @param ends the 95 % ends that first order gives.
 * @param outputs the columns of results that the need is worked out from.
 */
export function clauseEight(
  first: { readonly mean: number; readonly sd: number; readonly chance: number },
  ends: readonly [number, number],
  trials: { readonly sd: number; readonly interval95: readonly [number, number] },
  chance: Chance,
  line: Straight,
  outputs: readonly number[],
  sources: readonly Source[],
): FirstOrder {
  const off = [
    Math.abs(ends[0] - trials.interval95[0]),
    Math.abs(ends[1] - trials.interval95[1]),
  ] as const;
  const tolerance = toleranceOf(trials.sd, 1);
  const felt = (k: number): boolean =>
    outputs.some((output) => line.kinks[output]![k]! > FELT * trials.sd);
  const switching = inputsOf(sources).flatMap(({ source }, k) => (felt(k) ? [source.id] : []));
  // Sure to be this many times as bad: the fewest bad parts that the trials allow.
  const leastBad = 1 - chance.chance95[1];
  const times = leastBad / Math.max(1 - first.chance, RARE / 10);
  const timesBad = leastBad > RARE && times >= 1.5 ? times : null;
  return {
    ...first,
    off,
    tolerance,
    // Ends that agree are no help where the tails beyond them do not.
    agrees: off[0] <= tolerance && off[1] <= tolerance && timesBad === null,
    switching: [...new Set(switching)],
    timesBad,
  };
}
