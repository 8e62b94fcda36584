import { betweenPieces } from './ring-distance.ts';
import type { Ring } from './ring.ts';

/**
 * Which pieces of `to` are near each piece of `from` while both lie nominally: in a trial a pair is no nearer
 * than that less how far both have moved.
 */
export interface Near {
  /** Pieces of `to`, nearest first, and their distances, mm, for each piece of `from`. */
  readonly pieces: readonly Int32Array[];
  readonly distances: readonly Float64Array[];
  /** Distance of the nearest piece that is not listed; infinite when all are. */
  readonly beyondMm: Float64Array;
  /** Pieces of `from` by the distance of their nearest, nearest first. */
  readonly order: Int32Array;
}

/** More than two rings move against each other but for absurd set-ups, which are looked at in full, mm. */
const LISTED_MM = 5;

export function nearPieces(from: Ring, to: Ring): Near {
  const pieces: Int32Array[] = [];
  const distances: Float64Array[] = [];
  const beyondMm = new Float64Array(from.count);
  for (let i = 0; i < from.count; i++) {
    const all = Float64Array.from({ length: to.count }, (_, j) => betweenPieces(from, i, to, j));
    const sorted = [...all.keys()].sort((a, b) => all[a]! - all[b]!);
    const most = all[sorted[0]!]! + LISTED_MM;
    const listed = sorted.filter((j) => all[j]! <= most);
    pieces.push(Int32Array.from(listed));
    distances.push(Float64Array.from(listed, (j) => all[j]!));
    const next = sorted[listed.length];
    beyondMm[i] = next === undefined ? Infinity : all[next]!;
  }
  const order = Int32Array.from(
    [...pieces.keys()].sort((a, b) => distances[a]![0]! - distances[b]![0]!),
  );
  return { pieces, distances, beyondMm, order };
}
