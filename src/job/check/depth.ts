import type { Context } from '../resolve/context.ts';
import { note } from '../resolve/context.ts';
import { depthCounts } from '../what-counts.ts';
import type { Known } from './job.ts';

/** Keys that only say something about heights. */
const ONLY_FOR_DEPTH = ['cup', 'thickness-taper', 'swarf'] as const;

/** Notes what is written about heights though no need asks for a depth. */
export function noteDepth(context: Context, { raw, features, needs }: Known): void {
  if (raw.blank === undefined || (raw.needs !== undefined && context.touched.has(raw.needs)))
    return;
  const asked = {
    needs: needs.map(({ need }) => need),
    features: features.map(({ feature }) => feature),
  };
  if (depthCounts(asked)) return;
  for (const key of ONLY_FOR_DEPTH)
    if (raw.blank[key] !== undefined)
      note(
        context,
        [raw.blank, key],
        `${key} only changes depths, and no need here is about depth`,
      );
}
