import { unreachable } from '../../num/invariant.ts';
import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Arc, ArcPlane, Spot } from './program.ts';
import { AXES_OF } from './program.ts';

/** How an arc's centre is given, mm. */
export type Centre =
  /** Of the two words of the plane; null when a word is missing. */
  | { readonly by: 'offset'; readonly first: number | null; readonly second: number | null }
  | { readonly by: 'place'; readonly first: number | null; readonly second: number | null }
  /** Negative: the longer way round. */
  | { readonly by: 'radius'; readonly radiusMm: number };

export interface ArcWords {
  readonly plane: ArcPlane;
  readonly from: Spot;
  readonly to: Spot;
  readonly turn: 'clockwise' | 'counter-clockwise';
  readonly centre: Centre;
  /** Whole turns and the last, begun one; 1 is a plain arc. */
  readonly turns: number;
  readonly units: 'mm' | 'inch';
}

/**
 * The arc, or why it is none. Radii at start and end may differ by the controller's rule: by no more than
 * 0.5 mm (0.05 in), and by more than 0.005 mm (0.0005 in) only within a thousandth of the radius.
 *
 * Source: that rule as documented for an open controller descended from NISTIR 6556.
 */
export function arcOf(words: ArcWords): Result<Arc, string> {
  const [a, b] = AXES_OF[words.plane];
  const [a0, b0] = [words.from[a], words.from[b]];
  const [a1, b1] = [words.to[a], words.to[b]];
  const centre = centreOf(words, [a0, b0], [a1, b1]);
  if (typeof centre === 'string') return faulty([centre]);
  const [ca, cb] = centre;
  const startRadiusMm = Math.hypot(a0 - ca, b0 - cb);
  const endRadiusMm = Math.hypot(a1 - ca, b1 - cb);
  const wrong = radiiWrong(startRadiusMm, endRadiusMm, words.units);
  if (wrong !== null) return faulty([wrong]);
  const startRad = Math.atan2(b0 - cb, a0 - ca);
  const endRad = Math.atan2(b1 - cb, a1 - ca);
  const isFull = words.centre.by !== 'radius' && a0 === a1 && b0 === b1;
  const shortRad = isFull ? FULL : turnedBy(startRad, endRad, words.turn);
  const whole = (words.turns - 1) * FULL;
  const sweepRad = (shortRad + whole) * (words.turn === 'clockwise' ? -1 : 1);
  return ok({ plane: words.plane, centre, startRad, sweepRad, startRadiusMm, endRadiusMm });
}

const FULL = 2 * Math.PI;

/** Turn from one direction to another that way round, above 0 up to a full one. */
function turnedBy(startRad: number, endRad: number, turn: ArcWords['turn']): number {
  const by = turn === 'clockwise' ? startRad - endRad : endRad - startRad;
  const positive = ((by % FULL) + FULL) % FULL;
  // Directions that agree to the last bits are a full turn, as every controller has it.
  return positive < ALMOST_NONE_RAD ? FULL : positive;
}

/** Far below what one step of a motor turns at any radius here. */
const ALMOST_NONE_RAD = 1e-12;

function centreOf(
  { centre, turn }: ArcWords,
  [a0, b0]: readonly [number, number],
  [a1, b1]: readonly [number, number],
): readonly [number, number] | string {
  switch (centre.by) {
    case 'offset':
      if (centre.first === null && centre.second === null)
        return 'the arc has neither a centre nor a radius';
      return [a0 + (centre.first ?? 0), b0 + (centre.second ?? 0)];
    case 'place':
      if (centre.first === null || centre.second === null)
        return 'under G90.1 the arc needs both words of its centre';
      return [centre.first, centre.second];
    case 'radius':
      return centreByRadius(centre.radiusMm, turn, [a0, b0], [a1, b1]);
    default:
      return unreachable(centre);
  }
}

function centreByRadius(
  radiusMm: number,
  turn: ArcWords['turn'],
  [a0, b0]: readonly [number, number],
  [a1, b1]: readonly [number, number],
): readonly [number, number] | string {
  const [da, db] = [a1 - a0, b1 - b0];
  const chord = Math.hypot(da, db);
  if (chord === 0) return 'an arc with R ends where it starts, which leaves its centre open';
  const short = chord / 2 - Math.abs(radiusMm);
  if (short > ROUNDED_MM)
    return `R ${radiusMm} is too small for ends ${Number(chord.toFixed(4))} mm apart`;
  const rise = Math.sqrt(Math.max(0, radiusMm * radiusMm - (chord * chord) / 4)) / chord;
  // The shorter way round counter-clockwise has its centre to the left.
  const left = (turn === 'counter-clockwise') === radiusMm > 0 ? rise : -rise;
  return [(a0 + a1) / 2 - left * db, (b0 + b1) / 2 + left * da];
}

/** A half circle's R is often rounded to three decimals. */
const ROUNDED_MM = 0.002;

function radiiWrong(startMm: number, endMm: number, units: 'mm' | 'inch'): string | null {
  const [mostMm, fineMm] = units === 'mm' ? [0.5, 0.005] : [0.05 * 25.4, 0.0005 * 25.4];
  const differ = Math.abs(startMm - endMm);
  if (startMm === 0 || endMm === 0) return 'the arc starts or ends on its centre';
  if (differ <= mostMm && (differ <= fineMm || differ <= startMm / 1000)) return null;
  return `the arc's radius is ${startMm.toFixed(3)} mm at its start and ${endMm.toFixed(3)} mm at its end`;
}
