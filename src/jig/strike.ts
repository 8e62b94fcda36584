import type { StopsJob } from '../job/job.ts';
import { grown } from '../plane/clip.ts';
import type { Body } from '../sweep/body.ts';
import { lowestOver, type Placings } from '../sweep/clearances.ts';
import type { Pass } from '../sweep/passes.ts';
import { mm } from './answer.ts';
import { roundingMm, stopNumbers } from './numbers.ts';

/** Something that passes too low over a body, and by how much, mm. */
export interface Strike {
  readonly body: Body;
  readonly over: Pass;
  readonly shortMm: number;
}

/** The worst of all passes that leave too little over any of the bodies, or null. */
export function worstStrike(
  job: StopsJob,
  placings: Placings,
  bodies: readonly Body[],
): Strike | null {
  return bodies.reduce<Strike | null>((worst, body) => {
    const over = lowestOver(job, placings, around(body));
    if (over === null) return worst;
    const shortMm = stopNumbers.clearOverMm - (over.heightMm - body.highMm);
    return shortMm > (worst?.shortMm ?? roundingMm) ? { body, over, shortMm } : worst;
  }, null);
}

/** The body and the room to be kept beside it: blanks and cuts are not where they are drawn. */
function around({ outline }: Body): Body['outline'] {
  return grown([outline], stopNumbers.clearBesideMm, CHORD_MM)[0] ?? outline;
}

const CHORD_MM = 0.05;

/** What passes too low, over what, how high that is, while cutting what. */
export function strikeText({ body, over, shortMm }: Strike): string {
  // What does not stand on the bed stands on a stop: the heads of its screws.
  const stands = body.lowMm > 0 ? `, ${mm(body.highMm - body.lowMm)} above the stop` : '';
  const passes =
    over.heightMm < 0
      ? `${mm(-over.heightMm)} below the bed's surface at`
      : `${mm(over.heightMm)} above the bed over`;
  return `the ${over.what} passes ${passes} the ${body.name} (top at ${mm(body.highMm)}${stands}) while cutting ${over.feature}: ${mm(shortMm)} too low, with ${mm(stopNumbers.clearOverMm)} to be kept free`;
}
