import type { Edit } from '../../job/edit.ts';
import type { Job } from '../../job/job.ts';
import type { Variants } from '../../job/variants.ts';
import { placingsInOrder } from '../laid.ts';

/** What Z is touched on, in the order of work. */
export type HeightWay = readonly ['top' | 'bed', 'top' | 'bed'];

export const HEIGHT_WAYS: readonly HeightWay[] = [
  ['top', 'top'],
  ['top', 'bed'],
  ['bed', 'bed'],
  ['bed', 'top'],
];

export const heightWayOf = ({ first, zero: { frontUp, backUp } }: Job): HeightWay =>
  first === 'front' ? [frontUp.z.on, backUp.z.on] : [backUp.z.on, frontUp.z.on];

/** Only what differs from the job as it is written. */
export function heightEdits({ whole: { job } }: Variants, wanted: HeightWay): readonly Edit[] {
  const now = heightWayOf(job);
  return placingsInOrder(job).flatMap((placing, k): readonly Edit[] =>
    now[k] === wanted[k] ? [] : [{ path: ['zero', placing, 'z'], value: wanted[k]! }],
  );
}

export const heightWords = ([first, second]: HeightWay): string =>
  first === second ? `Z on the ${first} both times` : `Z on the ${first}, then the ${second}`;
