import type { Placing } from '../../../setup/placing.ts';
import { markup } from '../../html.ts';
import { markCorner } from '../../places.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { takeUpWords } from '../take-up.ts';
import type { DowelSet } from './dowel-set.ts';
import { overWords } from './dowel-words.ts';

/** Putting the blank on its dowels. */
export function layOnDowels(set: DowelSet, placing: Placing): Step[] {
  const { job, holes } = set;
  return [
    step(markup`Brush bed, dowels and blank clean; blow the holes of the blank out.`),
    step(
      markup`Hold the blank level over the dowels, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>: ${overWords(set, placing)}. Press it straight down by hand, a little at each end in turn, until it lies on the bed all over. ${STUCK}`,
    ),
    takeUpStep(set),
    step(
      markup`Press on each corner in turn: the blank must not rock, and a sheet of paper must not go under it anywhere. If it does, lift it straight up, clean, and lay it again.${holes.takeUp === 'anywhere' ? '' : ' Push it home again before you go on.'}`,
    ),
  ];
}

export const STUCK = markup`<b>Never hammer or force it.</b> If it binds, lift it straight up and look for chips and burrs, and whether the right hole is over each dowel.`;

function takeUpStep({ job, holes }: DowelSet): Step {
  return step(
    markup`${takeUpWords(holes.takeUp, 'blank', holes.at.length === 1 ? 'the dowel holds' : 'the dowels hold')} Tighten the clamps a little each, crosswise; a clamp must not drag the blank.${job.hold.pusher === 'none' ? ' Hold it with one hand meanwhile, with the spindle switched off.' : ''}`,
  );
}
