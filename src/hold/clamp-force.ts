import { holdNumbers } from './numbers.ts';

/** What a bolt pulls for a torque, N. Source: T = K F d (Shigley's Mechanical Engineering Design). */
export const boltForceN = (torqueNm: number, diameterMm: number, nutFactor: number): number =>
  (torqueNm * 1000) / (nutFactor * diameterMm);

/**
 * Share of the bolt's force that a strap puts on the work; the rest goes to its heel.
 * Source: levers; bolt to work `x`, bolt to heel `y`: y / (x + y).
 */
export const strapShare = (boltToWorkMm: number, boltToHeelMm: number): number =>
  boltToHeelMm / (boltToWorkMm + boltToHeelMm);

/** What one strap presses with: at least, after the wood has yielded, and at most, when it is fresh. N. */
export function strapForceN(strap: {
  readonly torqueNm: number;
  readonly boltMm: number;
  readonly boltToWorkMm: number;
  readonly boltToHeelMm: number;
}): { readonly leastN: number; readonly mostN: number } {
  const share = strapShare(strap.boltToWorkMm, strap.boltToHeelMm);
  const { nutFactor, keptShare } = holdNumbers;
  const least = boltForceN(strap.torqueNm, strap.boltMm, nutFactor.high);
  const most = boltForceN(strap.torqueNm, strap.boltMm, nutFactor.low);
  return { leastN: least * share * keptShare, mostN: most * share };
}

/** Torque at which the pad presses no harder than the wood bears, Nm. */
export function gentleTorqueNm(
  strap: { readonly boltMm: number; readonly boltToWorkMm: number; readonly boltToHeelMm: number },
  padMm2: number,
  crush: number,
): number {
  const share = strapShare(strap.boltToWorkMm, strap.boltToHeelMm);
  return (((padMm2 * crush) / share) * holdNumbers.nutFactor.low * strap.boltMm) / 1000;
}
