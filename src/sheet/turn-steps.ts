import type { ZeroXy } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Way } from './locating/way.ts';
import { inOrder, markCorner } from './places.ts';
import type { SheetInput } from './sheet-input.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';

/** Between the placings: power and zero, what is made there, burrs, the turn itself. */
export function turnSteps({ job, placings }: SheetInput, way: Way): Step[] {
  const [first, second] = inOrder(job, placings);
  const zero = job.first === 'front' ? job.zero.backUp : job.zero.frontUp;
  const [from, to] = [markCorner(job, first), markCorner(job, second)];
  const { name } = pieceOf(job, second);
  const swap =
    job.turn === 'about-y'
      ? markup`<b>Left and right edges change places</b>; near stays near, far stays far.`
      : markup`<b>Near and far edges change places</b>; left stays left, right stays right.`;
  return [
    step(powerWords(zero.xy)),
    ...way.turning.before,
    step(way.turning.burrs),
    ...way.turning.after,
    step(
      markup`Turn the ${name} over as in the picture. ${swap} M goes from the ${from} to the <b>${to}</b>. ${second.faceUp.toUpperCase()} is up now.`,
    ),
  ];
}

function powerWords(xy: ZeroXy): Html {
  switch (xy.kind) {
    case 'milled-stops':
      return markup`<b>Leave the machine switched on, do not home it and do not set X or Y zero:</b> the stops were milled from this zero.`;
    case 'dowels':
      return markup`<b>Leave the machine switched on, do not home it and do not set X or Y zero:</b> the bed was drilled for the dowels from this zero.`;
    case 'nest':
      return markup`<b>Leave the machine switched on, do not home it and do not set X or Y zero:</b> the nest was cut from this zero.`;
    case 'kept':
      return KEPT_WORDS[xy.how];
    case 'stops':
      return markup`X and Y zero will be touched again on the stops: homing or switching off does no harm in between. Do not loosen the stops.`;
    case 'edges':
      return markup`X and Y zero will be touched again on the blank's edges: homing or switching off does no harm in between.`;
    case 'hole':
      return markup`X and Y zero will be found again in the hole ${xy.feature}: homing or switching off does no harm in between.`;
    case 'middle':
      return markup`X and Y zero will be found again at the blank's middle: homing or switching off does no harm in between.`;
    default:
      return unreachable(xy);
  }
}

const KEPT_WORDS: Readonly<Record<'held' | 're-homed' | 'power-off', Html>> = {
  held: markup`<b>Leave the machine switched on, do not home it and do not set X or Y zero:</b> the motors hold it for the second placing.`,
  're-homed': markup`<b>Home the machine once more now</b>, with the bed clear, and call up the X and Y zero you wrote down. Do not switch it off.`,
  'power-off': markup`The machine may be switched off here. When it is on again: warm up, <b>home it</b>, and call up the X and Y zero you wrote down.`,
};
