import type { Blank, Fence, Touch } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawStops, RawTouch } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';

/** Contacts within this distance are one place of the edge: registration rule 6. */
const ONE_PLACE_MM = 5;

/** The stops must touch the blank: on its edges, below its top, fence at two places and side at one. */
export function checkContacts(context: Context, { raw, blank, locating, stops }: Known): void {
  const fence = locating?.locating === 'fence-and-dowel' ? locating.fenceAndDowel : stops;
  if (raw.stops === undefined || fence === null) return;
  countFence(context, raw.stops, fence.fenceTouch);
  if (stops !== null) countSide(context, raw.stops, stops.sideTouch);
  if (blank === null) return;
  const alongX = fence.fence === 'lower' || fence.fence === 'upper';
  const [fenceMm, sideMm] = alongX
    ? [blank.widthMm, blank.heightMm]
    : [blank.heightMm, blank.widthMm];
  checkReach(context, raw.stops, 'fence-touch', fence.fenceTouch, fenceMm);
  if (stops !== null) checkReach(context, raw.stops, 'side-touch', stops.sideTouch, sideMm);
  checkHeight(context, raw.stops, fence, blank);
}

function countFence(context: Context, raw: RawStops, fenceTouch: Touch): void {
  if (fenceTouch.kind === 'buttons' && fenceTouch.atMm.length !== 2) {
    const count = fenceTouch.atMm.length;
    fault(
      context,
      [raw, 'fence-touch'],
      `the fence has ${count} ${count === 1 ? 'button' : 'buttons'}, and a straight edge rests on 2`,
      'write two distances such as [30, 250], or {arm: [20, 260]}',
    );
  }
  checkApart(context, raw, 'fence-touch', fenceTouch);
}

function countSide(context: Context, raw: RawStops, sideTouch: Touch): void {
  if (sideTouch.kind === 'buttons' && sideTouch.atMm.length !== 1)
    fault(
      context,
      [raw, 'side-touch'],
      `the side stop has ${sideTouch.atMm.length} buttons, and the blank slides against 1`,
      'write one distance such as 90, or {arm: [20, 160]}',
    );
  if (sideTouch.kind === 'arm') checkApart(context, raw, 'side-touch', sideTouch);
}

function checkApart(
  context: Context,
  raw: RawStops,
  key: 'fence-touch' | 'side-touch',
  touch: Touch,
): void {
  const [from, to] = touch.kind === 'arm' ? [touch.fromMm, touch.toMm] : touch.atMm;
  if (from === undefined || to === undefined) return;
  if (touch.kind === 'arm' && from > to)
    fault(
      context,
      [raw, key],
      `the arm runs from ${said(from)} to ${said(to)} mm`,
      `write {arm: [${said(to)}, ${said(from)}]}`,
    );
  else if (Math.abs(to - from) < ONE_PLACE_MM)
    fault(
      context,
      [raw, key],
      `${key} at ${said(from)} and ${said(to)} mm is one place: they are less than ${ONE_PLACE_MM} mm apart`,
      'set them as far apart as the edge allows',
    );
}

function checkReach(
  context: Context,
  raw: RawStops,
  key: 'fence-touch' | 'side-touch',
  touch: Touch,
  edgeMm: number,
): void {
  const places = touch.kind === 'arm' ? [touch.fromMm, touch.toMm] : touch.atMm;
  places.forEach((placeMm, index) => {
    if (placeMm <= edgeMm) return;
    fault(
      context,
      placeIn(raw, key, index),
      `${key} ${said(placeMm)} mm is beyond the edge, which is ${said(edgeMm)} mm long`,
      `write 0 to ${said(edgeMm)}, from the front-up corner`,
    );
  });
}

/** Where the distance of that index is written. */
function placeIn(raw: RawStops, key: 'fence-touch' | 'side-touch', index: number) {
  const touch: RawTouch | undefined = raw[key];
  if (typeof touch !== 'object') return [raw, key] as const;
  return ['arm' in touch ? touch.arm : touch, index] as const;
}

function checkHeight(context: Context, raw: RawStops, { band }: Fence, { thickMm }: Blank): void {
  if (band.kind === 'plain' && band.heightMm >= thickMm)
    fault(
      context,
      [raw, 'height'],
      `the stops are ${said(band.heightMm)} mm high, and the blank is ${said(thickMm)} mm thick`,
      `write less than ${said(thickMm)}, with room for the cutter to pass`,
    );
  if (band.kind === 'narrow' && band.touchHeightMm >= thickMm)
    fault(
      context,
      [raw, 'touch-height'],
      `touch-height ${said(band.touchHeightMm)} mm is above the edge, and the blank is ${said(thickMm)} mm thick`,
      `write half the thickness, ${said(thickMm / 2)}`,
    );
}
