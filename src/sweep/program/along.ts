import type { Arc, Move, Spot } from './program.ts';
import { AXES_OF } from './program.ts';

/** Places along a move, both ends included; between them straight lines stray no further than `chordMm`. */
export function placesAlong(move: Move, chordMm: number): readonly Spot[] {
  const { from, to, arc } = move;
  if (from === null) return [to];
  if (arc === null) return [from, to];
  const radiusMm = Math.max(arc.startRadiusMm, arc.endRadiusMm);
  const stepRad = 2 * Math.acos(Math.max(0, 1 - chordMm / radiusMm));
  const count = Math.max(4, Math.ceil(Math.abs(arc.sweepRad) / stepRad));
  const places: Spot[] = [from];
  for (let k = 1; k < count; k++) places.push(placeOnArc(from, to, arc, k / count));
  places.push(to);
  return places;
}

/** The place that an arc has reached at a share of its turn; its radius changes evenly on the way. */
export function placeOnArc(from: Spot, to: Spot, arc: Arc, share: number): Spot {
  const [a, b, c] = AXES_OF[arc.plane];
  const turn = arc.startRad + share * arc.sweepRad;
  const radius = arc.startRadiusMm + share * (arc.endRadiusMm - arc.startRadiusMm);
  const place = { x: 0, y: 0, z: 0 };
  place[a] = arc.centre[0] + radius * Math.cos(turn);
  place[b] = arc.centre[1] + radius * Math.sin(turn);
  place[c] = from[c] + share * (to[c] - from[c]);
  return place;
}
