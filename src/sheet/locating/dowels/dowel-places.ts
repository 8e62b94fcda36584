import type { DowelHoles, Job } from '../../../job/job.ts';
import type { Point } from '../../../plane/point.ts';
import { blankInLayout, layoutOnBed } from '../../../setup/place.ts';
import type { Placing } from '../../../setup/placing.ts';

/** A dowel, and the hole of the same number: the one over it in the first placing. */
export interface Dowel {
  readonly number: number;
  readonly hole: Point<'blank'>;
  readonly stands: Point<'layout'>;
  readonly onBed: Point<'bed'>;
}

/** Chords of a drawn or swept dowel, mm. */
export const CHORD_MM = 0.05;

export function dowelsOf(job: Job, { at }: DowelHoles): readonly Dowel[] {
  const mirror = job.first === 'front' ? 'none' : job.turn === 'about-y' ? 'x' : 'y';
  return at.map((hole, k) => {
    const stands = blankInLayout(job, mirror, hole);
    return { number: k + 1, hole, stands, onBed: layoutOnBed(job, stands) };
  });
}

/** The number of the hole that lies over a dowel in this placing. */
export function holeOver(
  job: Job,
  dowels: readonly Dowel[],
  { stands }: Dowel,
  placing: Placing,
): number {
  const off = dowels.map(({ hole }) => {
    const { x, y } = blankInLayout(job, placing.mirror, hole);
    return Math.hypot(x - stands.x, y - stands.y);
  });
  return dowels[off.indexOf(Math.min(...off))]!.number;
}

/** A metal insert of the bed that a hole would run into. */
export interface InsertClash {
  readonly dowel: Dowel;
  readonly insert: Point<'bed'>;
}

/** Half an insert's outside over half its thread, and what is to be left between, mm. Common practice, no source. */
const ROUND_INSERT_MM = 5;

export function insertClashes(
  job: Job,
  dowels: readonly Dowel[],
  diameterMm: number,
): readonly InsertClash[] {
  const { inserts } = job.shop.bed;
  if (inserts === null) return [];
  const keepMm = Number(inserts.thread.slice(1)) / 2 + ROUND_INSERT_MM + diameterMm / 2;
  const nearest = (mm: number, axis: 'x' | 'y'): number => {
    const index = Math.round((mm - inserts.first[axis]) / inserts.pitchMm[axis]);
    const inRow = Math.min(inserts.count[axis] - 1, Math.max(0, index));
    return inserts.first[axis] + inRow * inserts.pitchMm[axis];
  };
  return dowels.flatMap((dowel) => {
    const { x, y } = dowel.onBed;
    const insert = { x: nearest(x, 'x'), y: nearest(y, 'y') };
    return Math.hypot(insert.x - x, insert.y - y) < keepMm ? [{ dowel, insert }] : [];
  });
}
