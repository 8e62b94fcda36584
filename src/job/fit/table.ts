/**
 * ISO 286 in whole micrometres, for diameters up to 50 mm. Each row has one figure for every range of
 * `UP_TO_MM`. Source: tests/reference/geometry.md section 1 (ISO 286 as printed in handbooks and in JIS B 0401).
 */

/** The ranges run from over the last figure, up to and including this one. */
export const UP_TO_MM: readonly number[] = [3, 6, 10, 18, 30, 50];

type Row = readonly number[];

/** Width of the tolerance of each grade, IT5 to IT12. */
export const WIDTH_UM: Readonly<Record<number, Row>> = {
  5: [4, 5, 6, 8, 9, 11],
  6: [6, 8, 9, 11, 13, 16],
  7: [10, 12, 15, 18, 21, 25],
  8: [14, 18, 22, 27, 33, 39],
  9: [25, 30, 36, 43, 52, 62],
  10: [40, 48, 58, 70, 84, 100],
  11: [60, 75, 90, 110, 130, 160],
  12: [100, 120, 150, 180, 210, 250],
};

/** Where a letter puts its tolerance, and for which grades that is tabled. */
export interface Letter {
  /** The limit that is nearer to the nominal diameter, which the letter fixes. */
  readonly fixes: 'upper' | 'lower';
  readonly deviationUm: Row;
  readonly grades: readonly [number, number];
  /** The limit lies higher by as much as the grade is wider than the one before it (over 3 mm). */
  readonly isRaised: boolean;
}

const letter = (
  fixes: 'upper' | 'lower',
  deviationUm: Row,
  grades: readonly [number, number] = [5, 12],
  isRaised = false,
): Letter => ({ fixes, deviationUm, grades, isRaised });

export const SHAFTS: Readonly<Record<string, Letter>> = {
  f: letter('upper', [-6, -10, -13, -16, -20, -25]),
  g: letter('upper', [-2, -4, -5, -6, -7, -9]),
  h: letter('upper', [0, 0, 0, 0, 0, 0]),
  k: letter('lower', [0, 1, 1, 1, 2, 2], [5, 7]),
  m: letter('lower', [2, 4, 6, 7, 8, 9]),
  n: letter('lower', [4, 8, 10, 12, 15, 17]),
  p: letter('lower', [6, 12, 15, 18, 22, 26]),
};

export const HOLES: Readonly<Record<string, Letter>> = {
  F: letter('lower', [6, 10, 13, 16, 20, 25]),
  G: letter('lower', [2, 4, 5, 6, 7, 9]),
  H: letter('lower', [0, 0, 0, 0, 0, 0]),
  N: letter('upper', [-4, -8, -10, -12, -15, -17], [6, 8], true),
  P: letter('upper', [-6, -12, -15, -18, -22, -26], [6, 7], true),
};
