/**
 * What a wedge presses with when it is driven, N; friction on its slope and under its back, as ratios.
 * Source: the inclined plane, W = Q / (tan(a + f1) + tan f2); see the texts on jigs and fixtures.
 */
export const wedgeForceN = (
  drivenN: number,
  slopeRad: number,
  frictionOnSlope: number,
  frictionBehind: number,
): number => drivenN / (Math.tan(slopeRad + Math.atan(frictionOnSlope)) + frictionBehind);

/** Steepest slope at which a wedge does not slide back by itself, rad. Source: the same; it knows no vibration. */
export const lockingSlopeRad = (frictionOnSlope: number, frictionBehind: number): number =>
  Math.atan(frictionOnSlope) + Math.atan(frictionBehind);
