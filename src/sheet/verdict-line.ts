import type { Units } from '../job/job.ts';
import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';
import { certainChanceText } from './certain-words.ts';
import { lengthText, levelText } from './words.ts';

/** Good enough or not, in one sentence, by the need that is least likely met. */
export function verdictLine(prediction: Prediction, goodEnoughShare: number, units: Units): string {
  const [least, ...others] = prediction.needs.toSorted((a, b) => a.chance - b.chance);
  if (!least) return 'The job names no need, so nothing is predicted.';
  const wanted = levelText(goodEnoughShare);
  const name = `“${least.name}”`;
  const result = `comes out ${limitsText(least, units)} for ${certainChanceText(least, prediction.digitsAsked)} of parts`;
  if (least.chance >= goodEnoughShare)
    return others.length === 0
      ? `Good enough: ${name} ${result} (wanted: ${wanted}).`
      : `Good enough: the least sure of ${others.length + 1} needs, ${name}, ${result} (wanted: ${wanted}).`;
  const alsoShort = others.filter((need) => need.chance < goodEnoughShare).length;
  const more = alsoShort === 0 ? '' : ` ${moreNeeds(alsoShort)} too.`;
  return `Not good enough yet: ${name} ${result}, and ${wanted} is wanted.${more}`;
}

/** `within 0.2 mm`, `between 60.5 mm and 61.5 mm`, `at least 2.5 mm`, `within ±0.1 mm per 100`. */
export function limitsText(need: NeedPrediction, units: Units): string {
  const { low, high } = need.limits;
  if (low === null) {
    if (high === null) return 'as it may';
    return `${need.kind === 'lip' || need.kind === 'size' ? 'at most' : 'within'} ${lengthText(high, units)}`;
  }
  if (need.kind === 'parallel' && high !== null)
    return `within ±${lengthText(high, units)}${per100(need)}`;
  return high === null
    ? `at least ${lengthText(low, units)}`
    : `between ${lengthText(low, units)} and ${lengthText(high, units)}`;
}

/** What a turn is told over: nothing for a length. */
export const per100 = (need: NeedPrediction): string =>
  need.unit === 'mm per 100' ? ' per 100' : '';

function moreNeeds(count: number): string {
  return count === 1 ? 'One other need falls short' : `${count} other needs fall short`;
}
