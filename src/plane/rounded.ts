import type { Point } from './point.ts';

/**
 * An outline as a cutter makes it: a polygon (one vertex, two, or more, counter-clockwise, from the
 * feature's own place) with a disc swept round it along the machine's axes, and round that the cutter, which
 * stays round: `roundMm` outwards (a pocket), or inwards when negative (what an outside profile leaves).
 */
export interface Rounded {
  readonly core: readonly CoreVertex[];
  readonly discMm: number;
  readonly roundMm: number;
  /** Radius of the outline's sharpest corner; an outline that shrinks by more keeps its corners sharp. */
  readonly cornerMm: number;
}

/** A vertex, and how far outwards it goes when both its sides move out by 1. */
export interface CoreVertex extends Point<'blank'> {
  readonly outX: number;
  readonly outY: number;
}

/** A polygon with rounded corners, before any cutter. */
export interface RoundedPolygon {
  readonly vertices: readonly Point<'blank'>[];
  readonly radiusMm: number;
}

/** A rectangle about the origin whose corners are round; a slot and a circle are of this kind too. */
export function roundedRectangle(
  widthMm: number,
  heightMm: number,
  radiusMm: number,
): RoundedPolygon {
  const [x, y] = [widthMm / 2 - radiusMm, heightMm / 2 - radiusMm];
  const corners = [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
  const vertices = x === 0 && y === 0 ? [{ x: 0, y: 0 }] : corners;
  return {
    vertices: x === 0 || y === 0 ? withoutTwins(vertices) : vertices,
    radiusMm,
  };
}

/** What a round cutter makes of an outline that it cuts from within: corners no sharper than itself. */
export function cutFromWithin({ vertices, radiusMm }: RoundedPolygon, cutterMm: number): Rounded {
  const core = cornersOf(vertices);
  const shrinkMm = Math.max(0, cutterMm - radiusMm);
  return {
    core: shrinkMm === 0 ? core : core.map((corner) => movedOut(corner, -shrinkMm)),
    discMm: Math.max(0, radiusMm - cutterMm),
    roundMm: cutterMm,
    cornerMm: cutterMm,
  };
}

/** What a round cutter leaves of an outline that it cuts round from outside. */
export function cutFromOutside({ vertices, radiusMm }: RoundedPolygon, cutterMm: number): Rounded {
  return {
    core: cornersOf(vertices),
    discMm: radiusMm + cutterMm,
    roundMm: -cutterMm,
    cornerMm: radiusMm,
  };
}

function movedOut(corner: CoreVertex, byMm: number): CoreVertex {
  return { ...corner, x: corner.x + byMm * corner.outX, y: corner.y + byMm * corner.outY };
}

/** Vertices with the way they go; of a point or a segment there is none to the sides. */
export function cornersOf(vertices: readonly Point<'blank'>[]): readonly CoreVertex[] {
  const n = vertices.length;
  return vertices.map((at, k) => {
    if (n < 3) return { x: at.x, y: at.y, outX: 0, outY: 0 };
    const before = normalOf(vertices[(k + n - 1) % n]!, at);
    const after = normalOf(at, vertices[(k + 1) % n]!);
    const share = 1 / (1 + before.x * after.x + before.y * after.y);
    return {
      x: at.x,
      y: at.y,
      outX: (before.x + after.x) * share,
      outY: (before.y + after.y) * share,
    };
  });
}

function normalOf(from: Point<'blank'>, to: Point<'blank'>): Point<'blank'> {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  return { x: dy / length, y: -dx / length };
}

function withoutTwins(places: readonly Point<'blank'>[]): readonly Point<'blank'>[] {
  return places.filter(
    (p, k) => places.findIndex((other) => other.x === p.x && other.y === p.y) === k,
  );
}
