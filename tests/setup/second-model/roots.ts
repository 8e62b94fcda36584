/**
 * A step below this share of the probe is the last: each step squares the error of the one before
 * (the slopes are steady over a probe), so what is left is lost in rounding.
 */
const SETTLED_SHARE = 1e-6;
const MOST_STEPS = 60;

/**
 * Where `f` is zero, by Newton's method with a slope measured over plus and minus `probe`.
 * @throws when it does not settle: the set-up asked for has no such contact.
 */
export function rootOf(f: (at: number) => number, start: number, probe: number): number {
  let at = start;
  let last = Infinity;
  for (let count = 0; count < MOST_STEPS; count++) {
    const slope = (f(at + probe) - f(at - probe)) / (2 * probe);
    const step = f(at) / slope;
    if (!Number.isFinite(step)) break;
    at -= step;
    last = Math.abs(step);
    if (last < probe * SETTLED_SHARE) return at;
  }
  throw new Error(`no root near ${start} (last step ${last}, now ${at})`);
}

/** Lowest or highest point of the parabola through f(0), f(1/2) and f(1); `bends` > 0: a lowest one. */
export function parabolaTurn(f: (share: number) => number): {
  readonly share: number;
  readonly value: number;
  readonly bends: number;
} {
  const [start, middle, end] = [f(0), f(0.5), f(1)];
  const bends = 2 * (start - 2 * middle + end);
  const slope = end - start - bends;
  const share = -slope / (2 * bends);
  return { share, value: start - (slope * slope) / (4 * bends), bends };
}
