import type { Job, Units } from '../job/job.ts';
import { boltMostN } from '../hold/strap-place.ts';
import { holdNumbers } from '../hold/numbers.ts';
import type { HoldPlan } from '../hold/plan.ts';
import { isGood, type PlacingPlan } from '../hold/placing-plan.ts';
import { layoutOnBed } from '../setup/place.ts';
import { pieceOf } from '../sweep/piece.ts';
import { changeWords } from './hold-change-words.ts';
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
    ...locatorLines(plan),
    ...clampLines(plan, units),
    ...pusherLines(job, plan),
    ...blockedLines(job, plan),
    ...gripLines(job, plan),
    ...crushLines(plan),
    ...plan.webs.map(({ cut, over, thickMm, factor }) =>
      plain(
        `${lengthText(thickMm, units)} are left between ${cut} and ${over} underneath, and bear only ${timesText(factor)} the cutter’s push (an estimate): lay a filler there (hold: filler: yes), and take light last passes`,
      ),
    ),
    ...plan.screws.flatMap(({ name, faults }) => faults.map((fault) => bad(`${name} ${fault}`))),
    ...clashLines(plan, units),
    ...plan.travel.map(({ axis, fromMm, toMm, travelMm, kind }) =>
      bad(
        `the ${axis} axis would go from ${lengthText(fromMm, units)} to ${lengthText(toMm, units)} ${kind === 'size' ? 'and' : 'on the bed, and, if it begins at the bed’s near-left corner,'} travels ${lengthText(travelMm, units)}`,
      ),
    ),
    ...pieceLines(job, plan),
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
  if (layout === null || layout.straps.length === 0) return [];
  const lines = layout.straps.map((strap) =>
    plain(
      `${strap.bodies[0]!.name}: bolt ${strap.strap.thread}, over the ${strap.side} side, pad ${lengthText(strap.boltToWorkMm, units)} from the bolt, ${strap.strap.torqueNm} Nm: presses at least ${newtons(strap.leastN)}`,
    ),
  );
  const most = Math.max(...layout.straps.map(boltMostN));
  return [
    ...lines,
    plain(
      `a bolt may pull ${newtons(most)} on its insert or track; what those bear is not counted: ask their maker, and try one bolt to that torque first`,
    ),
  ];
}

/** Without them nothing says whether the cutter strikes a stop. */
const locatorLines = ({ areLocatorsKnown }: PlacingPlan): readonly HoldLine[] =>
  areLocatorsKnown
    ? []
    : [
        bad(
          'what locates the blank cannot be made as the job stands, so nothing was checked against it, and clamps may stand where it must: run check, put that right, and plan again',
        ),
      ];

function pusherLines(job: Job, { pushers }: PlacingPlan): readonly HoldLine[] {
  const { units } = job.shop;
  const { placed, noRoomAt } = pushers;
  const where = placed.map(({ body, at, newtons: force }) => {
    const onBed = layoutOnBed(job, at);
    return `${body.name} at ${lengthText(onBed.x, units)}, ${lengthText(onBed.y, units)} on the bed, ${newtons(force)}`;
  });
  const lines =
    where.length === 0
      ? []
      : [
          plain(
            `pushed against its stops: ${where.join('; ')} (an estimate: a thumb on a wedge of 7 degrees), counted sideways alone, without friction. Take one lower than the blank. It holds nothing down, and vibration can loosen it: look again after the first pass`,
          ),
        ];
  return [
    ...lines,
    ...noRoomAt.map((side) =>
      plain(
        `no pusher can stand at the ${side} side clear of cutter, clamps and stops: push there by hand, with the spindle switched off, while the clamps are tightened; none is counted`,
      ),
    ),
  ];
}

function gripLines(job: Job, { verdict, layout, placing }: PlacingPlan): readonly HoldLine[] {
  const { units } = job.shop;
  const { name, box } = pieceOf(job, placing);
  if (verdict === null) return [];
  const { factor, neededFactor, isHeld, worst } = verdict;
  if (factor === 0) return [bad(`nothing holds the ${name} against the cutter`)];
  const where = `at ${lengthText(worst.at.x - box.lowX, units)}, ${lengthText(worst.at.y - box.lowY, units)} from the near-left corner of the ${name}, pulled towards ${Math.round((worst.pullsRad * 180) / Math.PI)} degrees, it ${worst.gives} first`;
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

function pieceLines(job: Job, { pieces }: PlacingPlan): readonly HoldLine[] {
  return pieces.map(({ piece, freed, by, verdict, isHeld, remedies }) => {
    const name =
      freed === 'now'
        ? `${piece.name} comes free when ${piece.by.name} is cut`
        : `${piece.name} is free since ${piece.by.name} was cut, and is cut at again`;
    const holds = by.length === 0 ? 'nothing holds it' : `held by ${by.join(', ')}`;
    const times =
      verdict === null
        ? ''
        : `, ${timesText(verdict.factor)} its force, ${verdict.neededFactor} wanted`;
    if (isHeld) return plain(`${name}: ${holds}${times}`);
    const advice = remedies.map((one) => changeWords(job, one)).join('; or ');
    return bad(
      `${name}: ${holds}${times}. It can be thrown${advice === '' ? '' : `. What would hold it, planned anew and found good: ${advice}`}`,
    );
  });
}

/** Pads that dent the wood; what gentler bolts hold is said once. */
function crushLines({ crush, gentle }: PlacingPlan): readonly HoldLine[] {
  if (crush.length === 0) return [];
  const each = crush.map(
    ({ strap, pressure, bears, gentleTorqueNm }) =>
      `${strap.bodies[0]!.name} may press ${pressure.toFixed(1)} N/mm2, and the wood bears ${bears.toFixed(1)} (${gentleTorqueNm.toFixed(1)} Nm would not dent it)`,
  );
  const then =
    gentle === null
      ? ''
      : gentle.isHeld
        ? `; at those torques it still holds ${timesText(gentle.factor)} the cutter’s force`
        : `; at those torques it would hold only ${timesText(gentle.factor)} the cutter’s force`;
  return [plain(`put a hard block under the pads, or tighten less: ${each.join('; ')}${then}`)];
}

const newtons = (value: number): string => `${Math.round(value)} N`;
