import type { Job } from '../job/job.ts';
import { boltSizes } from './bolts.ts';
import { gentleTorqueNm } from './clamp-force.ts';
import type { StrapPlace } from './strap-place.ts';
import { strengthsOf } from './wood.ts';

/** A pad that dents the wood when its bolt is as tight as it may come out. */
export interface Crush {
  readonly strap: StrapPlace;
  readonly pressure: number;
  readonly bears: number;
  readonly gentleTorqueNm: number;
}

export function crushOf(job: Job, strap: StrapPlace): readonly Crush[] {
  const { crush } = strengthsOf(job.blank.material);
  const pressure = strap.mostN / strap.padMm2;
  if (pressure <= crush) return [];
  const boltMm = boltSizes[strap.strap.thread].diameterMm;
  return [
    {
      strap,
      pressure,
      bears: crush,
      gentleTorqueNm: gentleTorqueNm({ ...strap, boltMm }, strap.padMm2, crush),
    },
  ];
}
