import type { Job, Nest } from '../../../job/job.ts';
import type { Outline } from '../../../plane/outline.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Standing } from '../standing.ts';
import { nestShape } from './nest-shape.ts';

/** The board of the nest is at least this much wider on each side, mm. Common practice, no source. */
export const RIM_MM = 25;
/** Left of the board under the nest, mm. Common practice, no source. */
export const UNDER_MM = 6;

/** The walls as bodies, their floor being the bed: a bar along each side of the outline. */
export function standingWalls(
  job: Job,
  nest: Nest,
  placings: readonly Placing[],
): readonly Standing[] {
  const [first] = placings;
  if (first === undefined) return [];
  const { outline } = nestShape(job, nest, first);
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

type At = Outline<'layout'>[number];

/** Outwards of a side of a counter-clockwise outline. */
function bar(from: At, to: At): Outline<'layout'> {
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [outX, outY] = [((to.y - from.y) / long) * RIM_MM, ((from.x - to.x) / long) * RIM_MM];
  return [from, { x: from.x + outX, y: from.y + outY }, { x: to.x + outX, y: to.y + outY }, to];
}
