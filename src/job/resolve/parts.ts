import type { Parts } from '../job.ts';
import type { RawParts } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault } from './context.ts';

/** More blanks than a shop makes of one thing; a larger figure is a slip of the finger. */
const MOST_PARTS = 1000;

export function partsOf(context: Context, raw: RawParts): Parts {
  const count = raw.count ?? 1;
  if (count < 1 || count > MOST_PARTS)
    fault(
      context,
      [raw, 'count'],
      `count ${count} is not a number of parts`,
      `write 1 to ${MOST_PARTS}`,
    );
  return { count, order: raw.order ?? 'each-in-turn' };
}
