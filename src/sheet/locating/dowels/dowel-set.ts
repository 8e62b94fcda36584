import type { DowelHoles, Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import { inOrder } from '../../places.ts';
import { dowelsOf, type Dowel } from './dowel-places.ts';
import { dowelSizes, type DowelSizes } from './dowel-sizes.ts';

/** The dowels of a job with their holes, as far as the sheet has to know them. */
export interface DowelSet {
  readonly job: Job;
  readonly holes: DowelHoles;
  readonly dowels: readonly Dowel[];
  readonly sizes: DowelSizes;
  readonly order: readonly [Placing, Placing];
  /** Placings in which they stand in the bed when the blank is laid. */
  readonly standing: readonly Placing[];
}

export function dowelSet(job: Job, holes: DowelHoles, placings: Placings): DowelSet {
  const order = inOrder(job, placings);
  const standing = holes.drilled === 'separately' ? order : [order[1]];
  return {
    job,
    holes,
    dowels: dowelsOf(job, holes),
    sizes: dowelSizes(job, holes, standing),
    order,
    standing,
  };
}

export const areStanding = ({ standing }: DowelSet, placing: Placing): boolean =>
  standing.some(({ order }) => order === placing.order);
