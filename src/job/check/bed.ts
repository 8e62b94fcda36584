import { cornersOf } from '../located.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { isFar, isRight } from '../resolve/on-bed.ts';
import { said } from '../text/said.ts';
import { shiftWhenTurned } from '../turned.ts';
import type { Known } from './job.ts';

/** The blank must be within the machine's travel and lie on the board. */
export function checkBed(context: Context, { raw, shop, blank, locating, onBed }: Known): void {
  if (blank === null || raw.blank === undefined) return;
  const { travelMm } = shop.machine;
  const { spoilboard } = shop.bed;
  const limits = [
    [blank.widthMm, 'along X', travelMm.x, spoilboard.xMm],
    [blank.heightMm, 'along Y', travelMm.y, spoilboard.yMm],
    [blank.thickMm, 'thick', travelMm.z, Infinity],
  ] as const;
  limits.forEach(([sizeMm, way, travel, board], index) => {
    const limitMm = Math.min(travel, board);
    if (sizeMm <= limitMm) return;
    const what = travel <= board ? 'the machine travels' : 'the spoilboard measures';
    fault(
      context,
      [raw.blank!.size, index],
      `the blank is ${said(sizeMm)} mm ${way}, and ${what} ${said(limitMm)} mm`,
      `write at most ${said(limitMm)}`,
    );
  });
  if (blank.widthMm > spoilboard.xMm || blank.heightMm > spoilboard.yMm) return;
  if (locating === null || onBed === null) return;
  turnedOver(context, { raw, blank, locating, onBed }, spoilboard);
  if (raw['on-bed'] === undefined) return;
  const [corner] = cornersOf(locating);
  hangsOver(
    context,
    raw['on-bed'],
    0,
    onBed.value.x,
    blank.widthMm,
    spoilboard.xMm,
    isRight(corner),
    'x',
  );
  hangsOver(
    context,
    raw['on-bed'],
    1,
    onBed.value.y,
    blank.heightMm,
    spoilboard.yMm,
    isFar(corner),
    'y',
  );
}

/** Turned over about dowels that are not in its middle, the blank lies further on. */
function turnedOver(
  context: Context,
  { raw, blank, locating, onBed }: Pick<Known, 'raw' | 'blank' | 'locating' | 'onBed'>,
  board: { readonly xMm: number; readonly yMm: number },
): void {
  if (raw.turn === undefined || blank === null || locating === null || onBed === null) return;
  const axis = raw.turn === 'about-y' ? 'x' : 'y';
  const sizeMm = axis === 'x' ? blank.widthMm : blank.heightMm;
  const shiftMm = shiftWhenTurned(locating, raw.turn, blank)[axis];
  if (shiftMm === 0) return;
  const [corner] = cornersOf(locating);
  const isHighEnd = axis === 'x' ? isRight(corner) : isFar(corner);
  const boardMm = axis === 'x' ? board.xMm : board.yMm;
  const low = onBed.value[axis] + shiftMm - (isHighEnd ? sizeMm : 0);
  if (low >= 0 && low + sizeMm <= boardMm) return;
  // Where the corner can stand with the front up, so that both layings are on the board.
  const start = isHighEnd ? sizeMm : 0;
  const least = start + Math.max(0, -shiftMm);
  const most = start + boardMm - sizeMm - Math.max(0, shiftMm);
  const written = raw['on-bed'];
  const place = written !== undefined ? '' : `on-bed: with ${axis} `;
  fault(
    context,
    written !== undefined ? [written, axis === 'x' ? 0 : 1] : [raw, 'turn'],
    `turned over, the blank would lie from ${said(low)} to ${said(low + sizeMm)} mm along ${axis.toUpperCase()}, and the spoilboard ends at 0 and ${said(boardMm)} mm`,
    least > most
      ? 'set the dowels nearer to the middle of the blank'
      : `write ${place}${said(least)} to ${said(most)}, or set the dowels nearer to the middle of the blank`,
  );
}

function hangsOver(
  context: Context,
  onBed: object,
  index: 0 | 1,
  cornerMm: number,
  sizeMm: number,
  boardMm: number,
  isHighEnd: boolean,
  axis: 'x' | 'y',
): void {
  const low = isHighEnd ? cornerMm - sizeMm : cornerMm;
  const high = low + sizeMm;
  if (low >= 0 && high <= boardMm) return;
  const [least, most] = isHighEnd ? [sizeMm, boardMm] : [0, boardMm - sizeMm];
  fault(
    context,
    [onBed, index],
    `the blank would lie from ${said(low)} to ${said(high)} mm along ${axis.toUpperCase()}, and the spoilboard ends at 0 and ${said(boardMm)} mm`,
    `write ${said(least)} to ${said(most)}`,
  );
}
