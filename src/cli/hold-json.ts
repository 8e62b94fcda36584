import type { HoldPlan } from '../hold/plan.ts';
import { isGood, type PlacingPlan } from '../hold/placing-plan.ts';
import type { Verdict } from '../hold/verdict.ts';
import type { Job } from '../job/job.ts';
import { layoutOnBed } from '../setup/place.ts';
import { changeWords } from '../sheet/hold-change-words.ts';
import { bothGood, HOLD_CAUTION, holdHeadline, holdLines } from '../sheet/hold-words.ts';

/**
 * A hold-down plan for programs. Units are in the keys: Mm, N, Nm, Rad (counter-clockwise from X); a factor is how many
 * times the estimated force is held, null when any force is. Places are in the layout frame unless the key says otherwise.
 */
export function holdJson(
  job: Job,
  plan: HoldPlan,
  notes: readonly string[],
  wrote: readonly string[],
): string {
  const order = job.first === 'front' ? [plan.frontUp, plan.backUp] : [plan.backUp, plan.frontUp];
  return JSON.stringify(
    {
      json: 1,
      job: job.name,
      readyToCut: bothGood(plan),
      caution: HOLD_CAUTION,
      units: { Mm: 'mm', N: 'N', Nm: 'Nm', Rad: 'rad', NPerMm2: 'N/mm2' },
      frame: 'layout: from the near-left corner of where the blank lies, height above the bed',
      notes,
      placings: order.map((one) => placingOf(job, one)),
      wrote,
    },
    null,
    2,
  );
}

function placingOf(job: Job, plan: PlacingPlan): object {
  const { placing, force, layout, verdict, gentle, program } = plan;
  return {
    faceUp: placing.faceUp,
    order: placing.order,
    headline: holdHeadline(plan),
    isCut: plan.reach !== null,
    readyToCut: plan.reach === null || isGood(plan),
    locatorsChecked: plan.areLocatorsKnown,
    forceEstimate: {
      sidewaysN: force.sidewaysN,
      liftN: force.liftN,
      of: force.feature,
      isStated: force.isStated,
      assumed: force.assumed,
    },
    hold: verdictOf(verdict),
    holdWithoutDents: verdictOf(gentle),
    search: layout?.search ?? null,
    straps: (layout?.straps ?? []).map((one) => ({
      name: one.strap.name,
      boltOnBedMm: one.bolt.onBed,
      over: one.side,
      padAtMm: one.padAt,
      boltToPadMm: one.boltToWorkMm,
      boltToHeelMm: one.boltToHeelMm,
      torqueNm: one.strap.torqueNm,
      pressesAtLeastN: one.leastN,
      pressesAtMostN: one.mostN,
      gentleTorqueNm: plan.crush.find(({ strap }) => strap === one)?.gentleTorqueNm ?? null,
    })),
    pushers: plan.pushers.placed.map(({ body, at, normal, newtons }) => ({
      name: body.name,
      atMm: at,
      towards: normal,
      pushesAboutN: newtons,
    })),
    noRoomForPusherAt: plan.pushers.noRoomAt,
    screws: plan.screws.map(({ name, inBlank, at, downN, sidewaysN, faults }) => ({
      name,
      inBlankMm: inBlank,
      onBedMm: layoutOnBed(job, at),
      ultimateDownN: downN,
      allowedSidewaysN: sidewaysN,
      faults,
    })),
    clashes: plan.clashes.map(({ body, what, kind, at, heightMm, shortMm, during }) => ({
      body,
      what,
      kind,
      atMm: at,
      heightMm,
      shortMm,
      during,
    })),
    pieces: plan.pieces.map(({ piece, freed, by, verdict: own, isHeld, remedies }) => ({
      name: piece.name,
      freedBy: piece.by.name,
      freed,
      heldBy: by,
      isHeld,
      hold: verdictOf(own),
      remedies: remedies.map((one) => changeWords(job, one)),
    })),
    thinWebs: plan.webs.map(({ cut, over, thickMm, factor }) => ({ cut, over, thickMm, factor })),
    travelFaults: plan.travel,
    program:
      program === null
        ? null
        : {
            file: program.file.file,
            findings: program.program.findings,
          },
    remedies: plan.remedies.map((one) => changeWords(job, one)),
    lines: holdLines(job, plan),
  };
}

const verdictOf = (verdict: Verdict | null): object | null =>
  verdict === null
    ? null
    : {
        factor: Number.isFinite(verdict.factor) ? verdict.factor : null,
        neededFactor: verdict.neededFactor,
        isHeld: verdict.isHeld,
        worst: {
          atMm: verdict.worst.at,
          pullsRad: verdict.worst.pullsRad,
          gives: verdict.worst.gives,
        },
      };
