import { stopNumbers } from '../../../jig/numbers.ts';
import type { FenceAndDowel } from '../../../job/job.ts';
import type { Point } from '../../../plane/point.ts';
import { boundsOf } from '../../../plane/measure.ts';
import type { Side } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import type { SheetStop } from '../../sheet-input.ts';

/** The bar goes on past its outermost contact, mm. Common practice, no source. */
const PAST_CONTACT_MM = 20;

/** Outwards from the blank. */
const OUT: Readonly<Record<Side, readonly [number, number]>> = {
  near: [0, -1],
  far: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/** A fence without a side stop: a bar that the shop makes, as a body with the lands that touch. */
export function fenceBar(fence: FenceAndDowel, { frontUp }: Placings): SheetStop {
  const n = stopNumbers;
  const { contacts, base } = frontUp;
  const [outX, outY] = OUT[base.side];
  const band =
    fence.band.kind === 'plain'
      ? { lowMm: 0, highMm: fence.band.heightMm }
      : {
          lowMm: fence.band.touchHeightMm - n.bandHalfMm,
          highMm: fence.band.touchHeightMm + n.bandHalfMm,
        };
  const thickMm = Math.max(n.bodyThickMm, n.basePerHeight * band.highMm);
  const ends = boundsOf(contacts.map(({ at }) => at));
  const along = (mm: number): Point<'layout'> => ({
    x: Math.abs(outY) * mm,
    y: Math.abs(outX) * mm,
  });
  const place = (at: Point<'layout'>, by: number, out: number): Point<'layout'> => ({
    x: at.x + along(by).x + outX * out,
    y: at.y + along(by).y + outY * out,
  });
  const [low, high] = [
    { x: ends.lowX, y: ends.lowY },
    { x: ends.highX, y: ends.highY },
  ];
  const corners = [
    place(low, -PAST_CONTACT_MM, 0),
    place(high, PAST_CONTACT_MM, 0),
    place(high, PAST_CONTACT_MM, thickMm),
    place(low, -PAST_CONTACT_MM, thickMm),
  ];
  const half = n.landMm / 2;
  const isArm = fence.fenceTouch.kind === 'arm';
  const lands = isArm
    ? [{ ends: [low, high] as const, contacts: contacts.map(({ id }) => id) }]
    : contacts.map(({ at, id }) => ({
        ends: [place(at, -half, 0), place(at, half, 0)] as const,
        contacts: [id],
      }));
  return {
    body: {
      name: 'fence',
      outline: base.side === 'far' || base.side === 'left' ? corners : corners.toReversed(),
      lowMm: 0,
      highMm: band.highMm,
    },
    heads: [],
    screws: [],
    pins: [],
    lands: lands.map((land) => ({ face: 'fence', ...land })),
    towardsBlank: { x: outX > 0 ? -1 : 1, y: outY > 0 ? -1 : 1 },
    band,
    allowanceMm: fence.made.kind === 'milled-in-place' ? n.millingAllowanceMm : 0,
  };
}
