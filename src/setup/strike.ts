import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { localError } from './local-error.ts';
import type { ZeroAnchor, ZeroFound } from './zero.ts';

/**
 * Where the machine really cuts what it is told to cut at one place of the layout: off by (`x()`, `y()`) mm.
 * Source: registration.md section 1, "a cut commanded at (u, v)", and rules 2, 6, 16, 17.
 */
export interface Strike {
  /** Reads trial `i`; `aboveMm` is how far the cut's height is above the one at which X was touched. */
  readonly load: (draws: Float64Array, i: number, aboveMm: number) => void;
  readonly x: () => number;
  readonly y: () => number;
  /** After a load: by how much more it is off a millimetre further on: X along x and along y, Y along y. */
  readonly perMm: () => { readonly xx: number; readonly xy: number; readonly yy: number };
}

/** The parts of the machine's error that one cut shares over all its places. */
export interface Striking {
  readonly anchor: ZeroAnchor;
  readonly found: ZeroFound;
  readonly cut: string;
}

/** `localAt` is where the axes' local errors are taken: one place for all of one cut. */
export function strikeOf(
  job: Job,
  { anchor, found, cut }: Striking,
  place: Point<'layout'>,
  columns: Columns,
  localAt: Point<'layout'> = place,
): Strike {
  const lean = columns.of({ kind: 'machine-lean' });
  const scaleX = columns.of({ kind: 'scale', axis: 'x' });
  const scaleY = columns.of({ kind: 'scale', axis: 'y' });
  const cutterX = columns.of({ kind: 'cutter-lean', axis: 'x' });
  const cutterY = columns.of({ kind: 'cutter-lean', axis: 'y' });
  const noise = (axis: Axis): [number, number] => [
    columns.of({ kind: 'repeatability', cut, axis }),
    columns.of({ kind: 'lost-motion', cut, axis }),
  ];
  const [repeatX, lostX] = noise('x');
  const [repeatY, lostY] = noise('y');
  const localX = localError(job, 'x', localAt.x, anchor.x, columns);
  const localY = localError(job, 'y', localAt.y, anchor.y, columns);
  const fromX = place.x - anchor.x;
  const fromXAtY = place.y - anchor.xAtY;
  const fromY = place.y - anchor.y;
  let x = 0;
  let y = 0;
  const perMm = { xx: 0, xy: 0, yy: 0 };
  return {
    x: () => x,
    y: () => y,
    perMm: () => perMm,
    load: (draws, i, aboveMm) => {
      perMm.xx = draws[scaleX + i]!;
      perMm.xy = draws[lean + i]!;
      perMm.yy = draws[scaleY + i]!;
      x =
        found.dx +
        perMm.xx * fromX +
        perMm.xy * fromXAtY +
        draws[repeatX + i]! +
        draws[lostX + i]! +
        localX(draws, i) +
        draws[cutterX + i]! * aboveMm;
      y =
        found.dy +
        perMm.yy * fromY +
        draws[repeatY + i]! +
        draws[lostY + i]! +
        localY(draws, i) +
        draws[cutterY + i]! * aboveMm;
    },
  };
}
