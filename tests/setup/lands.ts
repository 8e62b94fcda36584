import { BATCH } from '../../src/num/batch.ts';
import type { Face, Job } from '../../src/job/job.ts';
import { newColumns } from '../../src/setup/columns.ts';
import { deviationKey } from '../../src/setup/deviation.ts';
import { turnOverOf } from '../../src/setup/turnover.ts';
import type { Off } from './misalign.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

/** How far the cuts for blank places of one face land from them, mm, blank frame, by the production model in one trial. */
export function landsOff(job: Job, off: Off, face: Face, places: readonly At[]): readonly At[] {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  const cuts = places.map((at) => model.landing(face, face, at));
  const keys = columns.asked().map(deviationKey);
  const draws = new Float64Array(keys.length * BATCH);
  for (const [key, value] of Object.entries(off)) {
    const index = keys.indexOf(key);
    if (index < 0) throw new Error(`the job does not use ${key}; it uses ${keys.join(', ')}`);
    draws[index * BATCH] = value;
  }
  model.lay(draws, 0);
  return cuts.map((cut) => {
    cut.locate(draws, 0);
    return { x: cut.x(), y: cut.y() };
  });
}

/**
 * How far the blank's own points really lie from their nominal places, mm, layout frame, front up. A cut
 * commanded at the nominal place of P lands on the blank at P + off, so with the turn R of the blank
 * R (P + off) + t = P and P has moved by R P + t - P = -R off. The turn shows in two landings.
 */
export function blankMoved(job: Job, off: Off, places: readonly At[]): readonly At[] {
  const [origin, right, ...offs] = landsOff(job, off, 'front', [
    { x: 0, y: 0 },
    { x: ARM_MM, y: 0 },
    ...places,
  ]);
  // The inverse of R turns (arm, 0) into (arm, 0) + (right - origin).
  const cos = 1 + (right!.x - origin!.x) / ARM_MM;
  const sin = -(right!.y - origin!.y) / ARM_MM;
  return offs.map(({ x, y }) => ({ x: -(cos * x - sin * y), y: -(sin * x + cos * y) }));
}

const ARM_MM = 100;
