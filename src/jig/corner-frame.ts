import type { Side } from '../setup/placing.ts';
import type { StopsJob } from '../job/job.ts';
import { mapped } from '../plane/move.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';

/**
 * The frame of one piece: x along the fence from its corner, y from the fence into the blank, so
 * that every piece is drawn once, whatever its hand. The piece itself stands at negative x or y.
 */
export interface CornerFrame {
  readonly corner: Point<'layout'>;
  readonly alongFence: Axis;
  readonly intoBlank: Axis;
  /** Lengths of the blank's edges along the fence and along the side stop. */
  readonly fenceLengthMm: number;
  readonly sideLengthMm: number;
}

interface Axis {
  readonly axis: 'x' | 'y';
  readonly sign: 1 | -1;
}

const INWARD: Record<Side, Axis> = {
  near: { axis: 'y', sign: 1 },
  far: { axis: 'y', sign: -1 },
  left: { axis: 'x', sign: 1 },
  right: { axis: 'x', sign: -1 },
};

export function cornerFrame(job: StopsJob, fence: Side, side: Side): CornerFrame {
  const { widthMm, heightMm } = job.blank;
  const alongX = fence === 'near' || fence === 'far';
  const has = (wanted: Side): boolean => fence === wanted || side === wanted;
  return {
    corner: { x: has('right') ? widthMm : 0, y: has('far') ? heightMm : 0 },
    alongFence: INWARD[side],
    intoBlank: INWARD[fence],
    fenceLengthMm: alongX ? widthMm : heightMm,
    sideLengthMm: alongX ? heightMm : widthMm,
  };
}

export function cornerInLayout(frame: CornerFrame, p: Point<'corner'>): Point<'layout'> {
  const place = { x: frame.corner.x, y: frame.corner.y };
  place[frame.alongFence.axis] += frame.alongFence.sign * p.x;
  place[frame.intoBlank.axis] += frame.intoBlank.sign * p.y;
  return place;
}

export function layoutInCorner(frame: CornerFrame, p: Point<'layout'>): Point<'corner'> {
  const from = { x: p.x - frame.corner.x, y: p.y - frame.corner.y };
  return {
    x: frame.alongFence.sign * from[frame.alongFence.axis],
    y: frame.intoBlank.sign * from[frame.intoBlank.axis],
  };
}

/** A counter-clockwise outline of the piece, counter-clockwise in the layout too. */
export function outlineInLayout(frame: CornerFrame, outline: Outline<'corner'>): Outline<'layout'> {
  const swapped = frame.alongFence.axis === 'y';
  const mirrored = frame.alongFence.sign * frame.intoBlank.sign < 0;
  return mapped<'corner', 'layout'>(outline, (p) => cornerInLayout(frame, p), swapped === mirrored);
}

/** Signs of x and y in which the faces of a piece look. */
export function towardsBlank(frame: CornerFrame): { readonly x: 1 | -1; readonly y: 1 | -1 } {
  return frame.alongFence.axis === 'x'
    ? { x: frame.alongFence.sign, y: frame.intoBlank.sign }
    : { x: frame.intoBlank.sign, y: frame.alongFence.sign };
}
