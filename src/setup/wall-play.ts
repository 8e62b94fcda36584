import { LARGEST_TURN, limitsFrom, type Play, type Taken } from './play.ts';

/** Walls round a loose blank, each a line that no part of it may cross. Normals point outwards, counter-clockwise in order. */
export interface Walls {
  readonly count: number;
  readonly normalA: Float64Array;
  readonly normalB: Float64Array;
  /** About here the blank is turned, mm. */
  readonly middle: readonly [number, number];
  /** How far each still is from the blank along its normal when the blank is turned that much and not moved, mm. */
  readonly gaps: (cos: number, sin: number, gaps: Float64Array) => void;
}

/** Two lines whose directions cross at less than this are parallel. */
const PARALLEL = 1e-9;
const ROUNDING_MM = 1e-11;
/** How often walls push a blank off, and how much further than they must. */
const PUSHES = 40;
const PUSH_ON = 1.1;
/** Sine by which one pass turns a blank at most. */
const LARGEST_STEP = 0.05;

/** The play of what lies loosely within walls. */
export interface WallPlay extends Play {
  /** Where it lies when it binds, after `limits`: where its gaps to the walls are as nearly alike as they can be. */
  readonly rest: Readonly<Taken>;
  /** After a turn: the least gap to a wall when it is moved there, mm; below 0 when it is through one. */
  readonly roomAt: (e: number, f: number) => number;
}

/** Rows as in `Play`: `f` along (`alongA`, `alongB`), `e` clockwise of it. The set at one turn is a polygon. */
export function wallPlay(walls: Walls, alongA: number, alongB: number): WallPlay {
  const { count } = walls;
  const ne = new Float64Array(count);
  const nf = new Float64Array(count);
  const gap = new Float64Array(count);
  const line = new Int32Array(2 * count);
  const atE = new Float64Array(count);
  const atF = new Float64Array(count);
  const e = new Float64Array(2 * count);
  const f = new Float64Array(2 * count);
  const before = new Float64Array(count);
  let corners = 0;

  /** Cuts the plane by each wall in turn; the walls left over are `line`, from `first`. Null when nothing is left. */
  const cut = (): boolean => {
    let first = 0;
    let last = -1;
    for (let wall = 0; wall < count; wall++) {
      while (last > first && isOut(last - 1, wall)) last--;
      while (last > first && isOut(first, wall)) first++;
      last++;
      line[last] = wall;
      if (last > first && !corner(line[last - 1]!, wall, last - 1)) return false;
    }
    while (last - first > 1 && isOut(last - 1, line[first]!)) last--;
    while (last - first > 1 && isOut(first, line[last]!)) first++;
    if (last - first < 2 || !corner(line[last]!, line[first]!, last)) return false;
    corners = last - first + 1;
    for (let k = 0; k < corners; k++) {
      atE[k] = e[first + k]!;
      atF[k] = f[first + k]!;
    }
    return isWithin();
  };
  const isOut = (at: number, wall: number): boolean =>
    ne[wall]! * e[at]! + nf[wall]! * f[at]! > gap[wall]! + ROUNDING_MM;
  const corner = (one: number, other: number, at: number): boolean => {
    const cross = ne[one]! * nf[other]! - nf[one]! * ne[other]!;
    if (Math.abs(cross) < PARALLEL) return false;
    e[at] = (gap[one]! * nf[other]! - gap[other]! * nf[one]!) / cross;
    f[at] = (ne[one]! * gap[other]! - ne[other]! * gap[one]!) / cross;
    return true;
  };
  /** Walls that leave nothing still cross somewhere; the middle of their corners is then not within all. */
  const isWithin = (): boolean => {
    let [e0, f0] = [0, 0];
    for (let k = 0; k < corners; k++) {
      e0 += atE[k]! / corners;
      f0 += atF[k]! / corners;
    }
    for (let wall = 0; wall < count; wall++)
      if (!(ne[wall]! * e0 + nf[wall]! * f0 <= gap[wall]! + 10 * ROUNDING_MM)) return false;
    return true;
  };

  const [midA, midB] = walls.middle;
  /** Gaps when it is turned about its middle. */
  const read = (s: number): void => {
    const cos = Math.sqrt(1 - s * s);
    walls.gaps(cos, s, gap);
    // cos - 1 without losing its digits.
    const less = -(s * s) / (1 + cos);
    const a = -less * midA + s * midB;
    const b = -less * midB - s * midA;
    for (let wall = 0; wall < count; wall++)
      gap[wall] = gap[wall]! - walls.normalA[wall]! * a - walls.normalB[wall]! * b;
  };

  const turn = (s: number): boolean => {
    if (!(Math.abs(s) <= LARGEST_TURN)) return false;
    read(s);
    for (let wall = 0; wall < count; wall++) {
      ne[wall] = walls.normalA[wall]! * alongB - walls.normalB[wall]! * alongA;
      nf[wall] = walls.normalA[wall]! * alongA + walls.normalB[wall]! * alongB;
    }
    return cut();
  };

  /** Where the gaps are as nearly alike as they can be: the least sum of squares, in three passes from true. */
  const rest: Taken = { s: 0, e: 0, f: 0 };
  const settle = (): void => {
    rest.s = rest.e = rest.f = 0;
    for (let pass = 0; pass < 3; pass++) {
      turn(rest.s + TURN_STEP);
      before.set(gap);
      turn(rest.s);
      // Normal equations of gap = what all have in common + ne e + nf f + per s, less their means.
      let [ee, ef, es, ff, fs, ss, ge, gf, gs] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
      let [mu, mv, mp, mg] = [0, 0, 0, 0];
      for (let wall = 0; wall < count; wall++) {
        mu += ne[wall]! / count;
        mv += nf[wall]! / count;
        mg += gap[wall]! / count;
        mp += (gap[wall]! - before[wall]!) / TURN_STEP / count;
      }
      for (let wall = 0; wall < count; wall++) {
        const [u, v, g] = [ne[wall]! - mu, nf[wall]! - mv, gap[wall]! - mg];
        const per = (gap[wall]! - before[wall]!) / TURN_STEP - mp;
        ee += u * u;
        ef += u * v;
        es += u * per;
        ff += v * v;
        fs += v * per;
        ss += per * per;
        ge += u * g;
        gf += v * g;
        gs += per * g;
      }
      // The moves out of the first two, then the turn.
      const det = ee * ff - ef * ef;
      const [pe, pf] = [(es * ff - fs * ef) / det, (fs * ee - es * ef) / det];
      const [qe, qf] = [(ge * ff - gf * ef) / det, (gf * ee - ge * ef) / det];
      const stiff = ss - es * pe - fs * pf;
      // What is nearly round hardly minds its turn: no further than a step from the last.
      const wanted = stiff > 0 ? (gs - es * qe - fs * qf) / stiff : 0;
      const by = Math.min(LARGEST_STEP, Math.max(-LARGEST_STEP, wanted));
      rest.s += by;
      rest.e = qe - pe * by;
      rest.f = qf - pf * by;
    }
  };

  /** A turn at which something is left, near the rest; walls push the blank off until it is clear of all, or never. */
  const turnInside = (): number | null => {
    settle();
    if (!turn(rest.s) && turn(0)) return 0;
    let [s, moveE, moveF] = [rest.s, rest.e, rest.f];
    for (let push = 0; push < PUSHES; push++) {
      if (turn(s)) return s;
      before.set(gap);
      read(s + TURN_STEP);
      const from = s;
      for (let wall = 0; wall < count; wall++) {
        const perTurn = (before[wall]! - gap[wall]!) / TURN_STEP;
        const turned = perTurn * (s - from);
        const over = ne[wall]! * moveE + nf[wall]! * moveF - before[wall]! + turned;
        if (over <= 0) continue;
        const step = (PUSH_ON * over) / (1 + (perTurn / ARM_MM) ** 2);
        moveE -= step * ne[wall]!;
        moveF -= step * nf[wall]!;
        s -= (step * perTurn) / (ARM_MM * ARM_MM);
      }
    }
    return null;
  };

  const extreme = (way: 1 | -1): number => {
    let most = -Infinity;
    for (let k = 0; k < corners; k++) most = Math.max(most, way * atF[k]!);
    return way * most;
  };
  const end = (f: number, way: 1 | -1): number => {
    let least = Infinity;
    for (let wall = 0; wall < count; wall++) {
      const along = way * ne[wall]!;
      if (along > PARALLEL) least = Math.min(least, (gap[wall]! - nf[wall]! * f) / along);
    }
    return way * least;
  };
  return {
    turn,
    rest,
    roomAt: (atE0, atF0) => {
      let least = Infinity;
      for (let wall = 0; wall < count; wall++)
        least = Math.min(least, gap[wall]! - ne[wall]! * atE0 - nf[wall]! * atF0);
      return least;
    },
    low: () => extreme(-1),
    high: () => extreme(1),
    left: (f) => end(f, -1),
    right: (f) => end(f, 1),
    limits: () => {
      const inside = turnInside();
      if (inside === null) return null;
      // Whether it goes is all that is known, so the limits are found by halving.
      return limitsFrom((s) => (turn(s) ? 0 : 1), inside);
    },
    area: () => {
      let twice = 0;
      for (let k = 0; k < corners; k++) {
        const next = k + 1 === corners ? 0 : k + 1;
        twice += atE[k]! * atF[next]! - atF[k]! * atE[next]!;
      }
      return Math.max(0, twice / 2);
    },
  };
}

/** Over which a wall's gap is taken to change with the turn. */
const TURN_STEP = 1e-6;
/** Lever at which a turn counts as much as a move when a blank is pushed off its walls, mm. */
const ARM_MM = 100;
