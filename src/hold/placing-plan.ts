import type { Placing } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import type { Clash } from '../sweep/clash.ts';
import { keepClearOf } from '../sweep/keep-clear.ts';
import { reachOf, type Reach } from '../sweep/reach.ts';
import { candidatesOf, holdMargin, type Candidates } from './candidates.ts';
import type { Change } from './change.ts';
import { checkedProgram, cutsOf, isRight, type CheckedProgram } from './checked-program.ts';
import { crushOf, type Crush } from './crush.ts';
import { forceOf, type PlannedForce } from './force.ts';
import { heldBy } from './held-by.ts';
import type { HoldInput } from './hold-input.ts';
import { bestLayout, type Layout } from './layout.ts';
import { holdNumbers } from './numbers.ts';
import type { PieceHold } from './piece-hold.ts';
import { piecesHeld } from './pieces-held.ts';
import { pushersFor, pushOf, type Pusher, type Pushers } from './pusher.ts';
import { placedScrews, type PlacedScrew } from './screws.ts';
import type { StrapPlace } from './strap-place.ts';
import { thinWebs, type ThinWeb } from './thin-web.ts';
import { travelFaults, type TravelFault } from './travel.ts';
import { verdictOf, type Verdict } from './verdict.ts';

/** How the blank is held in one placing, and all that speaks against it. */
export interface PlacingPlan {
  readonly placing: Placing;
  readonly force: PlannedForce;
  readonly candidates: Candidates;
  readonly layout: Layout | null;
  readonly screws: readonly PlacedScrew[];
  /** Of everything that holds the blank, clamps or not; null when nothing is cut. */
  readonly verdict: Verdict | null;
  /** Of the same straps, none of them tighter than the wood bears; null when none dents it. */
  readonly gentle: Verdict | null;
  readonly standing: readonly Body[];
  /** Whether what locates could be made, and so was looked at; without it nothing is ready to cut. */
  readonly areLocatorsKnown: boolean;
  readonly pushers: Pushers;
  readonly clashes: readonly Clash[];
  readonly crush: readonly Crush[];
  readonly pieces: readonly PieceHold[];
  /** Where the cutter may break through, with no filler under it. */
  readonly webs: readonly ThinWeb[];
  readonly isFilled: boolean;
  readonly travel: readonly TravelFault[];
  readonly reach: Reach | null;
  readonly program: CheckedProgram | null;
  /** What would make room or hold it, each planned anew and found good; empty until they are looked for. */
  readonly remedies: readonly Change[];
}

/** Whether the blank itself is held and nothing is struck, whatever comes free of it. */
export const isBlankGood = (plan: PlacingPlan): boolean =>
  plan.verdict?.isHeld !== false &&
  plan.clashes.length === 0 &&
  plan.travel.length === 0 &&
  plan.screws.every(({ faults }) => faults.length === 0);

/** Whether nothing speaks against a placing's plan. */
export const isGood = (plan: PlacingPlan): boolean =>
  isBlankGood(plan) &&
  plan.areLocatorsKnown &&
  plan.pieces.every(({ isHeld }) => isHeld) &&
  (plan.program === null || isRight(plan.program));

/** The plan of one placing; `others` are the other placing's straps, whose bolts are preferred. */
export function placingPlan(
  input: HoldInput,
  which: 'frontUp' | 'backUp',
  others: readonly StrapPlace[],
): PlacingPlan {
  const { job, holding } = input;
  const placing = input.placings[which];
  const wish = holding.clamps[which];
  const program = checkedProgram(job, placing, holding.programs[which], input.programs[which]);
  const cuts = cutsOf(program);
  const clear = keepClearOf(job, placing, cuts);
  const screws = placedScrews(job, holding, placing);
  const located = input.standingOf(job);
  const standing = [...(located?.[which] ?? []), ...screws.map(({ body }) => body)];
  const features = job.features.filter(({ face }) => face === placing.faceUp);
  const force = forceOf(job, holding, features, program?.program ?? null);
  const reach = reachOf(job, placing, cuts);
  const candidates: Candidates =
    holding.clamps.kind === 'none'
      ? { free: [], refused: [], outOfReachCount: 0 }
      : candidatesOf(job, holding, placing, clear, standing, wish);
  const judge = (
    straps: readonly StrapPlace[],
    least: number,
    pushers: readonly Pusher[] = [],
  ): Verdict =>
    verdictOf(
      { ...heldBy(job, holding, placing, straps, screws), pushes: pushers.map(pushOf(job)) },
      { ...force, box: reach!.cuttingBox, topMm: job.blank.thickMm },
      holdNumbers.safety.byFriction,
      least,
    );
  const layout =
    reach === null
      ? null
      : bestLayout({
          free: candidates.free,
          wish,
          others,
          judge,
          inSteps: holding.tracks.length > 0,
        });
  const { pieces, added } = piecesHeld(
    { job, holding, placing, screws, program: program?.program ?? null },
    layout?.straps ?? [],
    candidates.free,
  );
  const straps = [...(layout?.straps ?? []), ...added];
  const pushers = pushersFor(job, placing, clear, [
    ...standing,
    ...straps.flatMap(({ bodies }) => bodies),
  ]);
  const crush = straps.flatMap((strap) => crushOf(job, strap));
  const gently = (strap: StrapPlace): StrapPlace => {
    const dents = crush.find((one) => one.strap === strap);
    const share = dents === undefined ? 1 : dents.gentleTorqueNm / strap.strap.torqueNm;
    return { ...strap, leastN: strap.leastN * share, mostN: strap.mostN * share };
  };
  return {
    placing,
    force,
    candidates,
    layout: layout === null ? null : { ...layout, straps },
    screws,
    verdict: reach === null ? null : judge(straps, -Infinity, pushers.placed),
    gentle:
      reach === null || crush.length === 0
        ? null
        : judge(straps.map(gently), -Infinity, pushers.placed),
    standing,
    areLocatorsKnown: located !== null,
    pushers,
    clashes: clear([...standing, ...straps.flatMap(({ bodies }) => bodies)], holdMargin),
    crush,
    pieces,
    webs: thinWebs(job, holding, placing, force),
    isFilled: holding.hasFiller && placing.order === 'second',
    travel: reach === null ? [] : travelFaults(job, reach),
    reach,
    program,
    remedies: [],
  };
}
