/** Numbers of the parts beside the stops that nobody can choose, mm. Common practice, no source. */
export const partNumbers = {
  /** Corners of plates, rounded. */
  cornerMm: 3,
  /** Between two holes, at least. */
  betweenHolesMm: 3,
  /** Letters, their strokes and how deep they are cut. */
  letterMm: 6,
  strokeMm: 0.8,
  engraveMm: 0.4,
  /** A strap's nose is no thinner than this. */
  noseLeastMm: 5,
  /** From the tip of a strap to its slot. */
  noseToSlotMm: 18,
  /** What a strap lies on behind its slot. */
  heelMm: 20,
  /** A threaded insert takes up so much of the bed round its middle: an estimate. */
  insertRadiusMm: 6,
  /** Width that a T-track takes of the bed, its flanks counted: an estimate, common ones are 17 to 20. */
  trackWideMm: 20,
} as const;

/**
 * Friction that may be counted on to keep a cam or a wedge where it is: wood or print on wood, vibrating.
 * Source: estimate; the tables of friction in use for holding say 0.20 and lower for dusty faces, and
 * the old bench rule D/e of 16 or more stands for 0.125.
 */
export const LOCKING_FRICTION = 0.125;
