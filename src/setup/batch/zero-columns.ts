import { BATCH } from '../../num/batch.ts';
import type { ZeroXy } from '../../job/job.ts';
import type { Columns } from '../columns.ts';
import type { Axis } from '../deviation.ts';
import { placingKey } from '../touching.ts';
import type { Placing } from '../placing.ts';
import { inFrame, type SeatFrame } from '../seat-frame.ts';
import type { FacesColumns } from './faces-columns.ts';

/** How far off the zero of one placing was found, as in `ZeroFound`, a column each. */
export interface FoundColumns {
  readonly dx: Float64Array;
  readonly dy: Float64Array;
}

export const newFound = (): FoundColumns => ({
  dx: new Float64Array(BATCH),
  dy: new Float64Array(BATCH),
});

export type FillFound = (draws: Float64Array, count: number, found: FoundColumns) => void;

/** As `zeroFinder`, of a zero that comes with milled stops or is touched on the stops' faces. */
export function onStopsColumns(
  { faceUp }: Placing,
  frame: SeatFrame,
  xy: Extract<ZeroXy, { kind: 'milled-stops' | 'stops' }>,
  faces: FacesColumns,
  columns: Columns,
): FillFound {
  if (xy.kind === 'milled-stops')
    return (_draws, count, { dx, dy }) => {
      dx.fill(0, 0, count);
      dy.fill(0, 0, count);
    };
  // A deviation's address goes by the order of its members.
  const touch = (axis: Axis): number =>
    columns.of({ kind: 'zero-touch', placing: placingKey(faceUp), axis, touch: 1 });
  const [touchX, touchY] = [touch('x'), touch('y')];
  const place = xy.at === null ? null : inFrame(frame, xy.at);
  const alongX = frame.along === 'x';
  const [touchA, touchB] = alongX ? [touchX, touchY] : [touchY, touchX];
  const { alongSign, inwardSign } = frame;
  const { fence, fenceSlope, side, sideSlope } = faces;
  return (draws, count, { dx, dy }) => {
    for (let i = 0; i < count; i++) {
      const across = fenceSlope[i]!;
      const along = sideSlope[i]!;
      const cornerB = (fence[i]! + across * side[i]!) / (1 - across * along);
      const cornerA = side[i]! + along * (place === null ? cornerB : place.b);
      const fenceB = fence[i]! + across * (place === null ? cornerA : place.a);
      const a = cornerA + draws[touchA + i]!;
      const b = fenceB + draws[touchB + i]!;
      dx[i] = alongX ? alongSign * a : inwardSign * b;
      dy[i] = alongX ? inwardSign * b : alongSign * a;
    }
  };
}

/** Adds two columns of draws; offsets as `Columns.of` gives them. */
export function addDraws(
  { dx, dy }: FoundColumns,
  at: { readonly x: number; readonly y: number },
  draws: Float64Array,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    dx[i] = dx[i]! + draws[at.x + i]!;
    dy[i] = dy[i]! + draws[at.y + i]!;
  }
}
