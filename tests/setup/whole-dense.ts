// What every need comes to a second time: each place of the way of a cutter's axis landed by itself, its outline by the
// clipping library, and every distance by looking at all places. No reaches, no maps, no arcs.
import { featurePath } from '../../src/job/feature-path.ts';
import type { Feature, Job } from '../../src/job/job.ts';
import { grown } from '../../src/plane/clip.ts';
import { isInside } from '../../src/plane/distance.ts';
import { signedAreaMm2 } from '../../src/plane/measure.ts';
import type { Outline } from '../../src/plane/outline.ts';
import { flattened } from '../../src/plane/path-measure.ts';
import type { Point } from '../../src/plane/point.ts';
import { newColumns } from '../../src/setup/columns.ts';
import { heightsOf } from '../../src/setup/heights.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { turnOverOf } from '../../src/setup/turnover.ts';
import { denseGaps, denseStep } from '../plane/dense-outline.ts';
import { drawsOf, offBy } from './whole-job.ts';

const CHORD_MM = 1e-3;
/** By how much the dense places may miss, mm: chords on both sides, of the axis and of the outline. */
export const MISS_MM = 4 * CHORD_MM;

export function dense(job: Job, seed: number): ReadonlyMap<string, number> {
  const feature = (name: string): Feature => job.features.find((one) => one.name === name)!;
  const landed = (name: string): readonly Outline<'blank'>[] =>
    landedOutlines(job, seed, feature(name));
  const [outer, inner] = [landed('outer'), landed('inner')];
  const lip = denseGaps(outer, inner);
  const [along, across] = [spanOf(inner.flat(), 'x'), spanOf(landed('vee').flat(), 'y')];
  return new Map([
    ['least lip', lip.least],
    ['largest lip', lip.most],
    ['meets', denseStep(landed('upper'), landed('lower'))],
    ['wall', Math.min(...walls(job, seed, outer.flat()))],
    ['wall of V', walls(job, seed, landed('vee').flat())[3]!],
    ['size', along],
    ['size of V', across],
    ['web', leastWeb(job, seed, [feature('outer'), feature('inner')])],
    [
      'parallel',
      100 * Math.tan(turnOf(job, seed, feature('inner')) - turnOf(job, seed, feature('outer'))),
    ],
  ]);
}

const spanOf = (places: readonly Point<'blank'>[], axis: 'x' | 'y'): number =>
  Math.max(...places.map((p) => p[axis])) - Math.min(...places.map((p) => p[axis]));

/** Lands places of a feature, and tells how much deeper it is there. */
function lander(job: Job, seed: number, feature: Feature) {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  const placings = placingsOf(job);
  const heights = heightsOf(job, { front: placings.frontUp, back: placings.backUp }, columns);
  const depth = heights.depthOf(feature);
  const landing = (p: Point<'blank'>) => model.landing(`feature ${feature.name}`, feature.face, p);
  landing(feature.at);
  const draws = drawsOf(seed, columns.asked());
  model.lay(draws, 0);
  heights.load(draws, 0);
  depth.load(draws, 0);
  return {
    place: (p: Point<'blank'>): Point<'blank'> => {
      const there = landing(p);
      there.locate(draws, 0);
      return { x: p.x + there.x(), y: p.y + there.y() };
    },
    deeper: (p: Point<'blank'>): number => depth.deeper(p),
    thicker: (p: Point<'blank'>): number => heights.thicker(p),
  };
}

function landedOutlines(job: Job, seed: number, feature: Feature): readonly Outline<'blank'>[] {
  const { cutter, cut } = feature;
  const { place, deeper } = lander(job, seed, feature);
  const sign = cut === 'profile-outside' || cut === 'chamfer-outside' ? 1 : -1;
  const tangent = cutter.vee === null ? 0 : Math.tan(cutter.vee.includedRad / 2);
  const radiusMm = cutter.vee === null ? cutter.diameterMm / 2 : feature.depthMm * tangent;
  const grows =
    offBy(seed, { kind: 'cutter-radius', cutter: cutter.name }) -
    offBy(seed, { kind: 'push-off', cut: `feature ${feature.name}` }) +
    (cutter.vee === null ? 0 : offBy(seed, { kind: 'tip-flat', cutter: cutter.name }) / 2);
  const axes = grown([flattened(featurePath(feature), CHORD_MM)], sign * radiusMm, CHORD_MM);
  const reached = sign < 0 ? axes : [largest(axes)];
  if (cutter.vee === null)
    return grown(
      reached.map((axis) => axis.map(place)),
      -sign * (radiusMm + grows),
      CHORD_MM,
    );
  // Of a smooth outline: each place moved square to the way by the radius that the cutter has there.
  return reached.map((axis) => {
    const landed = axis.map(place);
    return landed.map((p, k) => {
      const [before, after] = [landed.at(k - 1)!, landed[(k + 1) % landed.length]!];
      const [dx, dy] = [after.x - before.x, after.y - before.y];
      const far = (-sign * (radiusMm + grows + tangent * deeper(axis[k]!))) / Math.hypot(dx, dy);
      return { x: p.x + far * dy, y: p.y - far * dx };
    });
  });
}

const largest = (outlines: readonly Outline<'blank'>[]): Outline<'blank'> =>
  outlines.reduce((most, one) => (signedAreaMm2(one) > signedAreaMm2(most) ? one : most));

/** Distances to the lower, upper, left and right edge, as registration.md section 1 draws them. */
function walls(job: Job, seed: number, places: readonly Point<'blank'>[]): readonly number[] {
  const { widthMm, heightMm, widthAtYMm, heightAtXMm } = job.blank;
  const square = offBy(seed, { kind: 'square' });
  const right = square + offBy(seed, { kind: 'taper', axis: 'x' });
  const upper = offBy(seed, { kind: 'taper', axis: 'y' });
  const width = widthMm + offBy(seed, { kind: 'width' });
  const height = heightMm + offBy(seed, { kind: 'height' });
  const least = (of: (p: Point<'blank'>) => number): number =>
    places.reduce((low, p) => Math.min(low, of(p)), Infinity);
  return [
    least(({ y }) => y),
    least(({ x, y }) => (height + upper * (x - heightAtXMm) - y) / Math.hypot(1, upper)),
    least(({ x, y }) => (x - square * y) / Math.hypot(1, square)),
    least(
      ({ x, y }) =>
        (square * widthAtYMm + width + right * (y - widthAtYMm) - x) / Math.hypot(1, right),
    ),
  ];
}

/** Over a grid of places that lie in both outlines as drawn. */
function leastWeb(job: Job, seed: number, features: readonly [Feature, Feature]): number {
  const [one, other] = features.map((feature) => lander(job, seed, feature));
  const outlines = features.map((feature) => flattened(featurePath(feature), CHORD_MM));
  const edge = outlines
    .flat()
    .filter((p) => outlines.every((one) => isInside(p, one) || one.includes(p)));
  const grid = Array.from({ length: 200 * 200 }, (_, k) => ({
    x: features[1].at.x - 40 + 0.4 * (k % 200),
    y: features[1].at.y - 40 + 0.4 * Math.floor(k / 200),
  })).filter((p) => outlines.every((one) => isInside(p, one)));
  const nominal = job.blank.thickMm - features[0].depthMm - features[1].depthMm;
  return [...grid, ...edge].reduce(
    (least, p) => Math.min(least, nominal + one!.thicker(p) - one!.deeper(p) - other!.deeper(p)),
    Infinity,
  );
}

/** How far a feature turned, radians, by two of its places. */
function turnOf(job: Job, seed: number, feature: Feature): number {
  const { place } = lander(job, seed, feature);
  const { at, turnedRad } = feature;
  const [from, to] = [
    at,
    { x: at.x + 30 * Math.cos(turnedRad), y: at.y + 30 * Math.sin(turnedRad) },
  ].map(place);
  return Math.atan2(to!.y - from!.y, to!.x - from!.x) - turnedRad;
}
