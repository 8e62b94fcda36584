import type { Bed, Blank, Corner, Inserts, Job, Stops } from '../job.ts';

/**
 * Where the front-up corner goes when the job does not say: bed frame, mm; null when the blank fits
 * nowhere. Screws hold stops best 10 to 25 mm outside the faces (common practice, no source), so the
 * first place is taken that has rows of inserts there: outside both side stops if it can be, else
 * outside the front-up one, else anywhere on the board.
 */
export function placeOnBed(bed: Bed, blank: Blank, stops: Stops): Job['onBed'] | null {
  const { xMm, yMm } = bed.spoilboard;
  const ends = endsInUse(stops);
  const corner = stops.corner.frontUp;
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
      x: x + (isRight(corner) ? blank.widthMm : 0),
      y: y + (isFar(corner) ? blank.heightMm : 0),
    },
    origin: {
      kind: 'assumed',
      because:
        bed.inserts === null
          ? 'the first place with room for the stops'
          : 'the first place with inserts beside the stops',
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

/** The low end of the blank along one axis, whole mm. */
function startOf(axis: Axis): number | null {
  const last = Math.floor(axis.boardMm - axis.sizeMm);
  if (!(last >= 0)) return null;
  const places = Array.from({ length: Math.min(last, 10_000) + 1 }, (_, start) => start);
  const hasRow = (from: number): boolean =>
    axis.rows.some((row) => row >= from + NEAREST_ROW_MM && row <= from + FARTHEST_ROW_MM);
  const below = (start: number): boolean => hasRow(start - NEAREST_ROW_MM - FARTHEST_ROW_MM);
  const above = (start: number): boolean => hasRow(start + axis.sizeMm);
  const { low, high } = axis.ends;
  return (
    places.find((start) => (!low || below(start)) && (!high || above(start))) ??
    places.find(axis.frontUp === 'low' ? below : above) ??
    Math.min(low || high ? FARTHEST_ROW_MM : 0, last)
  );
}

function endsInUse(stops: Stops): { readonly x: Axis['ends']; readonly y: Axis['ends'] } {
  const corners = [stops.corner.frontUp, stops.corner.backUp];
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
