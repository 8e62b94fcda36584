import { DEFAULTS } from '../defaults.ts';
import type { Hold } from '../job.ts';
import type { RawHold } from '../schema/raw-hold.ts';
import type { Context } from './context.ts';
import { gapAt } from './spread.ts';

export function holdOf(context: Context, raw: RawHold): Hold {
  const pusher = raw.pusher ?? 'none';
  const row = pusher === 'towards-stops' ? DEFAULTS.noClampDrag : DEFAULTS.clampDrag;
  return { pusher, clampDrag: gapAt(context, [raw, 'clamp-drag'], raw['clamp-drag'], row) };
}
