import { linearSolve } from '../num/linear-solve.ts';
import type { Point } from '../plane/point.ts';

/**
 * How far a thin plate rises at each place for 1 mm under each screw: `rows[place][screw]`. The plate
 * takes the shape of least bending that goes through its screws, so that three screws tip it and
 * more may bend it. Null for fewer than three screws, or when all stand on one line: then the lifts
 * do not say how it lies.
 * Source: R. L. Harder and R. N. Desmarais, Journal of Aircraft 9 (1972) 189-191 (surface splines).
 */
export function plateRows(
  screws: readonly Point<'bed'>[],
  places: readonly Point<'bed'>[],
): readonly (readonly number[])[] | null {
  const m = screws.length;
  if (m < 3) return null;
  const span = Math.max(
    ...screws.map(({ x, y }) => Math.hypot(x - screws[0]!.x, y - screws[0]!.y)),
  );
  if (span === 0) return null;
  const local = ({ x, y }: Point<'bed'>): Point<'bed'> => ({
    x: (x - screws[0]!.x) / span,
    y: (y - screws[0]!.y) / span,
  });
  const knots = screws.map(local);
  const rowOf = (at: Point<'bed'>): number[] => [
    ...knots.map((knot) => bending(Math.hypot(at.x - knot.x, at.y - knot.y))),
    1,
    at.x,
    at.y,
  ];
  const corner = [0, 0, 0];
  const matrix = [
    ...knots.map(rowOf),
    [...knots.map(() => 1), ...corner],
    [...knots.map(({ x }) => x), ...corner],
    [...knots.map(({ y }) => y), ...corner],
  ];
  // The matrix is its own mirror image, so a row of influences solves the same system.
  const rows = places.map((place) => linearSolve(matrix, rowOf(local(place)))?.slice(0, m) ?? null);
  return rows.includes(null) ? null : (rows as (readonly number[])[]);
}

const bending = (r: number): number => (r === 0 ? 0 : r * r * Math.log(r));
