import { SLOPE } from '../text/slope.ts';
import { quantityOf, type MeasuredHeights, type MeasuredSource } from './measured-file.ts';

/** A figure as the measured file has it: `0.121 per 200`, `0.013`. */
export function figureText(of: string, value: number): string {
  const isSlope = quantityOf(of) === SLOPE;
  const digits = String(Number((isSlope ? value * 200 : value).toPrecision(4)) + 0);
  return isSlope ? `${digits} per 200` : digits;
}

/** With as many degrees of freedom Student's t is the normal, to a part in a thousand. */
const MANY = 1000;

/**
 * The measured file with new figures in place of older ones of the same thing; all others are kept.
 */
export function measuredText(
  before: readonly MeasuredSource[],
  found: readonly MeasuredSource[],
  heights: MeasuredHeights | null = null,
): string {
  const kept = before.filter(({ of }) => !found.some((one) => one.of === of));
  const sources = [...kept, ...found].sort((a, b) => (a.of < b.of ? -1 : 1));
  return [
    '# Written by flipwright: what was measured, in place of what was assumed. Each figure counts as',
    '# long as the shop file still says what it was; take a figure out to go back to that.',
    'flipwright-measured: 1',
    'sources:',
    ...sources.flatMap((one) => [
      `  - of: ${one.of}`,
      `    value: ${figureText(one.of, one.value)}`,
      `    sd: ${figureText(one.of, one.sd)}`,
      ...(one.dof < MANY ? [`    dof: ${Number(one.dof.toFixed(1))}`] : []),
      `    measured: ${one.measured}`,
      `    because: ${quoted(one.because)}`,
      `    was: ${quoted(one.was)}`,
    ]),
    ...(heights === null ? [] : heightLines(heights)),
    '',
  ].join('\n');
}

/** Heights place by place: what the bed does under a part, in place of its lean and unevenness. */
const heightLines = (heights: MeasuredHeights): readonly string[] => [
  'bed-heights:',
  `  measured: ${heights.measured}`,
  `  because: ${quoted(heights.because)}`,
  `  was: ${quoted(heights.was)}`,
  `  gauge: ${length(heights.gaugeSdMm)} # sd of one reading`,
  `  uneven: ${length(heights.unevenSdMm)} # sd of the bed about its plane`,
  `  reach: ${length(heights.reachMm)} # over which it changes`,
  '  points: # x, y, height',
  ...heights.points.map(
    ({ at, heightMm }) => `    - [${length(at.x)}, ${length(at.y)}, ${length(heightMm)}]`,
  ),
];

const length = (mm: number): string => String(Number(mm.toFixed(4)) + 0);

const quoted = (text: string): string => JSON.stringify(text);
