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
  const along = Float64Array.from(places, ({ x }) => (x - start!.x) / PLANE_MM);
  const across = Float64Array.from(places, ({ y }) => (y - start!.y) / PLANE_MM);
  const more = (at: Point<'blank'>): number =>
    heights.thicker(at) - depths[0].deeper(at) - depths[1].deeper(at);
  return (draws, i) => {
    depths[0].load(draws, i);
    depths[1].load(draws, i);
    const here = more(start!);
    const perX = more(right) - here;
    const perY = more(up) - here;
    let least = 0;
    for (let k = 0; k < along.length; k++) {
      const slope = along[k]! * perX + across[k]! * perY;
      if (slope < least) least = slope;
    }
    return nominal + here + least;
  };
}

/** Distance over which the plane's slopes are taken, mm. */
const PLANE_MM = 128;

function overlapOf(one: Feature, other: Feature): readonly Point<'blank'>[] {
  const outlines = [one, other].map((feature) => flattened(featurePath(feature), OVERLAP_CHORD_MM));
  return hullOf(intersectionOf([outlines[0]!], [outlines[1]!]).flat());
}
