import { unreachable } from '../../num/invariant.ts';
import type { Body } from '../../sweep/body.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { clearancesOf } from '../../sweep/clearances.ts';
import type { Clearance } from '../../sweep/clearance.ts';
import { inOrder } from '../places.ts';
import type { BedInput, SheetInput } from '../sheet-input.ts';
import { dowelSet } from './dowels/dowel-set.ts';
import { standingDowels } from './dowels/dowel-standing.ts';
import { dowelsWay } from './dowels/dowels-way.ts';
import { fenceAndDowelWay } from './fence/fence-and-dowel-way.ts';
import { fenceBar } from './fence/fence-bar.ts';
import { standingWalls } from './nest/nest-standing.ts';
import { nestWay } from './nest/nest-way.ts';
import type { Standing } from './standing.ts';
import { stopsWay } from './stops/stops-way.ts';
import type { Way } from './way.ts';

/** The way in which the job locates its blank, as the sheet tells it. */
export function wayOf(input: SheetInput): Way {
  if (input.made === 'stops') return stopsWay(input);
  const { job, placings } = input;
  switch (job.locating) {
    case 'dowels':
      return dowelsWay(job, placings);
    case 'nest':
      return nestWay(job, placings);
    case 'fence-and-dowel':
      return fenceAndDowelWay(job, placings, input.printedFence);
    default:
      return unreachable(job);
  }
}

/**
 * How everything that moves with the cutter passes what is made in the bed, where that stands. `fence`:
 * a printed fence and its screw heads, in place of a bar.
 */
export function clearancesInBed(
  job: BedInput['job'],
  placings: Placings,
  fence: readonly Body[] = [],
): readonly Clearance[] {
  const standing = standingIn(job, placings, fence);
  const isThere = ({ body, placing }: Clearance): boolean =>
    standing.some(
      (one) => one.body.name === body && one.placings.some((face) => `${face}-up` === placing),
    );
  return clearancesOf(
    job,
    placings,
    standing.map(({ body }) => body),
  ).filter(isThere);
}

/** What is made in the bed and stands on it, each with the faces up for which it does. */
export function standingIn(
  job: BedInput['job'],
  placings: Placings,
  fence: readonly Body[] = [],
): readonly Standing[] {
  switch (job.locating) {
    case 'dowels':
      return standingDowels(dowelSet(job, job.dowels, placings));
    case 'nest': {
      const order = inOrder(job, placings);
      return standingWalls(job, job.nest, job.nest.around === null ? order : [order[1]]);
    }
    case 'fence-and-dowel': {
      const { dowel } = job.fenceAndDowel;
      const bodies = fence.length > 0 ? fence : [fenceBar(job.fenceAndDowel, placings).body];
      return [
        ...bodies.map((body): Standing => ({ body, placings: ['front', 'back'] })),
        ...standingDowels(dowelSet(job, dowel, placings)),
      ];
    }
    default:
      return unreachable(job);
  }
}
