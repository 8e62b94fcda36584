import { misfitModel } from '../setup/misfit.ts';
import { certainChanceText, endsText, meanText } from '../sheet/certain-words.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import {
  quickly,
  type QuickAnswer,
  type QuickFigure,
  type QuickNeed,
} from '../stackup/fast/quickly.ts';
import type { Job, Units } from '../job/job.ts';
import { EXIT, Refusal } from './exit.ts';
import { columns, wrapped } from './lines.ts';
import { loadJob } from './load.ts';
import { DEFAULT_DIGITS, type WrittenOptions } from './options.ts';
import { limitWords, setUpWords } from './prediction-text.ts';
import type { Say } from './verbs.ts';

/**
 * `predict --quick`: every need at once from scrambled points, without what makes it. @throws Refusal of options that
 * belong to trials.
 */
export function quickVerb(path: string, options: WrittenOptions, json: boolean, say: Say): number {
  for (const name of ['digits', 'trials', 'seconds', 'gauge', 'threads'] as const)
    if (options[name] !== undefined)
      throw new Refusal(`--quick tries no blanks: leave out --${name}, or --quick`);
  const { job } = loadJob(path);
  const misfit = misfitModel(job);
  const { seed } = options;
  const answer = quickly(misfit, sourcesOf(job, misfit.deviations), { seed });
  say(
    json
      ? JSON.stringify({ json: 1, job: job.name, seed, quick: true, ...answer }, null, 2)
      : quickText(job, answer, seed),
  );
  return answer.needs.every(({ bad }) => 1 - bad.value >= job.goodEnoughShare)
    ? EXIT.good
    : EXIT.missed;
}

function quickText(job: Job, answer: QuickAnswer, seed: number): string {
  const { units } = job.shop;
  const head = ['  limit', 'mean', '95 % of parts', 'good parts', '', 'certain'];
  const rows = answer.needs.flatMap((need) => needRows(need, answer, job));
  const [first, ...lines] = columns([head, ...rows], [1, 3]);
  const named = answer.needs.flatMap((need) => [
    ...wrapped(need.name, '  '),
    ...lines.splice(0, need.largest === null ? 1 : 2),
  ]);
  return [
    job.name,
    ...wrapped(`  ${setUpWords(job)}`, '  '),
    '',
    first!,
    ...named,
    `figures in ${units === 'inch' ? 'inches' : 'mm'}, a turn in mm per 100`,
    '',
    ...wrapped(
      `${answer.evaluations} points, seed ${seed}. A quick answer: numbers are shown with the digits that are certain, ${DEFAULT_DIGITS} at most; what makes them, the worst case and batches are left to predict without --quick. All figures are estimates that rest on the spreads in the job and shop files: cut a test piece where it matters.`,
    ),
  ].join('\n');
}

function needRows(need: QuickNeed, answer: QuickAnswer, job: Job): readonly string[][] {
  const { units } = job.shop;
  const { low, high } = need.limits;
  const { value, sure } = need.bad;
  const chance = 1 - value;
  const judged = [
    certainChanceText(
      {
        chance,
        chance95: [Math.max(0, chance - sure), Math.min(1, chance + sure)],
        chanceSure: Math.max(sure, 1e-12),
      },
      DEFAULT_DIGITS,
    ),
    metWord(need, job.goodEnoughShare),
  ];
  const row = (figure: QuickFigure, limit: string, last: readonly string[]): string[] => [
    `  ${limit}`,
    ...figureWords(figure, answer, units),
    ...last,
    certainWord(figure, need),
  ];
  if (need.largest === null) return [row(need, limitWords(low, high, units), judged)];
  return [
    row(need, limitWords(low, null, units), judged),
    row(need.largest, limitWords(null, high, units), ['', '']),
  ];
}

function figureWords(
  { mean, sd, low, high }: QuickFigure,
  { moments }: QuickAnswer,
  units: Units,
): readonly string[] {
  const bare = (text: string): string => text.replace(/ (mm|in)$/, '');
  const written = {
    mean: mean.value,
    sd: sd.value,
    interval95: [low.value, high.value] as const,
    sure: { mean: mean.sure, sd: sd.sure, low: low.sure, high: high.sure },
  };
  return [
    moments === 'no mean' ? 'none' : bare(meanText(written, DEFAULT_DIGITS, units)),
    bare(endsText(written, DEFAULT_DIGITS, units)),
  ];
}

/** How many digits the least sure of the shown numbers has. */
function certainWord({ mean, low, high }: QuickFigure, { bad }: QuickNeed): string {
  const digits = Math.min(DEFAULT_DIGITS, mean.digits, low.digits, high.digits, bad.digits);
  return digits === 0 ? 'no digit' : digits === 1 ? '1 digit' : `${digits} digits`;
}

function metWord({ bad }: QuickNeed, goodEnoughShare: number): string {
  const off = 1 - bad.value - goodEnoughShare;
  const word = off >= 0 ? 'met' : 'missed';
  return Math.abs(off) < bad.sure ? `${word}, but close` : word;
}
