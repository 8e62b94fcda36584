import type { Job } from '../../job/job.ts';
import { made, type Step } from '../answer.ts';
import type { StopPart } from '../stop-part.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { camBase } from './cam-base.ts';
import { camClamp } from './cam-clamp.ts';
import { dowelBoard } from './dowel-board.ts';
import { drillGuide } from './drill-guide.ts';
import type { JigPart } from './part.ts';
import { nestFrame } from './nest-frame.ts';
import { outOfPlace } from './out-of-place.ts';
import { shimPads } from './shim-pads.ts';
import { stepBlock } from './step-block.ts';
import { strapClamp } from './strap-clamp.ts';
import { toeClamp } from './toe-clamp.ts';
import { wedgePair } from './wedge-pair.ts';

/** The parts that a job asks for under `jig:`, or the first that cannot be made and what would fit. */
export function partsOf(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
): Step<readonly JigPart[]> {
  const { jig } = job;
  const wrong = outOfPlace(job, stops);
  if (wrong !== null) return wrong;
  const asked: readonly (Step<readonly JigPart[]> | undefined)[] = [
    jig['dowel-board'] && dowelBoard(job, jig['dowel-board']),
    jig['drill-guide'] && drillGuide(stops, jig['drill-guide']),
    jig['strap-clamp'] && strapClamp(job, stops, jig['strap-clamp']),
    jig['step-block'] && stepBlock(job, jig['step-block']),
    jig['toe-clamp'] && toeClamp(job, jig['toe-clamp']),
    jig['cam-clamp'] && camClamp(job, jig['cam-clamp']),
    jig['cam-base'] && camBase(job, jig['cam-base']),
    jig['nest-frame'] && nestFrame(job, placings, jig['nest-frame']),
    jig['wedge-pair'] && wedgePair(job, jig['wedge-pair']),
    jig['shim-pads'] && shimPads(jig['shim-pads']),
  ];
  const parts: JigPart[] = [];
  for (const step of asked) {
    if (step === undefined) continue;
    if (step.kind === 'cannot') return step;
    parts.push(...step.value);
  }
  return made(parts);
}
