import { basename, extname, join } from 'node:path';
import { fileNameOf } from '../export/plain-words.ts';
import type { HoldPlan } from '../hold/plan.ts';
import type { Job } from '../job/job.ts';
import { EXIT } from './exit.ts';
import { holdJob } from './hold-job.ts';
import { holdJson } from './hold-json.ts';
import { wrapped } from './lines.ts';
import { loadJob } from './load.ts';
import type { Say } from './verbs.ts';
import { writeTogether } from './write-together.ts';
import { holdPage } from '../sheet/hold-page.ts';
import { bothGood, HOLD_CAUTION, holdHeadline, holdLines } from '../sheet/hold-words.ts';

interface HoldOptions {
  readonly out: string;
  readonly json: boolean;
  readonly version: string;
}

/** Prints how both placings are held and writes the drawing; 1 when something has to be put right first. */
export function holdVerb(path: string, { out, json, version }: HoldOptions, say: Say): number {
  const { job, holding } = loadJob(path);
  const tell = (text: string): void => {
    if (!json) for (const line of wrapped(text, '  ')) say(line);
  };
  const { plan, notes } = holdJob(job, holding, tell);
  const folder = join(out, fileNameOf(basename(path, extname(path))));
  const page = join(folder, 'hold.html');
  if (!json) sayPlan(job, plan, notes, say);
  writeTogether(folder, [{ name: 'hold.html', bytes: holdPage(job, plan, notes, version) }]);
  say(json ? holdJson(job, plan, notes, [page]) : `wrote ${page}`);
  return bothGood(plan) ? EXIT.good : EXIT.missed;
}

function sayPlan(job: Job, plan: HoldPlan, notes: readonly string[], say: Say): void {
  const tell = (text: string): void => {
    for (const line of wrapped(text, '  ')) say(line);
  };
  say(`${job.name}: holding down`);
  tell(HOLD_CAUTION);
  for (const note of notes) tell(`Note: ${note}`);
  const order = job.first === 'front' ? [plan.frontUp, plan.backUp] : [plan.backUp, plan.frontUp];
  for (const one of order) {
    say('');
    say(holdHeadline(one));
    for (const { kind, text } of holdLines(job, one))
      for (const line of wrapped(`${kind === 'bad' ? '! ' : '- '}${text}`, '  ')) say(line);
  }
  say('');
}
