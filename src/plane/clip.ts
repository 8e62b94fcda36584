import { Clipper, EndType, FillRule, JoinType, type PathsD } from 'clipper2-ts';
import type { Frame, Point } from './point.ts';
import { signedAreaMm2 } from './measure.ts';
import type { Outline } from './outline.ts';

/** Decimals of a millimetre that the clipping library keeps. Its own default is 2: too coarse by far. */
const decimals = 6;

/** The outlines grown by `byMm` all round (shrunk when negative), round at the corners; may be none. */
export function grown<F extends Frame>(
  outlines: readonly Outline<F>[],
  byMm: number,
  chordMm: number,
): Outline<F>[] {
  return outlinesOf(
    Clipper.inflatePathsD(
      pathsOf(outlines),
      byMm,
      JoinType.Round,
      EndType.Polygon,
      2,
      decimals,
      chordMm,
    ),
  );
}

/** What lies in any of the outlines; holes come back clockwise. */
export function unionOf<F extends Frame>(outlines: readonly Outline<F>[]): Outline<F>[] {
  return outlinesOf(Clipper.unionD(pathsOf(outlines), [], FillRule.NonZero, decimals));
}

/** What lies in both; holes come back clockwise. */
export function intersectionOf<F extends Frame>(
  a: readonly Outline<F>[],
  b: readonly Outline<F>[],
): Outline<F>[] {
  return outlinesOf(Clipper.intersectD(pathsOf(a), pathsOf(b), FillRule.NonZero, decimals));
}

/** What lies in `a` and not in `b`; holes come back clockwise. */
export function differenceOf<F extends Frame>(
  a: readonly Outline<F>[],
  b: readonly Outline<F>[],
): Outline<F>[] {
  return outlinesOf(Clipper.differenceD(pathsOf(a), pathsOf(b), FillRule.NonZero, decimals));
}

/**
 * Every place that an upright box of this size, standing about some place of the outline, covers;
 * holes are filled, so the answer may be too large, never too small.
 *
 * Put together here, because the library's own sweep cuts to two decimals and cannot be told not to.
 */
export function sweptByBox<F extends Frame>(
  outline: Outline<F>,
  widthMm: number,
  heightMm: number,
): Outline<F>[] {
  // One way after the other: a fourth of the sides that all corners of the box would draw at once.
  return sweptAlong(outline, { x: widthMm, y: 0 }).flatMap((wide) =>
    sweptAlong(wide, { x: 0, y: heightMm }),
  );
}

/** Every place that a stretch of this length and direction, its middle on the outline, covers. */
function sweptAlong<F extends Frame>(
  outline: Outline<F>,
  by: { readonly x: number; readonly y: number },
): Outline<F>[] {
  const at = (p: Point<F>, share: number): Point<F> => ({
    x: p.x + share * by.x,
    y: p.y + share * by.y,
  });
  const sides = outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    return wound<F>([at(p, -0.5), at(q, -0.5), at(q, 0.5), at(p, 0.5)]);
  });
  // What is not in the outline at one end was left through one of its sides on the way.
  return unionOf([...sides, outline.map((p) => at(p, -0.5))]).filter(
    (loop) => signedAreaMm2(loop) > 0,
  );
}

const wound = <F extends Frame>(outline: Point<F>[]): Outline<F> =>
  signedAreaMm2(outline) < 0 ? outline.toReversed() : outline;

const xy = (p: { readonly x: number; readonly y: number }): { x: number; y: number } => ({
  x: p.x,
  y: p.y,
});

const pathsOf = (outlines: readonly Outline<Frame>[]): PathsD =>
  outlines.map((outline) => outline.map(xy));

// The library hangs a `z` on every place it gives back.
const outlinesOf = <F extends Frame>(paths: PathsD): Outline<F>[] =>
  paths.map((path) => path.map(xy));
