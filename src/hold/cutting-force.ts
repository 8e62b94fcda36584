import { holdNumbers } from './numbers.ts';

/** One cut of one cutter. */
export interface CutOf {
  readonly diameterMm: number;
  readonly fluteCount: number;
  readonly feedMmPerMin: number;
  readonly speedPerMin: number;
  /** Depth of one pass, and how far the cutter is engaged sideways. */
  readonly stepMm: number;
  readonly sideMm: number;
  /** N/mm2 for a chip of 0.1 mm. */
  readonly cutting: number;
  /** Tangent of the helix: 0 for straight flutes. */
  readonly helixTangent: number;
}

/** Forces of a cutter on the work, N. Estimates: nobody has published them for small routers. */
export interface CuttingForce {
  readonly chipMm: number;
  readonly tangentialN: number;
  /** In the plane, in any direction. */
  readonly sidewaysN: number;
  /** Along the spindle, without friction at the edge: the most that it can be. */
  readonly axialN: number;
}

/**
 * Forces of a sharp cutter: k = k(0.1) (h / 0.1)^-0.4 on the largest chip, tooth by tooth, radial force
 * 0.6 of the tangential one.
 *
 * Estimate of ours, anchored on the 32 to 38 N/mm2 that A. Palubicki (Materials 14 (2021) 2208) measured
 * in particleboard; geometry of the chip by H. El-Hofy, Fundamentals of Machining Processes.
 */
export function sharpForce(cut: CutOf, radialShare = 0.6): CuttingForce {
  const feedMm = cut.feedMmPerMin / (cut.speedPerMin * cut.fluteCount);
  const share = Math.min(1, cut.sideMm / cut.diameterMm);
  const chipMm = share < 0.5 ? 2 * feedMm * Math.sqrt(share * (1 - share)) : feedMm;
  const engagedRad = Math.acos(1 - 2 * share);
  const teeth = Math.max(1, Math.ceil((cut.fluteCount * engagedRad) / (2 * Math.PI) - 1e-9));
  const k = cut.cutting * (Math.max(chipMm, 0.02) / 0.1) ** -0.4;
  const tangentialN = k * cut.stepMm * chipMm * teeth;
  return {
    chipMm,
    tangentialN,
    sidewaysN: tangentialN * Math.hypot(1, radialShare),
    axialN: tangentialN * cut.helixTangent,
  };
}

/** What is planned for: worn cutter, entering the wood, and never less than the floor. */
export function plannedForce(cut: CutOf): { readonly sidewaysN: number; readonly liftN: number } {
  const { dullFactor, dynamicFactor, leastSidewaysN, leastLiftN } = holdNumbers;
  const worn = sharpForce(cut, 1);
  const factor = dullFactor * dynamicFactor;
  return {
    sidewaysN: Math.max(leastSidewaysN, worn.sidewaysN * factor),
    liftN: Math.max(leastLiftN, worn.axialN * factor),
  };
}
