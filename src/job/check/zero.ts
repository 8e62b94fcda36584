import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { pointMm } from '../resolve/lengths.ts';
import type { RawZero } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import { checkHole } from './hole.ts';
import type { Known } from './job.ts';

const PLACINGS = ['front-up', 'back-up'] as const;

/** A zero must exist before it is kept, and be touched on something that is there. */
export function checkZeros(context: Context, known: Known): void {
  const { raw, stops } = known;
  if (raw.zero === undefined) return;
  const first = raw.first === 'back' ? 'back-up' : 'front-up';
  for (const placing of PLACINGS) {
    const zero = raw.zero[placing];
    if (zero.xy === 'kept' && placing === first && !context.spoilt.has(raw))
      fault(
        context,
        [zero, 'xy'],
        `the ${placing} placing comes first, so there is no zero to keep`,
        `write stops, milled-stops, edges or middle, or first: ${first === 'back-up' ? 'front' : 'back'}`,
      );
    if (zero.xy === 'milled-stops' && stops !== null && stops.made.kind !== 'milled-in-place')
      fault(
        context,
        [zero, 'xy'],
        `milled-stops is the zero the stops were milled from, and these are ${stops.made.kind}`,
        'write xy: stops, or made: milled-in-place',
      );
    checkHole(context, known, zero, placing === first && !context.spoilt.has(raw));
    checkTouched(context, known, zero, 'xy-touched');
    checkTouched(context, known, zero, 'z-touched');
  }
}

function checkTouched(
  context: Context,
  { blank }: Known,
  zero: RawZero,
  key: 'xy-touched' | 'z-touched',
): void {
  const written = zero[key];
  if (written === undefined || blank === null) return;
  const point = pointMm(written);
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  (['x', 'y'] as const).forEach((axis, index) => {
    if (point[axis] >= 0 && point[axis] <= sizes[axis]) return;
    fault(
      context,
      [written, index],
      `${key} ${axis} = ${said(point[axis])} mm is off the blank, which spans 0 to ${said(sizes[axis])} mm`,
      `write 0 to ${said(sizes[axis])}`,
    );
  });
}
