import { invariant } from '../num/invariant.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Feature, Job } from '../job/job.ts';
import { intersectionOf } from '../plane/clip.ts';
import { hullOf } from '../plane/convex.ts';
import { flattened } from '../plane/path-measure.ts';
import type { Point } from '../plane/point.ts';
import type { Heights } from './heights.ts';

/** Chords of the overlap; the web slopes by some thousandths at most, so its least is good to 1e-5 mm. */
const OVERLAP_CHORD_MM = 1e-3;

/**
 * The least thickness left between a front and a back feature over their overlap in plan, mm. What
 * the cup lifts in one placing it does not in the other, and the sum is the same everywhere, so the web
 * is a plane over the overlap and least at one of its outermost places. The overlap is that of
 * the nominal outlines: a miss of tenths of a millimetre moves the web by its slope times that.
 */
export function webFinder(
  job: Job,
  features: readonly [Feature, Feature],
  heights: Heights,
): (draws: Float64Array, i: number) => number {
  const [one, other] = features;
  invariant(one.face !== other.face, 'a web is left between a front and a back feature');
  const depths = [heights.depthOf(one), heights.depthOf(other)] as const;
  const places = overlapOf(one, other);
  invariant(places.length > 0, `${one.name} and ${other.name} do not overlap`);
  const nominal = job.blank.thickMm - one.depthMm - other.depthMm;
  const [start] = places;
  const right = { x: start!.x + PLANE_MM, y: start!.y };
  const up = { x: start!.x, y: start!.y + PLANE_MM };
  const { unevenAt: under } = depths[0];
  const { unevenAt: over } = depths[1];
  // On a bed that was read place by place the web is no plane: it is looked at within the overlap too.
  const seen = under === null ? places : [...places, ...within(places)];
  const along = Float64Array.from(seen, ({ x }) => (x - start!.x) / PLANE_MM);
  const across = Float64Array.from(seen, ({ y }) => (y - start!.y) / PLANE_MM);
  const uneven = Float64Array.from(seen, (at) => (under?.(at) ?? 0) + (over?.(at) ?? 0));
  const more = (at: Point<'blank'>): number =>
    heights.thicker(at) - depths[0].deeper(at) - depths[1].deeper(at);
  return (draws, i) => {
    depths[0].load(draws, i);
    depths[1].load(draws, i);
    const here = more(start!);
    const perX = more(right) - here;
    const perY = more(up) - here;
    let least = under === null ? 0 : Infinity;
    for (let k = 0; k < along.length; k++) {
      const slope = along[k]! * perX + across[k]! * perY - uneven[k]!;
      if (slope < least) least = slope;
    }
    return nominal + here + least;
  };
}

/** Distance over which the plane's slopes are taken, mm. */
const PLANE_MM = 128;

/** Places between a hull's middle and its corners. */
function within(hull: readonly Point<'blank'>[]): readonly Point<'blank'>[] {
  const middle = {
    x: hull.reduce((sum, { x }) => sum + x, 0) / hull.length,
    y: hull.reduce((sum, { y }) => sum + y, 0) / hull.length,
  };
  const every = Math.max(1, Math.floor(hull.length / AROUND));
  return hull
    .filter((_, k) => k % every === 0)
    .flatMap(({ x, y }) =>
      [0, 1 / 3, 2 / 3].map((part) => ({
        x: middle.x + part * (x - middle.x),
        y: middle.y + part * (y - middle.y),
      })),
    );
}

/** A bed changes little between so many directions. */
const AROUND = 12;

function overlapOf(one: Feature, other: Feature): readonly Point<'blank'>[] {
  const outlines = [one, other].map((feature) => flattened(featurePath(feature), OVERLAP_CHORD_MM));
  return hullOf(intersectionOf([outlines[0]!], [outlines[1]!]).flat());
}
