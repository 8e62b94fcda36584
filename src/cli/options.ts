import { BUILD_GROUPS, type BuildGroup } from './build-groups.ts';
import { Refusal } from './exit.ts';

export const DEFAULT_SEED = 1;
export const DEFAULT_TRIALS = 30_000;
const TRIALS = { least: 2_000, most: 5_000_000 };

/** @throws Refusal unless `text` is a whole number from 0 to 4294967295. */
export function seedFrom(text: string): number {
  return wholeNumber('--seed', text, 0, 0xffffffff);
}

/** @throws Refusal unless `text` is a number of trials that can be worked. */
export function trialsFrom(text: string): number {
  return wholeNumber('--trials', text, TRIALS.least, TRIALS.most);
}

function wholeNumber(option: string, text: string, least: number, most: number): number {
  const value = /^\d{1,12}$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new Refusal(`${option} ${text}: write a whole number from ${least} to ${most}`);
}

/** @throws Refusal unless `text` names groups of a build, with commas between. */
export function groupsFrom(text: string): ReadonlySet<BuildGroup> {
  const words = text.split(',').map((word) => word.trim());
  for (const word of words)
    if (!BUILD_GROUPS.some((group) => group === word))
      throw new Refusal(
        `--only ${text}: ${word === '' ? 'a group is missing' : `there is no group ${word}`}; write one or more of ${BUILD_GROUPS.join(', ')}, with commas between`,
      );
  return new Set(words as BuildGroup[]);
}
