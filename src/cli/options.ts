import { BUILD_GROUPS, type BuildGroup } from './build-groups.ts';
import { Refusal } from './exit.ts';
import type { RunOptions } from './run-prediction.ts';

export const DEFAULT_SEED = 1;
/** Trials unless digits are asked for; then as many as they want, up to the most. */
export const DEFAULT_TRIALS = 100_000;
/** What `learn` holds finished parts against. */
export const LEARN_TRIALS = 30_000;
/** What a variant is tried with: enough to tell whole points. */
export const ADVICE_TRIALS = 4_000;
/** What `allow` tries: a chance of 99 % is then known to 0.1 points. */
export const ALLOW_TRIALS = 10_000;
export const DEFAULT_DIGITS = 2;
/** As many as a job may make in one batch. */
const MOST_BLANKS = 1000;
const TRIALS = { least: 2_000, most: 20_000_000 };
const DIGITS = { least: 1, most: 4 };
const THREADS = { least: 1, most: 8 };
const SECONDS = { least: 1, most: 86_400 };

/** What the options of a run of trials come to; `undefined` stands for one that was not written. */
export interface WrittenOptions {
  readonly seed: number;
  readonly digits?: number;
  readonly trials?: number;
  readonly seconds?: number;
  readonly threads?: number;
  /** As spreads are written in job files, or the name of a gauge of the shop. */
  readonly gauge?: string;
}

/** @param cores how many threads this computer can run at a time. */
export function runOptions(written: WrittenOptions, cores: number): RunOptions {
  const { seed, digits, trials, seconds, threads, gauge } = written;
  return {
    seed,
    digits: digits ?? DEFAULT_DIGITS,
    trials: trials ?? (digits === undefined ? DEFAULT_TRIALS : TRIALS.most),
    seconds: seconds ?? null,
    threads: threads ?? Math.min(cores, THREADS.most),
    gaugeText: gauge ?? null,
  };
}

/** @throws Refusal unless `text` is a whole number from 0 to 4294967295. */
export function seedFrom(text: string): number {
  return wholeNumber('--seed', text, 0, 0xffffffff);
}

/** @throws Refusal unless `text` is a number of trials that can be worked. */
export function trialsFrom(text: string): number {
  return wholeNumber('--trials', text, TRIALS.least, TRIALS.most);
}

/** @throws Refusal unless `text` is a number of digits that trials can come to. */
export function digitsFrom(text: string): number {
  return wholeNumber('--digits', text, DIGITS.least, DIGITS.most);
}

/** @throws Refusal unless `text` is a time to wait. */
export function secondsFrom(text: string): number {
  return wholeNumber('--seconds', text, SECONDS.least, SECONDS.most);
}

/** @throws Refusal unless `text` is a number of threads. */
export function threadsFrom(text: string): number {
  return wholeNumber('--threads', text, THREADS.least, THREADS.most);
}

/** @throws Refusal unless `text` is a share such as `99 %`, above 0 and below 100. */
export function shareFrom(text: string): number {
  const [, figure] = /^\s*(\d{1,3}(?:\.\d+)?)\s*%?\s*$/.exec(text) ?? [];
  const share = Number(figure) / 100;
  if (share > 0 && share < 1) return share;
  throw new Refusal(`--yield ${text}: write a share above 0 % and below 100 %, such as 95 %`);
}

/** @throws Refusal unless `text` is a number of blanks in a batch. */
export function blanksFrom(text: string): number {
  return wholeNumber('--of', text, 1, MOST_BLANKS);
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
