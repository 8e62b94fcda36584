import type { ArcPlane, Finding, Move, Spot, WorkZero } from './program.ts';

export type Three = [number, number, number];
export const AXIS_LETTERS = ['X', 'Y', 'Z'] as const;

/** What a controller keeps from line to line. Lengths in mm; a place that no line has told is NaN. */
export interface State {
  /** Counted from the work zero in use, without what G92 adds. */
  place: Three;
  /** What G92 adds to a written place. */
  shift: Three;
  shiftKept: Three;
  motion: number | null;
  plane: ArcPlane;
  units: 'mm' | 'inch';
  unitsAreSaid: boolean;
  isAbsolute: boolean;
  isArcAbsolute: boolean;
  isInverseTime: boolean;
  returnsToR: boolean;
  zero: WorkZero;
  feedMmPerMin: number | null;
  tool: number | null;
  nextTool: number | null;
  cycle: { z: number | null; r: number | null; q: number | null };
  isOver: boolean;
}

export const startOf = (units: 'mm' | 'inch'): State => ({
  place: [NaN, NaN, NaN],
  shift: [0, 0, 0],
  shiftKept: [0, 0, 0],
  motion: null,
  plane: 'xy',
  units,
  unitsAreSaid: false,
  isAbsolute: true,
  isArcAbsolute: false,
  isInverseTime: false,
  returnsToR: false,
  zero: 'G54',
  feedMmPerMin: null,
  tool: null,
  nextTool: null,
  cycle: { z: null, r: null, q: null },
  isOver: false,
});

/** Where a line's results go. */
export interface Out {
  readonly line: number;
  move(move: Omit<Move, 'line' | 'zero' | 'tool'>): void;
  find(kind: Finding['kind'], message: string): void;
  /** Told for the first line only. */
  findOnce(key: string, kind: Finding['kind'], message: string): void;
}

export const mmPerUnit = ({ units }: State): number => (units === 'inch' ? 25.4 : 1);

/** The place, or null while an axis is not known. */
export function spotOf([x, y, z]: Readonly<Three>): Spot | null {
  return Number.isNaN(x + y + z) ? null : { x, y, z };
}
