import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import { blankInLayout } from './place.ts';
import type { Placing } from './placing.ts';
import { inFrame, type SeatFrame } from './seat-frame.ts';
import { placingKey } from './touching.ts';
import type { Strains } from './wood-moves.ts';
import type { Landing } from './landing.ts';
import { asLayout, type ZeroFinder } from './zero.ts';

/** A hole of the first placing: where it really landed, its drawn centre, and the wood's strains since. */
export interface CutHole {
  readonly cut: Landing;
  readonly at: Point<'blank'>;
  readonly strains: Strains;
}

/**
 * Zero at the centre of a hole that the first placing cut right through: it carries the errors of that
 * cut, and where the blank lies now drops out for what is cut near it. The two touch errors, one an
 * axis, are those of the centre. X and Y are taken at half the blank's thickness.
 */
export function holeFinder(
  job: Job,
  placing: Placing,
  frame: SeatFrame,
  { cut, at, strains }: CutHole,
  columns: Columns,
): ZeroFinder {
  const place = blankInLayout(job, placing.mirror, at);
  const { a: nominalA, b: nominalB } = inFrame(frame, place);
  const key = placingKey(placing.faceUp);
  const touchX = columns.of({ kind: 'zero-touch', placing: key, axis: 'x', touch: 1 });
  const touchY = columns.of({ kind: 'zero-touch', placing: key, axis: 'y', touch: 1 });
  return {
    anchor: { x: place.x, xAtY: place.y, y: place.y, heightMm: job.blank.thickMm / 2 },
    find: (draws, i, _shape, pose, found) => {
      cut.locate(draws, i);
      // The hole's centre in the blank as it is now, less its drawn place.
      const { x: growX, y: growY } = strains;
      const offX = cut.x() * (1 + growX) + growX * at.x;
      const offY = cut.y() * (1 + growY) + growY * at.y;
      const alongX = frame.along === 'x';
      const offA = frame.blankAlongSign * (alongX ? offX : offY);
      const offB = frame.blankInwardSign * (alongX ? offY : offX);
      // Turned as the blank lies; cos - 1 without losing its digits.
      const less = -(pose.sin * pose.sin) / (1 + pose.cos);
      const a = offA + pose.backA;
      const b = offB + pose.backB;
      asLayout(
        frame,
        less * nominalA - pose.sin * nominalB + pose.cos * a - pose.sin * b,
        less * nominalB + pose.sin * nominalA + pose.cos * b + pose.sin * a,
        found,
      );
      found.dx += draws[touchX + i]!;
      found.dy += draws[touchY + i]!;
    },
  };
}
