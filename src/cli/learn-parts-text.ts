import type { Units } from '../job/job.ts';
import { meanHalf95, type Outcome, type Verdict } from '../measure/outcome.ts';
import { chanceText, deviationText, MM_PER_INCH, trueMinus } from '../sheet/words.ts';
import type { LoggedParts, PartsOfNeed } from './learn-log.ts';
import { wrapped } from './lines.ts';

/** Finished parts beside their prediction, need by need. */
export function partsLines({ rows, needs, others }: LoggedParts, units: Units): string[] {
  if (rows.length === 0) return ['The log is empty.'];
  const dates = rows.map(({ date }) => date).sort();
  const count = new Set(rows.map(({ part }) => part)).size;
  return [
    `Finished parts: ${count} logged, ${dates[0]!} to ${dates.at(-1)!}`,
    ...needs.flatMap((need) => ['', ...needLines(need, units)]),
    ...(others.length === 0 ? [] : ['', ...others.flatMap((text) => wrapped(`- ${text}`, '  '))]),
  ];
}

function needLines(
  { what, unit, expected, interval95, outcome, dialSign }: PartsOfNeed,
  units: Units,
): string[] {
  const figure = (value: number): string =>
    unit === 'mm' ? deviationText(value, units) : `${trueMinus(value.toFixed(3))} ${unit}`;
  const low = unit === 'mm' && units === 'inch' ? interval95[0] / MM_PER_INCH : interval95[0];
  const item = (text: string): string[] => wrapped(`- ${text}`, '  ');
  return [
    what,
    ...item(
      `predicted ${figure(expected.mean)}, 95 parts in 100 from ${trueMinus(low.toFixed(3))} to ${figure(interval95[1])}, ${chanceText(expected.chance)} good`,
    ),
    ...item(cameOut(outcome, figure)),
    ...item(verdictWords(outcome.verdict, outcome)),
    ...(dialSign !== null && outcome.count > 1 && Math.abs(outcome.mean.value) > meanHalf95(outcome)
      ? item(
          `to bring it back, move the second zero along ${what.slice(-1).toUpperCase()} by ${figure(-dialSign * outcome.mean.value)}, if stops and zero are still as they were`,
        )
      : []),
    ...(outcome.drift !== null && outcome.drift.sure > 0.95
      ? item(
          `drifting by ${figure(outcome.drift.perPart.value)} a part, ${percent(outcome.drift.sure)} sure: look for wear, warmth or a stop that creeps`,
        )
      : []),
  ];
}

function cameOut(outcome: Outcome, figure: (value: number) => string): string {
  const { count, goodCount, goodShare95, mean, sd } = outcome;
  if (count === 1 || sd === null)
    return `came out ${figure(mean.value)}, one part, ${goodCount === 1 ? 'good' : 'not good'}; one part says nothing about scatter`;
  return `came out ${figure(mean.value)} ±${figure(meanHalf95(outcome))} over ${count} parts, scatter ${figure(sd.value)} (the true one may be ${figure(sd.low)} to ${figure(sd.high)}), ${goodCount} good; by these alone at least ${chanceText(goodShare95[0])} are`;
}

function verdictWords({ kind, by, sure }: Verdict, { count }: Outcome): string {
  if (kind === 'as predicted')
    return `as predicted, as far as ${count} ${count === 1 ? 'part' : 'parts'} can tell`;
  if (by === 'middle')
    return `${kind} than predicted, ${percent(sure)} sure: the middle has moved ${kind === 'worse' ? 'towards' : 'away from'} the limit`;
  return kind === 'worse'
    ? `worse than predicted, ${percent(sure)} sure: they scatter more`
    : `steadier than predicted, ${percent(sure)} sure: they scatter less, and the middle is where it may be`;
}

/** Never more than it is: 97.6 % is told as 97 %. */
const percent = (share: number): string => `${Math.min(99, Math.floor(100 * share + 1e-9))} %`;
