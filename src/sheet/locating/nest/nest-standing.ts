import type { Job, Nest } from '../../../job/job.ts';
import { toSegmentMm } from '../../../plane/distance.ts';
import type { Outline } from '../../../plane/outline.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Standing } from '../standing.ts';
import { RIM_MM } from '../../../jig/nest/numbers.ts';
import { nestShape } from '../../../jig/nest/nest-shape.ts';

/** The walls as bodies, their floor being the bed: a bar along each side of the outline. */
export function standingWalls(
  job: Job,
  nest: Nest,
  placings: readonly Placing[],
): readonly Standing[] {
  const [first] = placings;
  if (first === undefined) return [];
  const outline = thinned(nestShape(job, nest, first).outline);
  return outline.map((from, i) => ({
    body: {
      name: 'nest wall',
      outline: bar(from, outline[(i + 1) % outline.length]!),
      lowMm: 0,
      highMm: nest.wallMm,
    },
    placings: placings.map(({ faceUp }) => faceUp),
  }));
}

/** Far less than what is kept clear, mm. */
const STRAY_MM = 0.3;

/** The same outline with fewer corners, none of those left out further than that from it. */
function thinned(outline: Outline<'layout'>): Outline<'layout'> {
  const kept: At[] = [];
  let last = 0;
  outline.forEach((at, i) => {
    const from = outline[last]!;
    const to = outline[(i + 1) % outline.length]!;
    const between = outline.slice(last + 1, i + 1);
    if (i > 0 && between.every((one) => toSegmentMm(one, from, to) <= STRAY_MM)) return;
    kept.push(at);
    last = i;
  });
  return kept;
}

type At = Outline<'layout'>[number];

/** Outwards of a side of a counter-clockwise outline. */
function bar(from: At, to: At): Outline<'layout'> {
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [outX, outY] = [((to.y - from.y) / long) * RIM_MM, ((from.x - to.x) / long) * RIM_MM];
  return [from, { x: from.x + outX, y: from.y + outY }, { x: to.x + outX, y: to.y + outY }, to];
}
