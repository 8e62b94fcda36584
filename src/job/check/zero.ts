import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { pointMm } from '../resolve/lengths.ts';
import type { RawZero } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import { shiftWhenTurned } from '../turned.ts';
import { checkFoundOn, foundOn } from './found-on.ts';
import { checkHole } from './hole.ts';
import type { Known } from './job.ts';

const PLACINGS = ['front-up', 'back-up'] as const;

/** A zero must exist before it is kept, and be touched on something that is there. */
export function checkZeros(context: Context, known: Known): void {
  const { raw } = known;
  if (raw.zero === undefined) return;
  const first = raw.first === 'back' ? 'back-up' : 'front-up';
  for (const placing of PLACINGS) {
    const zero = raw.zero[placing];
    if (zero.xy === 'kept' && placing === first && !context.spoilt.has(raw))
      fault(
        context,
        [zero, 'xy'],
        `the ${placing} placing comes first, so there is no zero to keep`,
        `write ${foundOn(known, true)}, or first: ${first === 'back-up' ? 'front' : 'back'}`,
      );
    checkFoundOn(context, known, zero, placing === first);
    checkHole(context, known, zero, placing === first && !context.spoilt.has(raw));
    checkTouched(context, known, zero, 'xy-touched');
    checkTouched(context, known, zero, 'z-touched');
  }
}

function checkTouched(
  context: Context,
  { blank, locating, raw }: Known,
  zero: RawZero,
  key: 'xy-touched' | 'z-touched',
): void {
  const written = zero[key];
  if (written === undefined || blank === null) return;
  const point = pointMm(written);
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  const isBackUp = zero === raw.zero?.['back-up'];
  const lies = isBackUp ? shiftWhenTurned(locating, raw.turn, blank) : { x: 0, y: 0 };
  (['x', 'y'] as const).forEach((axis, index) => {
    const [from, to] = [lies[axis], lies[axis] + sizes[axis]];
    if (point[axis] >= from && point[axis] <= to) return;
    fault(
      context,
      [written, index],
      `${key} ${axis} = ${said(point[axis])} mm is off the blank, which spans ${said(from)} to ${said(to)} mm`,
      `write ${said(from)} to ${said(to)}`,
    );
  });
}
