/** Looks at a hill come to this many at most. */
const MOST_LOOKS = 60;
/** So near to the top is on it. */
const NARROW = 1e-13;

/** Places from left to right about the best so far, which is the third; not a number where there is none. */
const at = new Float64Array(5);
const height = new Float64Array(5);

/**
 * Where between two places a function with one top is highest, to about the rounding of its heights. The line through the two
 * places to the left of the best and the one through the two to its right cross where it is looked at next. A hill of two
 * straight sides is climbed in some ten looks, a round one in some thirty.
 */
export function highest(heightOf: (x: number) => number, low: number, high: number): number {
  for (let k = 0; k < 5; k++) {
    at[k] = low + ((high - low) * k) / 4;
    height[k] = heightOf(at[k]!);
  }
  let best = 2;
  for (let k = 0; k < 5; k++) if (height[k]! > height[best]!) best = k;
  shift(best - 2);
  for (let look = 0; look < MOST_LOOKS; look++) {
    const leftWidth = Number.isNaN(at[1]!) ? 0 : at[2]! - at[1]!;
    const rightWidth = Number.isNaN(at[3]!) ? 0 : at[3]! - at[2]!;
    if (leftWidth + rightWidth <= NARROW) break;
    const isRightWider = rightWidth > leftWidth;
    const left = boundOn(-1);
    const atLeft = crossing;
    const right = boundOn(1);
    let x = left > right ? atLeft : crossing;
    const wider = isRightWider ? rightWidth : leftWidth;
    // Close beside what looks like the top the hill falls, which brings a side in; now and then half way does.
    if (look % 4 === 3 || !(Math.max(left, right) > height[2]!) || x === at[2]) {
      const by =
        look % 4 === 3 ? wider / 2 : Math.min(wider / 2, Math.max(NARROW / 4, wider / 256));
      x = at[2]! + (isRightWider ? by : -by);
    }
    insert(x, heightOf(x));
  }
  return at[2]!;
}

let crossing = 0;

/** How high it can be between the best and the next place on a side, and where. */
function boundOn(way: 1 | -1): number {
  const [x, h] = [at[2 + way]!, height[2 + way]!];
  if (Number.isNaN(x)) return -Infinity;
  crossing = (x + at[2]!) / 2;
  const behind = (height[2]! - height[2 - way]!) / (at[2]! - at[2 - way]!);
  const beyond = (height[2 + 2 * way]! - h) / (at[2 + 2 * way]! - x);
  if (!Number.isFinite(behind))
    return Number.isFinite(beyond) ? h + beyond * (at[2]! - x) : Infinity;
  if (!Number.isFinite(beyond)) return height[2]! + behind * (x - at[2]!);
  const where = (h - height[2]! + behind * at[2]! - beyond * x) / (behind - beyond);
  const [least, most] = way > 0 ? [at[2]!, x] : [x, at[2]!];
  if (where > least && where < most) crossing = where;
  else if (!(where >= least && where <= most)) return Math.max(height[2]!, h);
  return height[2]! + behind * (where - at[2]!);
}

/** Makes the place that many to the right the third; those that are then missing are not numbers. */
function shift(by: number): void {
  const [places, heights] = [at.slice(), height.slice()];
  for (let k = 0; k < 5; k++) {
    at[k] = places[k + by] ?? NaN;
    height[k] = heights[k + by] ?? NaN;
  }
}

function insert(x: number, h: number): void {
  const isRight = x > at[2]!;
  if (h > height[2]!) {
    if (isRight)
      set(at[1]!, at[2]!, x, at[3]!, at[4]!, height[1]!, height[2]!, h, height[3]!, height[4]!);
    else set(at[0]!, at[1]!, x, at[2]!, at[3]!, height[0]!, height[1]!, h, height[2]!, height[3]!);
  } else if (isRight) {
    at[4] = at[3]!;
    height[4] = height[3]!;
    at[3] = x;
    height[3] = h;
  } else {
    at[0] = at[1]!;
    height[0] = height[1]!;
    at[1] = x;
    height[1] = h;
  }
}

function set(...values: readonly number[]): void {
  for (let k = 0; k < 5; k++) {
    at[k] = values[k]!;
    height[k] = values[5 + k]!;
  }
}
