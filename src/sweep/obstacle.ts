import { grown, sweptByBox } from '../plane/clip.ts';
import { boundsOf, type Bounds } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import type { Body } from './body.ts';
import type { Margin } from './clash.ts';
import type { Overhead } from './overhead.ts';

/** A body as one moving thing sees it: where the cutter's axis must not be while the thing is low. */
export interface Obstacle {
  /** The axis here makes them meet ... */
  readonly strikes: readonly Outline<'layout'>[];
  /** ... and here come nearer than the margin. */
  readonly near: readonly Outline<'layout'>[];
  readonly bounds: Bounds;
}

/** Chords of grown outlines run inside by up to this, mm; it is added, so a clash is never missed. */
const CHORD_MM = 0.01;

export function obstacleOf(body: Body, { plan }: Overhead, { besideMm }: Margin): Obstacle {
  const around = (moreMm: number): readonly Outline<'layout'>[] => {
    if (plan.kind === 'disc') return grownBy([body.outline], plan.radiusMm + moreMm);
    return grownBy(sweptByBox(body.outline, plan.xMm, plan.yMm), moreMm);
  };
  const near = around(besideMm);
  return { strikes: around(0), near, bounds: boundsOf(near.flat()) };
}

const grownBy = (
  outlines: readonly Outline<'layout'>[],
  byMm: number,
): readonly Outline<'layout'>[] => grown(outlines, byMm + CHORD_MM, CHORD_MM);
