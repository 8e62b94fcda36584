import type { Walls } from './wall-play.ts';

/** Three walls whose normals hold the middle between them; `isAny` is false before there are any. */
export interface Three {
  i: number;
  j: number;
  k: number;
  isAny: boolean;
}

/** A weight may be below nought by so much, where two walls face each other. */
const ALMOST_NONE = 1e-12;
/** A wall that gives way by so little more than the three counts as one of them, mm. */
const ALIKE_MM = 1e-13;
const MOST_CHANGES = 40;

/**
 * The least that all walls would have to give way for something to lie between them, mm; below 0 when there is room. Three
 * walls decide it: their gaps' mean, with weights that make their normals cancel, is the room they leave (duality of linear
 * programmes). From the three of the last look, the wall that lies furthest through takes the place of one of them.
 *
 * @param held is filled with the three, from which the next look starts.
 */
export function lacking(walls: Walls, gap: Float64Array, held: Three): number {
  const { count, normalA: na, normalB: nb } = walls;
  if (!held.isAny && !findThree(walls, gap, held)) return -Infinity;
  let lack = lackOf(walls, gap, held.i, held.j, held.k);
  for (let change = 0; change < MOST_CHANGES; change++) {
    const { i, j, k } = held;
    // The place that is as far through two of the three; the sharpest pair of them tells it best.
    const [p, q] = sharpest(walls, i, j, k);
    const sine = na[p]! * nb[q]! - nb[p]! * na[q]!;
    const [atP, atQ] = [gap[p]! + lack, gap[q]! + lack];
    const a = (atP * nb[q]! - atQ * nb[p]!) / sine;
    const b = (na[p]! * atQ - na[q]! * atP) / sine;
    let enters = -1;
    let most = lack + ALIKE_MM;
    for (let wall = 0; wall < count; wall++) {
      const through = na[wall]! * a + nb[wall]! * b - gap[wall]!;
      if (through > most) {
        most = through;
        enters = wall;
      }
    }
    if (enters < 0) return lack;
    const withoutI = lackOf(walls, gap, enters, j, k);
    const withoutJ = lackOf(walls, gap, i, enters, k);
    const withoutK = lackOf(walls, gap, i, j, enters);
    const next = Math.max(withoutI, withoutJ, withoutK);
    // Between two walls that face each other the third has no weight, and changes without lack.
    if (!(next > lack - ALIKE_MM)) return lack;
    if (next === withoutI) held.i = enters;
    else if (next === withoutJ) held.j = enters;
    else held.k = enters;
    lack = next;
  }
  return lack;
}

/** What three walls lack; minus infinity where their normals do not hold the middle between them. */
function lackOf(
  { normalA: na, normalB: nb }: Walls,
  gap: Float64Array,
  i: number,
  j: number,
  k: number,
): number {
  const atI = na[j]! * nb[k]! - nb[j]! * na[k]!;
  const atJ = na[k]! * nb[i]! - nb[k]! * na[i]!;
  const atK = na[i]! * nb[j]! - nb[i]! * na[j]!;
  const all = atI + atJ + atK;
  const sign = all > 0 ? 1 : -1;
  if (!(Math.min(sign * atI, sign * atJ, sign * atK) >= -ALMOST_NONE && sign * all > 1e-9))
    return -Infinity;
  return -(atI * gap[i]! + atJ * gap[j]! + atK * gap[k]!) / all;
}

function findThree(walls: Walls, gap: Float64Array, held: Three): boolean {
  for (let i = 0; i < walls.count; i++)
    for (let j = i + 1; j < walls.count; j++)
      for (let k = j + 1; k < walls.count; k++)
        if (lackOf(walls, gap, i, j, k) > -Infinity) {
          held.i = i;
          held.j = j;
          held.k = k;
          held.isAny = true;
          return true;
        }
  return false;
}

function sharpest(
  { normalA: na, normalB: nb }: Walls,
  i: number,
  j: number,
  k: number,
): readonly [number, number] {
  const atI = Math.abs(na[j]! * nb[k]! - nb[j]! * na[k]!);
  const atJ = Math.abs(na[k]! * nb[i]! - nb[k]! * na[i]!);
  const atK = Math.abs(na[i]! * nb[j]! - nb[i]! * na[j]!);
  if (atI >= atJ && atI >= atK) return [j, k];
  return atJ >= atK ? [k, i] : [i, j];
}
