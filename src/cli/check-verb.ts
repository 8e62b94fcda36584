import { assumptionsOf } from '../job/assumptions.ts';
import { noteText } from '../job/fault.ts';
import type { Job } from '../job/job.ts';
import { verdictLine } from '../sheet/verdict-line.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import { goodEnough } from '../verdict/needs-met.ts';
import { correctionWarning, dialledLines } from './correction-warning.ts';
import { EXIT, Refusal } from './exit.ts';
import { wrapped } from './lines.ts';
import { loadJob } from './load.ts';
import { DEFAULT_SEED } from './options.ts';
import { predictJob } from './predict-job.ts';
import type { Say } from './verbs.ts';

/** Enough trials to tell whether a need is likely missed. */
const CHECK_OPTIONS: PredictOptions = { seed: DEFAULT_SEED, trials: 10_000 };

/** All that is wrong, all that is assumed, and whether it is likely good enough as it stands. */
export async function checkVerb(path: string, json: boolean, say: Say): Promise<number> {
  if (json) return checkedJson(path, say);
  const { job, notes } = loadJob(path);
  const trouble = await troubleOnBed(job);
  for (const line of trouble) say(`${path}: ${line}`);
  if (trouble.length === 0) say(`${path}: nothing is wrong`);
  for (const note of notes) say(noteText(note));
  for (const line of [...dialledLines(job), ...correctionWarning(path, job)]) say(line);
  const assumed = assumptionsOf(job);
  say('');
  if (assumed.length === 0) say('Nothing is assumed: every figure is stated.');
  else say('Assumed, since neither the job nor the shop says it:');
  for (const { what, text, because } of assumed) {
    for (const line of wrapped(`  ${what}: ${text} (${because})`, '      ')) say(line);
  }
  const prediction = predictJob(job, CHECK_OPTIONS);
  say('');
  for (const line of wrapped(verdictLine(prediction, job.goodEnoughShare, job.shop.units)))
    say(line);
  const good = trouble.length === 0 && goodEnough(prediction, job.goodEnoughShare);
  return good ? EXIT.good : EXIT.missed;
}

/** What stands in the way on the bed. @throws Refusal when no stop can be made. */
async function troubleOnBed(job: Job): Promise<readonly string[]> {
  const { stopsFor } = await import('./stops-for.ts');
  const { bedTrouble } = await import('../sheet/locating/bed-trouble.ts');
  if (job.locating !== 'stops') return bedTrouble(job);
  stopsFor(job);
  return [];
}

/** The same as JSON; what is wrong is a list with places, not a message. */
async function checkedJson(path: string, say: Say): Promise<number> {
  const told = (rest: object): void => {
    say(JSON.stringify({ json: 1, file: path, ...rest }, null, 2));
  };
  try {
    const { job, notes } = loadJob(path);
    const trouble = await troubleOnBed(job);
    const prediction = predictJob(job, CHECK_OPTIONS);
    const good = trouble.length === 0 && goodEnough(prediction, job.goodEnoughShare);
    told({
      job: job.name,
      good,
      faults: [],
      trouble,
      notes,
      assumed: assumptionsOf(job),
      ...(job.dialled === undefined ? {} : { dialled: job.dialled }),
      // Offsets that are kept beside the job and void for it as it stands, as the terminal says it.
      warnings: correctionWarning(path, job),
      needs: prediction.needs.map(({ name, chance, chanceSe }) => ({ name, chance, chanceSe })),
    });
    return good ? EXIT.good : EXIT.missed;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    told({
      good: false,
      faults: error.faults.length > 0 ? error.faults : [{ message: error.message }],
    });
    return error.code;
  }
}
