import { DEFAULTS } from '../defaults.ts';
import type { Bed, Inserts } from '../job.ts';
import type { RawBed, RawInserts } from '../schema/raw-shop.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm, pointMm } from './lengths.ts';
import { spreadAt } from './spread.ts';

export function bedOf(context: Context, raw: RawBed): Bed {
  const inserts = raw.inserts;
  return {
    leanX: spreadAt(context, [raw, 'lean-x'], raw['lean-x'], DEFAULTS.bedLean),
    leanY: spreadAt(context, [raw, 'lean-y'], raw['lean-y'], DEFAULTS.bedLean),
    unevenness: spreadAt(context, [raw, 'unevenness'], raw.unevenness, DEFAULTS.unevenness),
    spoilboard: spoilboardOf(context, raw),
    inserts: inserts === undefined ? null : insertsOf(context, inserts),
  };
}

function spoilboardOf(context: Context, raw: RawBed): Bed['spoilboard'] {
  const board = raw.spoilboard;
  if (board !== undefined)
    return { xMm: mm(board.size[0]), yMm: mm(board.size[1]), thickMm: mm(board.thickness) };
  if (!context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      'bed: spoilboard is missing',
      'write spoilboard: {size: [600, 400], thickness: 18} in the shop file',
    );
  // The job is refused; without a board nothing hangs over it.
  return { xMm: Infinity, yMm: Infinity, thickMm: 0 };
}

function insertsOf(context: Context, raw: RawInserts): Inserts {
  const [x, y] = raw.count;
  if (x < 1 || y < 1 || x > 1000 || y > 1000)
    fault(context, [raw, 'count'], `count ${x} by ${y} is not a number of rows`, 'write 1 to 1000');
  return {
    thread: raw.thread,
    first: pointMm(raw.first),
    pitchMm: pointMm(raw.pitch),
    count: { x, y },
  };
}
