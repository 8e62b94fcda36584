import { cornersOf } from '../located.ts';
import type { Bed, Blank, Corner, Inserts, Job, Locating } from '../job.ts';

/**
 * Where the front-up corner goes when the job does not say: bed frame, mm; null when the blank fits
 * nowhere. Screws hold stops best 10 to 25 mm outside the faces (common practice, no source), so the
 * first place is taken that has rows of inserts there: outside both side stops if it can be, else
 * outside the front-up one, else anywhere on the board.
 */
export function placeOnBed(bed: Bed, blank: Blank, locating: Locating): Job['onBed'] | null {
  const { xMm, yMm } = bed.spoilboard;
  const [corner, ...others] = cornersOf(locating);
  const ends = endsInUse([corner, ...others]);
  const x = startOf({
    sizeMm: blank.widthMm,
    boardMm: xMm,
    rows: rowsOf(bed.inserts, 'x'),
    ends: ends.x,
    frontUp: isRight(corner) ? 'high' : 'low',
  });
  const y = startOf({
    sizeMm: blank.heightMm,
    boardMm: yMm,
    rows: rowsOf(bed.inserts, 'y'),
    ends: ends.y,
    frontUp: isFar(corner) ? 'high' : 'low',
  });
  if (x === null || y === null) return null;
  return {
    value: {
      x: x.lowMm + (isRight(corner) ? blank.widthMm : 0),
      y: y.lowMm + (isFar(corner) ? blank.heightMm : 0),
    },
    origin: {
      kind: 'assumed',
      because:
        x.hasRows && y.hasRows
          ? 'the first place with inserts beside the stops'
          : 'the first place with room for the stops',
    },
  };
}

export const isRight = (corner: Corner): boolean => corner.endsWith('right');
export const isFar = (corner: Corner): boolean => corner.startsWith('far');

interface Axis {
  readonly sizeMm: number;
  readonly boardMm: number;
  readonly rows: readonly number[];
  /** At which ends of the blank along this axis a stop stands. */
  readonly ends: { readonly low: boolean; readonly high: boolean };
  /** The end that is in use with the front up. */
  readonly frontUp: 'low' | 'high';
}

const [NEAREST_ROW_MM, FARTHEST_ROW_MM] = [10, 25] as const;

/** The low end of the blank along one axis, whole mm, and whether there are rows for its stops. */
function startOf(axis: Axis): { readonly lowMm: number; readonly hasRows: boolean } | null {
  const last = Math.floor(axis.boardMm - axis.sizeMm);
  if (!(last >= 0)) return null;
  const places = Array.from({ length: Math.min(last, 10_000) + 1 }, (_, start) => start);
  const hasRow = (from: number, to: number): boolean =>
    axis.rows.some((row) => row >= from && row <= to);
  const below = (start: number): boolean => hasRow(start - FARTHEST_ROW_MM, start - NEAREST_ROW_MM);
  const above = (start: number): boolean =>
    hasRow(start + axis.sizeMm + NEAREST_ROW_MM, start + axis.sizeMm + FARTHEST_ROW_MM);
  const { low, high } = axis.ends;
  const withRows =
    places.find((start) => (!low || below(start)) && (!high || above(start))) ??
    places.find(axis.frontUp === 'low' ? below : above);
  if (withRows !== undefined) return { lowMm: withRows, hasRows: true };
  return { lowMm: Math.min(FARTHEST_ROW_MM, last), hasRows: false };
}

function endsInUse(corners: readonly Corner[]): {
  readonly x: Axis['ends'];
  readonly y: Axis['ends'];
} {
  return {
    x: { low: corners.some((corner) => !isRight(corner)), high: corners.some(isRight) },
    y: { low: corners.some((corner) => !isFar(corner)), high: corners.some(isFar) },
  };
}

const rowsOf = (inserts: Inserts | null, axis: 'x' | 'y'): readonly number[] =>
  inserts === null
    ? []
    : Array.from(
        { length: inserts.count[axis] },
        (_, index) => inserts.first[axis] + index * inserts.pitchMm[axis],
      );
