/**
 * Average ultimate withdrawal of a wood screw from side grain, N.
 * Source: Wood Handbook (FPL-GTR-190) ch. 8, p = 15 700 G2 D L in pounds and inches; 108.25 in N and mm.
 * @param gravity oven-dry mass over the volume at 12 % moisture
 */
export const withdrawalN = (gravity: number, shankMm: number, threadMm: number): number =>
  108.25 * gravity ** 2 * shankMm * threadMm;

/** The same out of end grain: about three quarters, and erratic. From memory; the design code forbids it. */
export const END_GRAIN_SHARE = 0.75;

/**
 * Allowable withdrawal, N: no further factor belongs on it.
 * Source: ANSI/AWC NDS ch. 12, W = 2 850 G2 D in pounds for each inch of thread.
 */
export const allowableWithdrawalN = (gravity: number, shankMm: number, threadMm: number): number =>
  ((2850 * LB_N) / (IN_MM * IN_MM)) * gravity ** 2 * shankMm * threadMm;

const LB_N = 4.44822;
const IN_MM = 25.4;

/**
 * Average ultimate withdrawal out of MDF or particleboard, N.
 * Source: the form of C. A. Eckelman, K = 41.1 in the face, 31.8 in the edge; coefficients from memory.
 */
export function withdrawalFromBoardN(
  gravity: number,
  shankMm: number,
  threadMm: number,
  into: 'face' | 'edge',
): number {
  const k = into === 'face' ? 41.1 : 31.8;
  return k * Math.sqrt(shankMm) * Math.max(0, threadMm - shankMm / 3) ** 1.25 * gravity ** 2;
}

/**
 * Allowable sideways load, N, by the old form p = C D2 (pounds, inches) with C by density.
 * Source: editions of the NDS before 1991; C = 4 800, 3 960, 3 240, 2 520 for groups I to IV.
 */
export function sidewaysN(gravity: number, shankMm: number): number {
  const c = gravity > 0.6 ? 4800 : gravity >= 0.5 ? 3960 : gravity >= 0.42 ? 3240 : 2520;
  return c * LB_N * (shankMm / IN_MM) ** 2;
}

/** Shank diameter of a screw by its gauge number, mm. Source: ANSI B18.6.1, from memory. */
export const shankOfGaugeMm = (gauge: number): number => (0.06 + 0.013 * gauge) * IN_MM;

/**
 * Least distances of a screw that holds along its axis and sideways, without and with a lead hole, mm.
 * Source: EN 1995-1-1 table 8.2, unloaded end and edge.
 */
export const edgeDistancesMm = (
  shankMm: number,
  lead: 'bored' | 'none',
): { readonly endMm: number; readonly edgeMm: number } =>
  lead === 'bored'
    ? { endMm: 7 * shankMm, edgeMm: 3 * shankMm }
    : { endMm: 10 * shankMm, edgeMm: 5 * shankMm };
