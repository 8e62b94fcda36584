/** A place or a direction, mm; which frame is said by the name. */
export interface XY {
  readonly x: number;
  readonly y: number;
}

/** A line in the machine: a place on it and a direction of length 1. */
export interface Line {
  readonly point: XY;
  readonly direction: XY;
}

export const plus = (a: XY, b: XY, times = 1): XY => ({
  x: a.x + times * b.x,
  y: a.y + times * b.y,
});
export const dot = (a: XY, b: XY): number => a.x * b.x + a.y * b.y;
export const cross = (a: XY, b: XY): number => a.x * b.y - a.y * b.x;

export function unit(a: XY): XY {
  const length = Math.hypot(a.x, a.y);
  return { x: a.x / length, y: a.y / length };
}

export function turned(a: XY, rad: number): XY {
  const [c, s] = [Math.cos(rad), Math.sin(rad)];
  return { x: c * a.x - s * a.y, y: s * a.x + c * a.y };
}

/** Where two lines meet. */
export function meet(a: Line, b: Line): XY {
  const along = cross(plus(b.point, a.point, -1), b.direction) / cross(a.direction, b.direction);
  return plus(a.point, a.direction, along);
}

/** The place on a line whose `axis` coordinate is `value`. */
export function lineAt({ point, direction }: Line, axis: 'x' | 'y', value: number): XY {
  return plus(point, direction, (value - point[axis]) / direction[axis]);
}
