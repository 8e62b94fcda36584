import { faultText } from '../job/fault.ts';
import type { DialledAxis, Job } from '../job/job.ts';
import {
  correctionName,
  readCorrection,
  type Correction,
} from '../job/readings/correction-file.ts';
import { judgedPlace } from '../measure/dial-in.ts';
import { schemeChanges, schemeOf } from '../measure/scheme.ts';
import { deviationText } from '../sheet/words.ts';
import { Refusal } from './exit.ts';
import { find } from './find.ts';
import { wrapped } from './lines.ts';

/** That the offsets kept beside a job are void for it as it stands; nothing when they are not, or there are none. */
export function correctionWarning(path: string, job: Job): readonly string[] {
  const stored = storedCorrection(path);
  const changes = stored === null ? [] : schemeChanges(stored.scheme, schemeOf(job));
  if (changes.length === 0) return [];
  return [
    ...wrapped(
      `WARNING: ${correctionName(path)} holds for another set-up and is void for this one:`,
    ),
    ...changes.flatMap(({ key, was, is }) => wrapped(`- ${key} was ${was}, and is ${is}`, '  ')),
  ];
}

/** The job with the offsets that are kept beside it, when they hold for it as it stands. */
export function withDialled(path: string, job: Job): Job {
  const stored = storedCorrection(path);
  if (stored === null || schemeChanges(stored.scheme, schemeOf(job)).length > 0) return job;
  const { at, x, y, turns, measured } = stored;
  const dialled = {
    at: at ?? judgedPlace(job),
    x,
    y,
    turns,
    measured,
    file: correctionName(path),
  };
  return x === null && y === null ? job : { ...job, dialled };
}

/** What a prediction counts with, when offsets are dialled in. */
export function dialledLines({ dialled, shop }: Job): readonly string[] {
  if (dialled === undefined) return [];
  const { x, y, turns, measured, file } = dialled;
  const one = (axis: string, told: DialledAxis | null): readonly string[] =>
    told === null
      ? []
      : [
          `${axis} ${told.offsetMm < 0 ? '' : '+'}${deviationText(told.offsetMm, shop.units)}${told.calipered === null ? '' : ' and what each blank measures off its nominal length'}`,
        ];
  return wrapped(
    `Counts with the offsets of ${file} dialled into the second zero: ${[...one('X', x), ...one('Y', y)].join(', ')} (measured ${measured}, ${turns} ${turns === 1 ? 'turn' : 'turns'}). They hold while stops and zero stay as they were; when one was set anew, take the file away and turn a test piece again.`,
  );
}

/** The correction beside a job; null when there is none. @throws Refusal when the correction beside the job is faulty. */
export function storedCorrection(path: string): Correction | null {
  const name = correctionName(path);
  const bytes = find(name);
  if (bytes === null) return null;
  const { correction, faults } = readCorrection({ name, bytes });
  if (correction === null) throw new Refusal(faults.map(faultText).join('\n'));
  return correction;
}
