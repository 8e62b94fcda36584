import { SLOPE } from '../text/slope.ts';
import { quantityOf, type MeasuredSource } from './measured-file.ts';

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
    '',
  ].join('\n');
}

const quoted = (text: string): string => JSON.stringify(text);
