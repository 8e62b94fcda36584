import { Refusal } from './exit.ts';
import type { Adding } from './learn-log.ts';

/** @throws Refusal unless `text` is the number of a part. */
export function partFrom(text: string): number {
  if (/^[1-9]\d{0,5}$/.test(text)) return Number(text);
  throw new Refusal(`--part ${text}: write the number of the part: 1, 2, 3 ...`);
}

/** An option that may be given again and again. */
export const gathered = (one: string, before: readonly string[]): readonly string[] => [
  ...before,
  one,
];

/** What is to be logged; null for nothing. @throws Refusal when it is not said of which part. */
export function addingOf(options: {
  readonly part?: number;
  readonly add: readonly string[];
  readonly gauge: string;
  readonly note: string;
}): Adding | null {
  const { part, add, gauge, note } = options;
  if (part === undefined && add.length === 0) return null;
  if (part === undefined) throw new Refusal('--add: say of which part, as in --part 3');
  if (add.length === 0)
    throw new Refusal('--part: say what was measured, as in --add "shaft in the pocket=0.11"');
  return { part, figures: add, gauge, note };
}
