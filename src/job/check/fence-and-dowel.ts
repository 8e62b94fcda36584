import type { FenceAndDowel } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';

/** The same edge must meet the fence in both placings, within reach of it, and play is only taken up along it. */
export function checkFenceAndDowel(
  context: Context,
  { raw, blank }: Known,
  { fence, fenceTouch, dowel }: FenceAndDowel,
): void {
  const { stops, turn } = raw;
  if (stops?.dowel === undefined || turn === undefined) return;
  const alongX = fence === 'lower' || fence === 'upper';
  if (alongX !== (turn === 'about-y')) {
    const [changing, way] = alongX ? ['near and far', 'Y'] : ['left and right', 'X'];
    fault(
      context,
      [stops, 'fence'],
      `turned ${turn}, the ${changing} edges change places, so the hole would not come back to its dowel`,
      `write a fence along ${way}, or turn: ${alongX ? 'about-y' : 'about-x'}`,
    );
    return;
  }
  const taken = dowel.takeUp;
  const isAcross = alongX
    ? taken === 'near' || taken === 'far'
    : taken === 'left' || taken === 'right';
  if (isAcross)
    fault(
      context,
      [stops.dowel, 'take-up'],
      `the fence holds the blank ${taken === 'near' || taken === 'far' ? 'near and far' : 'left and right'} already`,
      `write ${alongX ? 'left or right' : 'near or far'}, along the fence, or anywhere`,
    );
  if (blank === null) return;
  const lengthMm = alongX ? blank.widthMm : blank.heightMm;
  const shiftMm = 2 * dowel.at[0]![alongX ? 'x' : 'y'] - lengthMm;
  const places = fenceTouch.kind === 'arm' ? [fenceTouch.fromMm, fenceTouch.toMm] : fenceTouch.atMm;
  const off = places.find((mm) => mm < shiftMm || mm > lengthMm + shiftMm);
  if (off !== undefined)
    fault(
      context,
      [stops, 'fence-touch'],
      `turned over about its dowel, the blank spans ${said(shiftMm)} to ${said(lengthMm + shiftMm)} mm along the fence, and ${said(off)} mm is beyond its edge`,
      `write places between ${said(Math.max(0, shiftMm))} and ${said(Math.min(lengthMm, lengthMm + shiftMm))}, or set the dowel in the middle of the blank`,
    );
}
