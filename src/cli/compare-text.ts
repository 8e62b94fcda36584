import type { Comparison, Row } from '../advise/ways/compare.ts';
import { heightWords } from '../advise/ways/heights.ts';
import { wayWords } from '../advise/ways/words.ts';
import { depthCounts } from '../job/what-counts.ts';
import { hurtWords, partsWords, percentText, shortPoints } from '../sheet/advice-words.ts';
import { levelText } from '../sheet/words.ts';
import { flow } from './flow.ts';

const HEAD = 29;
const ALL_ALIKE = 8;

/** The ways of a job, the best first, for a terminal of 80 columns. */
export function compareText(found: Comparison, trials: number, seed: number): string {
  const { asWritten, rows, refused, tried } = found;
  const { job } = asWritten;
  const isSame = rows.every((row) => heightWords(row.heights) === heightWords(asWritten.heights));
  const heights = isSame || !depthCounts(job) ? 'left out' : 'told';
  const better = rows.filter((row) => !isWorse(row));
  const worse = rows.filter(isWorse);
  return [
    ...flow(
      `${job.name}: ${tried} ways to locate it, the same ${trials} blanks each (seed ${seed})`,
    ),
    ...flow(
      `Good: chance that a part meets every need (wanted of each need: ${levelText(job.goodEnoughShare)}). Gain: points against the job as it is. Minutes: for ${partsWords(job.parts.count)}, estimates.${heights === 'left out' && depthCounts(job) ? ` Everywhere ${heightWords(asWritten.heights)}.` : ''}`,
    ),
    '',
    '        good    gain  minutes  how',
    ...better.flatMap((row) => rowLines(row, rows.indexOf(row) + 1, heights)),
    ...(worse.length === 0 ? [] : ['', 'Surely worse than the job as it is:']),
    ...worse.flatMap((row) => worseLines(row, rows.indexOf(row) + 1)),
    ...refusedLines(refused),
  ].join('\n');
}

const isWorse = ({ gain, isAsWritten }: Row): boolean => !isAsWritten && gain.value < -2 * gain.se;

function headOf({ outcome, gain, work, isAsWritten }: Row, number: number): string {
  const gained = isAsWritten ? '' : shortPoints(gain);
  return `${String(number).padStart(2)}  ${percentText(outcome.all).padStart(8)}  ${gained.padStart(6)}  ${String(work.minutes).padStart(5)}    `;
}

function rowLines(row: Row, number: number, heights: 'told' | 'left out'): readonly string[] {
  const { worst, work, way } = row;
  const z = heights === 'told' ? `, ${heightWords(row.heights)}` : '';
  const mark = row.isAsWritten ? ' <- THE JOB AS IT IS' : '';
  const make = work.make.join(', ');
  return [
    ...block(headOf(row, number), `${wayWords(way)}${z}${mark}`),
    ...block(
      '',
      `Least sure: ${worst.need}, ${percentText(worst.chance)}${hurtWords(worst.hurts)}.`,
    ),
    ...block('', `To make: ${make}.`),
  ];
}

function worseLines(row: Row, number: number): readonly string[] {
  return block(
    headOf(row, number),
    `${wayWords(row.way)}: ${row.worst.need}${hurtWords(row.worst.hurts)}`,
  );
}

/** Text behind a head, its later lines under the first. */
const block = (head: string, text: string): readonly string[] =>
  flow(text, head.padEnd(HEAD), ' '.repeat(HEAD));

function refusedLines(refused: Comparison['refused']): readonly string[] {
  if (refused.length === 0) return [];
  const byReason = new Map<string, string[]>();
  for (const { way, because } of refused)
    byReason.set(because, [...(byReason.get(because) ?? []), wayWords(way)]);
  const all = [...byReason];
  const left = all.length - ALL_ALIKE;
  return [
    '',
    'Not possible here:',
    ...all.slice(0, ALL_ALIKE).flatMap(([because, ways]) => {
      const more = ways.length === 1 ? '' : ` (and ${ways.length - 1} more)`;
      return flow(`${ways[0]!}${more}: ${because}`, '- ');
    }),
    ...(left > 0 ? [`- and ${left} more reasons, in --json`] : []),
  ];
}
