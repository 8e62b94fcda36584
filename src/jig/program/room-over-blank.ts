import type { Cutter, Job } from '../../job/job.ts';
import { overheadOf } from '../../sweep/overhead.ts';
import { cannot, mm, type Cannot } from '../answer.ts';
import { roundingMm, stopNumbers } from '../numbers.ts';

/**
 * Why a cutter must not go down to `lowMm` in a blank that lies on the bed, or null: nut or spindle
 * would come down on the blank. A dust shoe with bristles may touch it.
 */
export function noRoomOverBlank(
  job: Job,
  cutter: Cutter,
  lowMm: number,
  name: string,
): Cannot | null {
  for (const { what, plan, fromMm } of overheadOf(job, cutter)) {
    const isWider = plan.kind === 'disc' && plan.radiusMm > cutter.diameterMm / 2;
    const shortMm = job.blank.thickMm + stopNumbers.clearBesideMm - (lowMm + fromMm);
    if (what !== 'cutter' && isWider && shortMm > roundingMm)
      return cannot(
        `${name}: the ${what} would come ${mm(shortMm)} too near to the blank while ${cutter.name} is at its lowest`,
        `a cutter that sticks out ${mm(shortMm)} more`,
      );
  }
  return null;
}
