import type { Cutter, StopsJob } from '../job/job.ts';
import { overheadOf } from '../sweep/overhead.ts';
import { cannot, mm, type Cannot } from './answer.ts';
import { roundingMm, stopNumbers } from './numbers.ts';
import type { BarePart } from './stop-part.ts';

/**
 * Why the faces of a stop cannot be milled in place with `cutter`, or null: its flutes must reach from
 * the foot of the band to its top, and nut and spindle must pass over the stop and its screw heads
 * while the tip is at that foot. A dust shoe can come off for this cut.
 */
export function noMillingRoom(job: StopsJob, part: BarePart, cutter: Cutter): Cannot | null {
  const { lowMm, highMm } = part.band;
  if (cutter.fluteMm !== null && cutter.fluteMm < highMm - lowMm)
    return cannot(
      `the flutes of ${cutter.name} are ${mm(cutter.fluteMm)} long, and the faces of the ${part.name} are to be milled over ${mm(highMm - lowMm)}`,
      `a lower height:, a touch-height: instead, or a cutter with a longer flute:`,
    );
  const topMm = Math.max(part.body.highMm, ...part.heads.map((head) => head.highMm));
  for (const { what, plan, fromMm } of overheadOf(job, cutter)) {
    const isWider = plan.kind === 'disc' && plan.radiusMm > cutter.diameterMm / 2;
    const shortMm = topMm + stopNumbers.clearOverMm - (lowMm + fromMm);
    if (what === 'cutter' || !isWider || shortMm <= roundingMm) continue;
    return cannot(
      `the ${what} is ${mm(lowMm + fromMm)} above the bed while ${cutter.name} mills the faces of the ${part.name} (top at ${mm(topMm)}): ${mm(shortMm)} too low`,
      `a cutter that sticks out ${mm(shortMm)} more, or a lower height:`,
    );
  }
  return null;
}
