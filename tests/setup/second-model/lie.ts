import type { Job } from '../../../src/job/job.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import { plus, turned, type XY } from './vectors.ts';

/** How the blank really lies: mirrored as it nominally is, then turned about `pivot`, then shifted. */
export interface Lie {
  readonly mirror: Placing['mirror'];
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pivot: XY;
  readonly turnRad: number;
  readonly shift: XY;
}

export function lieOf(job: Job, placing: Placing, pivot: XY, turnRad: number, shift: XY): Lie {
  // Turned about a line that is not its middle, it lies further on.
  const widthMm = job.blank.widthMm + placing.lies.x;
  const heightMm = job.blank.heightMm + placing.lies.y;
  return { mirror: placing.mirror, widthMm, heightMm, pivot, turnRad, shift };
}

/** Blank coordinates of a machine place. */
export function inBlank(lie: Lie, machine: XY): XY {
  const arm = plus(plus(machine, lie.shift, -1), lie.pivot, -1);
  const { x, y } = plus(lie.pivot, turned(arm, -lie.turnRad));
  return {
    x: lie.mirror === 'x' ? lie.widthMm - x : x,
    y: lie.mirror === 'y' ? lie.heightMm - y : y,
  };
}

/** Machine place of blank coordinates. */
export function onMachine(lie: Lie, place: XY): XY {
  const mirrored = {
    x: lie.mirror === 'x' ? lie.widthMm - place.x : place.x,
    y: lie.mirror === 'y' ? lie.heightMm - place.y : place.y,
  };
  return plus(plus(lie.pivot, turned(plus(mirrored, lie.pivot, -1), lie.turnRad)), lie.shift);
}
