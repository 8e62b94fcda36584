import type { Job, Units } from '../job/job.ts';
import { holdNumbers } from '../hold/numbers.ts';
import { isGood, type HoldPlan, type PlacingPlan } from '../hold/plan.ts';
import { clashWords } from './hold-clash-words.ts';
import { blockedLines } from './hold-blocked-words.ts';
import { programLines } from './hold-program-words.ts';
import { lengthText } from './words.ts';

/** One thing to know about a placing's plan; `bad` must be put right before anything is cut. */
export interface HoldLine {
  readonly kind: 'plain' | 'bad';
  readonly text: string;
}

/** Printed with every plan: what the figures are, and what they are not. */
export const HOLD_CAUTION =
  'Forces and strengths are estimates: nobody has published the forces of small routers, wood varies by a half and more, and clamps work loose. Check every clamp by hand after the first pass and after turning over, wear glasses, stand out of the line of a clamp or screw that could be struck. What the makers of machine, cutters and clamps say, local rules and licensed practice come first.';

/** `Front up: held, nothing in the way.` */
export function holdHeadline(plan: PlacingPlan): string {
  const which = plan.placing.faceUp === 'front' ? 'Front up' : 'Back up';
  if (plan.reach === null) return `${which}: nothing is cut`;
  return `${which}: ${isGood(plan) ? 'held, and nothing in the way' : 'NOT READY TO CUT'}`;
}

/** Everything about one placing's plan, in the order in which it is acted on. */
export function holdLines(job: Job, plan: PlacingPlan): readonly HoldLine[] {
  const { units } = job.shop;
  if (plan.reach === null) return [];
  return [
    ...programLines(job, plan),
    forceLine(plan),
    ...clampLines(plan, units),
    ...blockedLines(plan, units),
    ...gripLines(plan, units),
    ...plan.crush.map((crush) =>
      plain(
        `${crush.strap.bodies[0]!.name} may press ${crush.pressure.toFixed(1)} N/mm2 and dent the wood, which bears ${crush.bears.toFixed(1)}: put a block under its pad, or tighten to ${crush.gentleTorqueNm.toFixed(1)} Nm and plan again`,
      ),
    ),
    ...plan.screws.flatMap(({ name, faults }) => faults.map((fault) => bad(`${name} ${fault}`))),
    ...clashLines(plan, units),
    ...plan.travel.map(({ axis, fromMm, toMm, travelMm, kind }) =>
      bad(
        `the ${axis} axis would go from ${lengthText(fromMm, units)} to ${lengthText(toMm, units)} ${kind === 'size' ? 'and' : 'on the bed, and, if it begins at the bed’s near-left corner,'} travels ${lengthText(travelMm, units)}`,
      ),
    ),
    ...pieceLines(plan),
  ];
}

/** Whether both placings can be cut as planned. */
export const bothGood = ({ frontUp, backUp }: HoldPlan): boolean =>
  [frontUp, backUp].every((plan) => plan.reach === null || isGood(plan));

const plain = (text: string): HoldLine => ({ kind: 'plain', text });
const bad = (text: string): HoldLine => ({ kind: 'bad', text });

function forceLine({ force }: PlacingPlan): HoldLine {
  const from = force.isStated ? 'your own bound' : 'estimated, worn cutter';
  const assumed = force.assumed.length === 0 ? '' : `; assumed: ${force.assumed.join(', ')}`;
  return plain(
    `the cutter pulls ${newtons(force.sidewaysN)} sideways and lifts ${newtons(force.liftN)} at most (${from}, ${force.feature}${assumed})`,
  );
}

function clampLines({ layout }: PlacingPlan, units: Units): readonly HoldLine[] {
  if (layout === null) return [];
  return layout.straps.map((strap) =>
    plain(
      `${strap.bodies[0]!.name}: bolt ${strap.strap.thread}, over the ${strap.side} side, pad ${lengthText(strap.boltToWorkMm, units)} from the bolt, ${strap.strap.torqueNm} Nm: presses at least ${newtons(strap.leastN)}`,
    ),
  );
}

function gripLines({ verdict, layout }: PlacingPlan, units: Units): readonly HoldLine[] {
  if (verdict === null) return [];
  const { factor, neededFactor, isHeld, worst } = verdict;
  if (factor === 0) return [bad('nothing holds the blank against the cutter')];
  const where = `at ${lengthText(worst.at.x, units)}, ${lengthText(worst.at.y, units)} from the blank’s near-left corner, pulled towards ${Math.round((worst.pullsRad * 180) / Math.PI)} degrees, it ${worst.gives} first`;
  const chosen =
    layout === null
      ? ''
      : layout.search === 'exact'
        ? '; every set of as few straps was tried'
        : '; not every set of straps was tried';
  return [
    {
      kind: isHeld ? 'plain' : 'bad',
      text: `holds ${timesText(factor)} the cutter’s force, ${neededFactor} times are wanted: ${where}${chosen}`,
    },
  ];
}

const timesText = (factor: number): string =>
  factor === Infinity ? 'any number of times' : `${factor.toFixed(1)} times`;

function clashLines(plan: PlacingPlan, units: Units): readonly HoldLine[] {
  if (plan.clashes.length > 0) return plan.clashes.map((clash) => bad(clashWords(clash, units)));
  const { besideMm, overMm } = holdNumbers;
  return [
    plain(
      `nothing that moves comes within ${lengthText(besideMm, units)} beside or ${lengthText(overMm, units)} over what stands${plan.program === null ? '; between features the cutter is taken to be above everything' : ''}`,
    ),
  ];
}

function pieceLines({ pieces }: PlacingPlan): readonly HoldLine[] {
  return pieces.map(({ piece, by, verdict, isHeld, remedies }) => {
    const name = `${piece.name} comes free when ${piece.by.name} is cut`;
    const holds = by.length === 0 ? 'nothing holds it' : `held by ${by.join(', ')}`;
    const times =
      verdict === null
        ? ''
        : `, ${timesText(verdict.factor)} its force, ${verdict.neededFactor} wanted`;
    if (isHeld) return plain(`${name}: ${holds}${times}`);
    const advice = remedies.length === 0 ? 'put a clamp on it' : remedies.join('; or ');
    return bad(`${name}: ${holds}${times}. It can be thrown: ${advice}`);
  });
}

const newtons = (value: number): string => `${Math.round(value)} N`;
