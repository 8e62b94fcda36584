import { inBlank, type Lie } from './lie.ts';
import { alongOf } from './real-blank.ts';
import { rootOf } from './roots.ts';
import type { Bench } from './seating.ts';
import { plus } from './vectors.ts';

const PROBE_MM = 1e-3;
const PROBE_RAD = 1e-6;
/** Any length does to measure the slope of a parabola. */
const SLOPE_MM = 10;
const SLOPE_SHARE = 0.25;
/** Wide, because an edge that hardly bulges is grazed far away. */
const TANGENT_PROBE_MM = 1000;

/**
 * The blank's bulging edge on a fence arm, rocked to where the trial says; null when both ends of
 * the arm touch instead (buttons, a straight or hollow edge, ends that stand out too far).
 */
export function rockedTurn(bench: Bench, slidMm: number): Lie | null {
  const [near, far] = bench.fence;
  const { edge } = near;
  const crook = bench.off[`crook/${edge}`] ?? 0;
  if (near.kind !== 'arm-end' || crook <= 0) return null;
  const bevel = bench.blank.bevelMm(edge);
  const rock = bench.off[`rock/${bench.placing.faceUp}-up`] ?? 0;
  const placeAt = (lie: Lie, share: number) =>
    inBlank(lie, plus(near.at, plus(far.at, near.at, -1), share));
  const gap = (lie: Lie, share: number): number =>
    bench.blank.beyond(edge, placeAt(lie, share)) - bevel;
  /** Where along the arm it rests, and how far the tangents are apart (negative: crossed), in shares. */
  const restOf = (lie: Lie): { readonly share: number; readonly roomShare: number } => {
    const along = alongOf(edge);
    const [start, end] = [placeAt(lie, 0)[along], placeAt(lie, 1)[along]];
    const way = Math.sign(end - start);
    const from = tangentFrom(bench, start, way, Math.max(0, near.raisedMm));
    const to = tangentFrom(bench, end, -way, Math.max(0, far.raisedMm));
    const rest = from + rock * (to - from);
    return { share: (rest - start) / (end - start), roomShare: (to - from) / (end - start) };
  };
  // Clearly crossed, whatever the turn: there is no tangent to look for.
  if (restOf(bench.lie(0, slidMm, 0)).roomShare < -1) return null;
  const lieTurned = (rad: number): Lie => {
    const lift = rootOf(
      (up) => {
        const lie = bench.lie(rad, slidMm, up);
        return gap(lie, restOf(lie).share);
      },
      0,
      PROBE_MM,
    );
    return bench.lie(rad, slidMm, lift);
  };
  const rad = rootOf(
    (turn) => {
      const lie = lieTurned(turn);
      const { share } = restOf(lie);
      return gap(lie, share + SLOPE_SHARE) - gap(lie, share - SLOPE_SHARE);
    },
    0,
    PROBE_RAD,
  );
  const lie = lieTurned(rad);
  return restOf(lie).roomShare > 0 ? lie : null;
}

/** Coordinate along the edge where a line from `raisedMm` above the edge at `end` grazes the bulge. */
function tangentFrom(bench: Bench, end: number, way: number, raisedMm: number): number {
  if (raisedMm === 0) return end;
  const { edge } = bench.fence[0];
  const bulge = (along: number): number => bench.blank.sagNowMm(edge, along);
  // Signed, so that it is a straight line through `end` and Newton's first step lands.
  const clears = (at: number): number => {
    const slope = (bulge(at + SLOPE_MM) - bulge(at - SLOPE_MM)) / (2 * SLOPE_MM);
    const squared = bulge(at) + slope * (end - at) - bulge(end);
    return Math.sign((at - end) * way) * Math.sqrt(Math.max(0, squared));
  };
  const root = Math.sqrt(raisedMm);
  return rootOf((at) => clears(at) - root, end + way * SLOPE_MM, TANGENT_PROBE_MM);
}
