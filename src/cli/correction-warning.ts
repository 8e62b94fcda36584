import { faultText } from '../job/fault.ts';
import type { Job } from '../job/job.ts';
import {
  correctionName,
  readCorrection,
  type Correction,
} from '../job/readings/correction-file.ts';
import { schemeChanges, schemeOf } from '../measure/scheme.ts';
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

/** The correction beside a job; null when there is none. @throws Refusal when the correction beside the job is faulty. */
export function storedCorrection(path: string): Correction | null {
  const name = correctionName(path);
  const bytes = find(name);
  if (bytes === null) return null;
  const { correction, faults } = readCorrection({ name, bytes });
  if (correction === null) throw new Refusal(faults.map(faultText).join('\n'));
  return correction;
}
