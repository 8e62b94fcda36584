import { LARGEST_TURN, limitsFrom, slowEnds, type Play } from './play.ts';

/** Holes on pins, about the middle of each, mm: after a turn, each hole may be off its pin by its play. */
export interface Pairs {
  readonly count: number;
  /** Hole in the blank, and pin on the bed, both in the seat frame. */
  readonly holeA: Float64Array;
  readonly holeB: Float64Array;
  readonly pinA: Float64Array;
  readonly pinB: Float64Array;
  /** Half the diametral clearance, never below 0. */
  readonly playMm: Float64Array;
}

export const newPairs = (count: number): Pairs => ({
  count,
  holeA: new Float64Array(count),
  holeB: new Float64Array(count),
  pinA: new Float64Array(count),
  pinB: new Float64Array(count),
  playMm: new Float64Array(count),
});

/** The play of holes on pins, about their best fit; `load` reads the pairs again. */
export interface DiscPlay extends Play {
  readonly load: () => void;
  /** Cosine and sine of the best fit, and after a turn those of the whole. */
  readonly cos: () => number;
  readonly sin: () => number;
  /** Middle of the holes and of the pins. */
  readonly hole: () => readonly [number, number];
  readonly pin: () => readonly [number, number];
  /** The least play that two of the pairs leave on each side, mm; below 0 they do not go on together. */
  readonly spareMm: () => number;
}

/** What counts as within a play, mm: rounding. */
const ROUNDING_MM = 1e-11;
/** How often pairs are pulled together, and how much further than they must. */
const PULLS = 200;
const PULL_ON = 1.1;
/** Gauss-Legendre, eight points; Abramowitz and Stegun table 25.4. */
const AT = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const WEIGHT = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

/**
 * Rows run along (`alongA`, `alongB`)'s normal: `f` is measured along it, `e` clockwise of it. The set at one turn is where discs
 * overlap, one a pair, about how far each hole then is from its pin. Its top row is that of two of them: in the plane a
 * linear thing is largest over what convex sets share where it is over some two of them (Helly).
 */
export function discPlay(pairs: Pairs, alongA: number, alongB: number): DiscPlay {
  const { count, playMm } = pairs;
  const ze = new Float64Array(count);
  const zf = new Float64Array(count);
  const ha = new Float64Array(count);
  const hb = new Float64Array(count);
  const qa = new Float64Array(count);
  const qb = new Float64Array(count);
  let [holeA, holeB, pinA, pinB] = [0, 0, 0, 0];
  let [cos0, sin0] = [1, 0];
  let [cos, sin] = [1, 0];
  let topE = 0;
  let topF = 0;
  let lowF = 0;
  let isLowKnown = false;

  const load = (): void => {
    holeA = holeB = pinA = pinB = 0;
    for (let k = 0; k < count; k++) {
      holeA += pairs.holeA[k]! / count;
      holeB += pairs.holeB[k]! / count;
      pinA += pairs.pinA[k]! / count;
      pinB += pairs.pinB[k]! / count;
    }
    let dot = 0;
    let cross = 0;
    for (let k = 0; k < count; k++) {
      ha[k] = pairs.holeA[k]! - holeA;
      hb[k] = pairs.holeB[k]! - holeB;
      qa[k] = pairs.pinA[k]! - pinA;
      qb[k] = pairs.pinB[k]! - pinB;
      dot += ha[k]! * qa[k]! + hb[k]! * qb[k]!;
      cross += ha[k]! * qb[k]! - hb[k]! * qa[k]!;
    }
    const length = Math.sqrt(dot * dot + cross * cross);
    cos0 = cos = dot / length;
    sin0 = sin = cross / length;
  };

  /** Puts the row that is furthest along `way` times `f` into `topE` and `topF`. */
  const findTop = (way: 1 | -1): void => {
    let best = Infinity;
    for (let j = 0; j < count; j++)
      for (let k = j + 1; k < count; k++) {
        topOfTwo(ze, zf, playMm, j, k, way);
        if (way * foundF < best) {
          best = way * foundF;
          topE = foundE;
          topF = foundF;
        }
      }
  };

  const over = (s: number): number => {
    if (!(Math.abs(s) <= LARGEST_TURN)) return Infinity;
    const c = Math.sqrt(1 - s * s);
    cos = cos0 * c - sin0 * s;
    sin = sin0 * c + cos0 * s;
    for (let k = 0; k < count; k++) {
      const a = qa[k]! - (cos * ha[k]! - sin * hb[k]!);
      const b = qb[k]! - (sin * ha[k]! + cos * hb[k]!);
      ze[k] = a * alongB - b * alongA;
      zf[k] = a * alongA + b * alongB;
    }
    isLowKnown = false;
    findTop(1);
    let most = -Infinity;
    for (let k = 0; k < count; k++) {
      const e = topE - ze[k]!;
      const f = topF - zf[k]!;
      const beyond = Math.sqrt(e * e + f * f) - playMm[k]!;
      // What is not a number is over.
      if (!(beyond <= most)) most = beyond;
    }
    return most - ROUNDING_MM;
  };
  const turn = (s: number): boolean => over(s) <= 0;
  const low = (): number => {
    if (isLowKnown) return lowF;
    const [e, f] = [topE, topF];
    findTop(-1);
    lowF = topF;
    [topE, topF] = [e, f];
    isLowKnown = true;
    return lowF;
  };

  /** Two holes whose distance differs from that of their dowels by more than both plays never go on, however turned. */
  const spareMm = (): number => {
    let least = Infinity;
    for (let j = 0; j < count; j++)
      for (let k = j + 1; k < count; k++) {
        const hole = apartOf(ha[k]! - ha[j]!, hb[k]! - hb[j]!);
        const pin = apartOf(qa[k]! - qa[j]!, qb[k]! - qb[j]!);
        least = Math.min(least, (playMm[j]! + playMm[k]! - Math.abs(hole - pin)) / 2);
      }
    return least;
  };

  /**
   * A turn at which something is left, when there is nothing at the best fit: from there every pair that is too far
   * apart is pulled together in its turn. Null when that does not end within what rounding leaves.
   */
  const turnInside = (): number | null => {
    let [s, e, f, arm] = [0, 0, 0, 0];
    for (let k = 0; k < count; k++) arm += (ha[k]! * ha[k]! + hb[k]! * hb[k]!) / count;
    for (let pull = 0; pull < PULLS; pull++) {
      if (turn(s)) return s;
      const from = s;
      for (let k = 0; k < count; k++) {
        // Turning moves the hole across the line to it; as far as this pull has turned it already, too.
        const a = cos * ha[k]! - sin * hb[k]!;
        const b = sin * ha[k]! + cos * hb[k]!;
        const [he, hf] = [a * alongB - b * alongA, a * alongA + b * alongB];
        const ve = e - ze[k]! - (s - from) * hf;
        const vf = f - zf[k]! + (s - from) * he;
        const apart = Math.sqrt(ve * ve + vf * vf);
        const over = apart - playMm[k]!;
        if (over <= 0) continue;
        const perTurn = (vf * he - ve * hf) / apart;
        const step = (PULL_ON * over) / (1 + (perTurn * perTurn) / arm);
        e -= (step * ve) / apart;
        f -= (step * vf) / apart;
        s -= (step * perTurn) / arm;
      }
    }
    return null;
  };

  const left = (f: number): number => {
    let most = -Infinity;
    for (let k = 0; k < count; k++) most = Math.max(most, ze[k]! - halfRow(f, k));
    return most;
  };
  const right = (f: number): number => {
    let least = Infinity;
    for (let k = 0; k < count; k++) least = Math.min(least, ze[k]! + halfRow(f, k));
    return least;
  };
  const halfRow = (f: number, k: number): number => {
    const off = f - zf[k]!;
    return Math.sqrt(Math.max(0, playMm[k]! * playMm[k]! - off * off));
  };

  return {
    load,
    turn,
    left,
    right,
    cos: () => cos,
    sin: () => sin,
    hole: () => [holeA, holeB],
    pin: () => [pinA, pinB],
    spareMm,
    low,
    high: () => topF,
    limits: () => {
      if (count === 2) return limitsOfTwo(pairs);
      if (spareMm() < -ROUNDING_MM) return null;
      const inside = turn(0) ? 0 : turnInside();
      return inside === null ? null : limitsFrom(over, inside);
    },
    area: () => {
      const bottom = low();
      const middle = (bottom + topF) / 2;
      const half = (topF - bottom) / 2;
      if (!(half > 0)) return 0;
      let sum = 0;
      for (let j = 0; j < AT.length; j++) {
        const t = AT[j]!;
        const f = half * slowEnds(t);
        const rows = width(middle + f) + width(middle - f);
        sum += WEIGHT[j]! * 1.5 * (1 - t * t) * rows;
      }
      return sum * half;
    },
  };

  function width(f: number): number {
    return Math.max(0, right(f) - left(f));
  }
}

let foundE = 0;
let foundF = 0;

/** Finds the place of what two discs share that is furthest along `way` times `f`: `foundE`, `foundF`. */
function topOfTwo(
  ze: Float64Array,
  zf: Float64Array,
  r: Float64Array,
  j: number,
  k: number,
  way: 1 | -1,
): void {
  const rj = r[j]!;
  const rk = r[k]!;
  const e = ze[k]! - ze[j]!;
  const f = zf[k]! - zf[j]!;
  const beyondJ = f - way * rj;
  if (e * e + beyondJ * beyondJ <= rk * rk) {
    foundE = ze[j]!;
    foundF = zf[j]! + way * rj;
    return;
  }
  const beyondK = f + way * rk;
  if (e * e + beyondK * beyondK <= rj * rj) {
    foundE = ze[k]!;
    foundF = zf[k]! + way * rk;
    return;
  }
  const apart = e * e + f * f;
  const along = (apart + rj * rj - rk * rk) / (2 * apart);
  const aside = Math.sqrt(Math.max(0, rj * rj - along * along * apart) / apart);
  const to = e * way > 0 || (e === 0 && way > 0) ? 1 : -1;
  foundE = ze[j]! + along * e - to * aside * f;
  foundF = zf[j]! + along * f + to * aside * e;
}

/** Two holes stay on two pins while their line is turned no further than this; reference/geometry.md section 3. */
function limitsOfTwo({
  holeA,
  holeB,
  pinA,
  pinB,
  playMm,
}: Pairs): readonly [number, number] | null {
  const hole = apartOf(holeA[1]! - holeA[0]!, holeB[1]! - holeB[0]!);
  const pin = apartOf(pinA[1]! - pinA[0]!, pinB[1]! - pinB[0]!);
  const play = playMm[0]! + playMm[1]!;
  const longer = hole - pin;
  const square = (play * play - longer * longer) / (4 * hole * pin);
  if (!(square >= 0)) return null;
  const half = Math.min(square, 0.5);
  const sine = Math.min(LARGEST_TURN, 2 * Math.sqrt(half * (1 - half)));
  return [-sine, sine];
}

const apartOf = (a: number, b: number): number => Math.sqrt(a * a + b * b);
