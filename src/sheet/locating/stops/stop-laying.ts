import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import { markup } from '../../html.ts';
import { acrossFrom, markCorner } from '../../places.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText } from '../../words.ts';
import { towards } from '../towards.ts';
import { sideStopName } from './side-stop.ts';

/** Laying the blank against its stops and holding it there. */
export function stopLaying(job: Job, placing: Placing): Step[] {
  const units = job.shop.units;
  return [
    step(markup`Blow and brush bed, stops and blank clean, the corner above all.`),
    step(
      markup`Lay the blank down, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>. First press its ${placing.base.edge} edge against the fence on the ${placing.base.side} side; then, keeping it pressed, slide it ${towards(placing.end.side)} until its ${placing.end.edge} edge touches ${sideStopName(job, placing)}.`,
    ),
    hold(job, placing),
    step(
      markup`Try a ${lengthText(units === 'inch' ? 0.0508 : 0.05, units)} feeler at the black wedges of the picture. ${feelerWords(placing)} If it goes in where it must not, take the blank out, clean, and lay it again.`,
    ),
  ];
}

/** Two buttons are both felt; of an arm on the side, the blank touches one end, as its edge will have it. */
function feelerWords(placing: Placing): string {
  const armOnSide = placing.contacts.some(
    ({ face, kind }) => face === 'side' && kind === 'arm-end',
  );
  const armOnFence = placing.contacts.some(
    ({ face, kind }) => face === 'fence' && kind === 'arm-end',
  );
  const fence = armOnFence
    ? 'Along the fence it must not go in at both ends at once.'
    : 'At the fence it must not go in at either.';
  const side = armOnSide
    ? 'Along the side stop it must not go in at one end at least.'
    : 'At the side stop it must not go in.';
  return `${fence} ${side}`;
}

function hold(job: Job, placing: Placing): Step {
  const corner = cornerOf(placing);
  const away = acrossFrom(corner);
  if (job.hold.pusher === 'towards-stops')
    return step(
      markup`Push with the pusher from the ${away} towards the stops at the ${corner}, then tighten the clamps a little each, crosswise. A clamp's bolt must not drag the blank.`,
    );
  return step(
    markup`Press by hand from the ${away} towards the stops at the ${corner} while you tighten the clamps a little each, crosswise, watching that none drags the blank off the stops.`,
  );
}

function cornerOf({ base, end }: Placing): ReturnType<typeof acrossFrom> {
  const sides = [base.side, end.side];
  const far = sides.includes('far') ? 'far' : 'near';
  return sides.includes('right') ? `${far}-right` : `${far}-left`;
}
