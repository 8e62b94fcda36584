import { limitsOf } from '../../num/spread-of.ts';
import type { Context } from '../resolve/context.ts';
import { note } from '../resolve/context.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';

/** Two side stops stand one blank apart: a longer blank does not go in between them. */
export function noteBetweenStops(context: Context, { raw, blank, stops }: Known): void {
  if (blank === null || stops === null || raw.blank === undefined) return;
  if (stops.corner.frontUp === stops.corner.backUp) return;
  const alongX = stops.fence === 'lower' || stops.fence === 'upper';
  const [sizeMm, spread] = alongX
    ? [blank.widthMm, blank.widthSpread]
    : [blank.heightMm, blank.heightSpread];
  const [low, high] = limitsOf(spread.distribution);
  if (high <= 0) return;
  note(
    context,
    [raw.blank.size, alongX ? 0 : 1],
    `the two side stops stand ${said(sizeMm)} mm apart, and a blank up to ${said(sizeMm + high)} mm does not go in between; write the longest as the size: ${said(sizeMm + high)} ${said(low - high)}..0`,
  );
}
