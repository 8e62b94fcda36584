import { PASSES, SETTLED_MM } from '../seat.ts';
import type { FacesColumns } from './faces-columns.ts';
import type { Common, Meeting, PoseColumns } from './seat-parts.ts';

/** So many trials are seated together: what is kept of each between the passes stays in the nearest cache. */
const TOGETHER = 64;
/** Numbers kept of one trial, and where each stands; `Q` are the side stop's, `C` the fence's contacts. */
const KEPT = 32;
const [K, F0, CURVE, SPAN, P1A, P2A, P1B, P2B, BIG, SMALL, SQUARE, E1, E2] = [
  0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
] as const;
const [KS, S0, CURVE_S, SPAN_S, Q1A, Q1B, Q2A, Q2B, G1, G2, FELT_S] = [
  13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23,
] as const;
const [FELT, COS, SIN, BACK_A, BACK_B, ROCK] = [24, 25, 26, 27, 28, 29] as const;

/** Kept of the trials at hand, a row each, and the rows that have not settled; filled anew for each lot. */
const kept = new Float64Array(TOGETHER * KEPT);
const rows = new Int32Array(TOGETHER);

/** Finds the poses of the first `count` trials, whose faces and edges are loaded. */
export function seatTogether(
  common: Common,
  fence: Meeting,
  side: Meeting,
  faces: FacesColumns,
  pose: PoseColumns,
  draws: Float64Array,
  count: number,
): void {
  for (let from = 0; from < count; from += TOGETHER) {
    const to = Math.min(count, from + TOGETHER);
    meetFence(common, fence, faces, draws, from, to);
    meetSide(common, side, faces, draws, from, to);
    for (let n = 0; n < to - from; n++) rows[n] = n * KEPT;
    let active = to - from;
    for (let passes = 0; passes < PASSES && active > 0; passes++)
      active = pass(fence, side, active);
    dragged(common, pose, draws, from, to);
  }
}

function meetFence(
  { cornerA, rock, thick, thickMm, isNarrow, feltMm, feltSign }: Common,
  fence: Meeting,
  faces: FacesColumns,
  draws: Float64Array,
  from: number,
  to: number,
): void {
  const { out, slope, curve, span } = fence.edge;
  const {
    from: edgeFrom,
    sign,
    bevel,
    give,
    at1,
    at2,
    bump1,
    gap1,
    bump2,
    gap2,
    floor,
    isArm,
  } = fence;
  const { fence: fences, fenceSlope: fenceSlopes } = faces;
  for (let i = from, row = 0; i < to; i++, row += KEPT) {
    const k = -slope[i]! * sign;
    const faceSlope = fenceSlopes[i]!;
    const face = fences[i]!;
    const step = 1 / Math.sqrt(1 + faceSlope * faceSlope);
    const p1a = cornerA + (at1 - cornerA) * step;
    const p2a = cornerA + (at2 - cornerA) * step;
    const p1b = face + faceSlope * p1a - draws[give + i]!;
    const p2b = face + faceSlope * p2a - draws[give + i]!;
    const da = p2a - p1a;
    const db = p2b - p1b;
    const big = da + k * db;
    const small = k * da - db;
    kept[row + K] = k;
    kept[row + F0] = -(out[i]! + slope[i]! * edgeFrom);
    kept[row + CURVE] = curve[i]!;
    kept[row + SPAN] = span[i]!;
    kept[row + P1A] = p1a;
    kept[row + P2A] = p2a;
    kept[row + P1B] = p1b;
    kept[row + P2B] = p2b;
    kept[row + BIG] = big;
    kept[row + SMALL] = small;
    kept[row + SQUARE] = big * big + small * small;
    kept[row + E1] = Math.max(floor, draws[bump1 + i]! + draws[gap1 + i]!);
    kept[row + E2] = Math.max(floor, draws[bump2 + i]! + draws[gap2 + i]!);
    kept[row + FELT] = feltOf(
      isNarrow,
      feltMm,
      feltSign * draws[bevel + i]!,
      thickMm + draws[thick + i]!,
    );
    kept[row + ROCK] = isArm ? draws[rock + i]! : 0;
    kept[row + COS] = 1;
    kept[row + SIN] = 0;
    kept[row + BACK_A] = 0;
    kept[row + BACK_B] = 0;
  }
}

function meetSide(
  { thick, thickMm, isNarrow, feltMm, feltSign }: Common,
  side: Meeting,
  faces: FacesColumns,
  draws: Float64Array,
  from: number,
  to: number,
): void {
  const { out, slope, curve, span } = side.edge;
  const {
    from: edgeFrom,
    sign,
    bevel,
    give,
    at1,
    at2,
    bump1,
    gap1,
    bump2,
    gap2,
    floor,
    isArm,
  } = side;
  const { fence: fences, fenceSlope: fenceSlopes, side: sides, sideSlope: sideSlopes } = faces;
  for (let i = from, row = 0; i < to; i++, row += KEPT) {
    const fenceSlope = fenceSlopes[i]!;
    const face = sides[i]!;
    const faceSlope = sideSlopes[i]!;
    const cornerB = (fences[i]! + fenceSlope * face) / (1 - fenceSlope * faceSlope);
    const step = 1 / Math.sqrt(1 + faceSlope * faceSlope);
    const q1b = cornerB + at1 * step;
    const feltSide = feltOf(
      isNarrow,
      feltMm,
      feltSign * draws[bevel + i]!,
      thickMm + draws[thick + i]!,
    );
    kept[row + KS] = -slope[i]! * sign;
    kept[row + S0] = -(out[i]! + slope[i]! * edgeFrom);
    kept[row + CURVE_S] = curve[i]!;
    kept[row + SPAN_S] = span[i]!;
    kept[row + Q1B] = q1b;
    kept[row + Q1A] = face + faceSlope * q1b - draws[give + i]!;
    kept[row + G1] = Math.max(floor, draws[bump1 + i]! + draws[gap1 + i]!) + feltSide;
    kept[row + FELT_S] = feltSide;
    if (!isArm) continue;
    const q2b = cornerB + at2 * step;
    kept[row + Q2B] = q2b;
    kept[row + Q2A] = face + faceSlope * q2b - draws[give + i]!;
    kept[row + G2] = Math.max(floor, draws[bump2 + i]! + draws[gap2 + i]!) + feltSide;
  }
}

/** One pass of the trials in the first `active` rows; how many have not settled, now in front. */
function pass(
  { from: fenceFrom, sign: fenceSign, isArm: rocks }: Meeting,
  { from: sideFrom, sign: sideSign, isArm }: Meeting,
  active: number,
): number {
  let left = 0;
  for (let n = 0; n < active; n++) {
    const row = rows[n]!;
    const c0 = kept[row + COS]!;
    const n0 = kept[row + SIN]!;
    const a0 = kept[row + BACK_A]!;
    const b0 = kept[row + BACK_B]!;
    const p1a = kept[row + P1A]!;
    const p1b = kept[row + P1B]!;
    const k = kept[row + K]!;
    const curve = kept[row + CURVE]!;
    const span = kept[row + SPAN]!;
    const e1 = kept[row + E1]!;
    const e2 = kept[row + E2]!;
    const a1 = c0 * p1a + n0 * p1b - a0;
    const a2 = c0 * kept[row + P2A]! + n0 * kept[row + P2B]! - a0;
    const t1 = fenceFrom + fenceSign * a1;
    const t2 = fenceFrom + fenceSign * a2;
    let o1 = curve * t1 * (span - t1) + e1;
    let o2 = curve * t2 * (span - t2) + e2;
    if (rocks && curve > 0) {
      const from = a1 + Math.sqrt(e1 / curve);
      const to = a2 - Math.sqrt(e2 / curve);
      if (from < to) {
        const rest = from + kept[row + ROCK]! * (to - from);
        const t = fenceFrom + fenceSign * rest;
        const slope = fenceSign * curve * (span - 2 * t);
        const out = curve * t * (span - t);
        o1 = out + slope * (a1 - rest);
        o2 = out + slope * (a2 - rest);
      }
    }
    const big = kept[row + BIG]!;
    const small = kept[row + SMALL]!;
    const square = kept[row + SQUARE]!;
    const g = o2 - o1;
    const root = Math.sqrt(square - g * g);
    const s = (big * g - small * root) / square;
    const c = (small * g + big * root) / square;
    const lift =
      c * p1b - s * p1a - k * (c * p1a + s * p1b) - kept[row + F0]! + o1 + kept[row + FELT]!;
    // Slid along until the side stop's candidate that needs the blank farthest away touches.
    const kS = kept[row + KS]!;
    const s0 = kept[row + S0]!;
    const bend = kept[row + CURVE_S]!;
    const long = kept[row + SPAN_S]!;
    const q1a = kept[row + Q1A]!;
    const q1b = kept[row + Q1B]!;
    const b1 = c * q1b - s * q1a;
    const l1 = c * q1a + s * q1b - kS * b1 - s0;
    const u1 = sideFrom + sideSign * (b1 - b0);
    let far = l1 + bend * u1 * (long - u1) + kept[row + G1]!;
    if (isArm) {
      const q2a = kept[row + Q2A]!;
      const q2b = kept[row + Q2B]!;
      const b2 = c * q2b - s * q2a;
      const l2 = c * q2a + s * q2b - kS * b2 - s0;
      const u2 = sideFrom + sideSign * (b2 - b0);
      far = Math.max(far, l2 + bend * u2 * (long - u2) + kept[row + G2]!);
      if (bend > 0) {
        const perU = (l2 - l1) / (u2 - u1);
        const top = (long + perU / bend) / 2;
        const u = Math.max(Math.min(u1, u2), Math.min(Math.max(u1, u2), top));
        far = Math.max(far, l1 + perU * (u - u1) + bend * u * (long - u) + kept[row + FELT_S]!);
      }
    }
    const nextA = (far + kS * lift) / (1 - kS * k);
    const nextB = lift + k * nextA;
    kept[row + COS] = c;
    kept[row + SIN] = s;
    kept[row + BACK_A] = nextA;
    kept[row + BACK_B] = nextB;
    const change = Math.abs(nextA - a0) + Math.abs(nextB - b0);
    rows[left] = row;
    left += change < SETTLED_MM ? 0 : 1;
  }
  return left;
}

function dragged(
  { dragSide, dragFence }: Common,
  { cos, sin, backA, backB }: PoseColumns,
  draws: Float64Array,
  from: number,
  to: number,
): void {
  for (let i = from, row = 0; i < to; i++, row += KEPT) {
    const c = kept[row + COS]!;
    const s = kept[row + SIN]!;
    const fromSide = draws[dragSide + i]!;
    const fromFence = draws[dragFence + i]!;
    cos[i] = c;
    sin[i] = s;
    backA[i] = kept[row + BACK_A]! + (c * fromSide + s * fromFence);
    backB[i] = kept[row + BACK_B]! + (c * fromFence - s * fromSide);
  }
}

/** As `bevelFelt`: how far an edge that leans so stands out where the stop feels it, mm. */
function feltOf(isNarrow: boolean, heightMm: number, lean: number, thickMm: number): number {
  const there = lean * (heightMm - thickMm / 2);
  return isNarrow ? there : Math.max((-lean * thickMm) / 2, there);
}
