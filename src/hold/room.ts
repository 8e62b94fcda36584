import type { Point } from '../plane/point.ts';
import { keepClearOf } from '../sweep/keep-clear.ts';
import { pieceOf } from '../sweep/piece.ts';
import { candidatesOf } from './candidates.ts';
import { changed, type Change } from './change.ts';
import { checkedProgram, cutsOf } from './checked-program.ts';
import type { HoldInput } from './hold-input.ts';
import { holdNumbers } from './numbers.ts';
import type { HoldPlan } from './plan.ts';
import { isBlankGood, placingPlan } from './placing-plan.ts';
import { screwRoom, screwToUse } from './screw-room.ts';
import { layoutOnBed } from '../setup/place.ts';

type Which = 'frontUp' | 'backUp';

/** So many remedies are offered. */
const MOST_OFFERED = 3;
/** With fewer, screws are looked for too: they cost the blank holes. */
const FEW_OFFERED = 2;
/** Pairs of changes are only tried when no single one does, and so many at most. */
const MOST_PAIRS = 10;

/**
 * What would make room for clamps, or hold the blank with those that lie: each remedy is planned anew,
 * makes this placing's blank held and clear, and leaves the other placing no worse.
 */
export function roomFor(input: HoldInput, plan: HoldPlan, which: Which): readonly Change[] {
  if (isBlankGood(plan[which]) || plan[which].reach === null) return [];
  const does = (change: Change): boolean => makesGood(input, plan, which, change);
  const ladders = laddersFor(input, plan, which);
  const found: Change[] = [];
  for (const ladder of ladders) {
    if (found.length >= MOST_OFFERED) return found;
    const step = ladder.find(does);
    if (step !== undefined) found.push(step);
  }
  if (found.length < FEW_OFFERED) found.push(...screwsFor(input, which).filter(does).slice(0, 1));
  if (found.length > 0) return found;
  const pairs = ladders
    .flatMap((one, k) =>
      ladders
        .slice(k + 1)
        .map((other): Change => ({ kind: 'both', changes: [one.at(-1)!, other.at(-1)!] })),
    )
    .slice(0, MOST_PAIRS);
  const pair = pairs.find(does);
  return pair === undefined ? [] : [pair];
}

function makesGood(input: HoldInput, plan: HoldPlan, which: Which, change: Change): boolean {
  const other = which === 'frontUp' ? 'backUp' : 'frontUp';
  const next = changed(input, change);
  // What locates must be there still.
  if (
    next.job !== input.job &&
    input.standingOf(input.job) !== null &&
    next.standingOf(next.job) === null
  )
    return false;
  const here = placingPlan(next, which, []);
  if (!isBlankGood(here) || losesHold(plan[which].pieces, here.pieces)) return false;
  const there = placingPlan(next, other, here.layout?.straps ?? []);
  return (
    (isBlankGood(there) || !isBlankGood(plan[other])) &&
    !losesHold(plan[other].pieces, there.pieces)
  );
}

const losesHold = (before: HoldPlan[Which]['pieces'], after: HoldPlan[Which]['pieces']): boolean =>
  after.some(
    ({ piece, isHeld }) =>
      !isHeld && before.some((one) => one.piece.name === piece.name && one.isHeld),
  );

/** Changes worth trying, the least first in each. */
function laddersFor(
  input: HoldInput,
  plan: HoldPlan,
  which: Which,
): readonly (readonly Change[])[] {
  const { holding, job } = input;
  const { candidates, force, layout } = plan[which];
  const short = (what: string): readonly number[] =>
    candidates.refused
      .flatMap(({ because }) =>
        because.kind === 'struck' && because.clash.what === what ? [because.clash.shortMm] : [],
      )
      .map((mm) => Math.ceil(mm * 2) / 2)
      .toSorted((a, b) => a - b);
  const steps = (all: readonly number[], most: number): readonly number[] =>
    spread([...new Set(all)].filter((mm) => mm <= most));
  const isHollow = candidates.refused.some(({ because }) => because.kind === 'hollow');
  const least = Math.min(...holding.straps.map(({ heightMm }) => heightMm)) - LEAST_STRAP_MM;
  const shoe = short('dust shoe');
  const hanging = [...shoe, ...short('collet nut'), ...short('spindle')].toSorted((a, b) => a - b);
  const all = [...hanging, ...short('cutter')].toSorted((a, b) => a - b);
  const moves = placesToLie(input, which).map((to): Change => ({ kind: 'moved-on-bed', to }));
  const ladders: (readonly Change[])[] = [
    moves,
    isHollow && !holding.hasFiller ? [{ kind: 'filler' }] : [],
    steps(shoe, SHOE_UP_MM).map((byMm) => ({ kind: 'shoe-higher', byMm })),
    shoe.length > 0 && Math.min(...shoe) > SHOE_UP_MM ? [{ kind: 'no-shoe' }] : [],
    steps(hanging, FURTHER_OUT_MM).map((byMm) => ({ kind: 'cutter-further-out', byMm })),
    steps(all, least).map((byMm) => ({ kind: 'straps-lower', byMm })),
    holding.straps.length > 0 ? [20, 40, 60].map((byMm) => ({ kind: 'slots-longer', byMm })) : [],
    layout !== null ? [1.25, 1.5, 2].map((share) => ({ kind: 'tighter', share })) : [],
    layout !== null && !force.isStated && force.sidewaysN > holdNumbers.leastSidewaysN + 1
      ? [0.75, 0.5, 0.33].map((share) => ({ kind: 'shallower-passes', share }))
      : [],
  ];
  return job.shop.bed.inserts === null && holding.tracks.length === 0
    ? []
    : ladders.filter((ladder) => ladder.length > 0);
}

/** A thinner bar bends. Common practice, no source. */
const LEAST_STRAP_MM = 6;
/** A cutter held by too little of its shank comes out; a shoe too high draws nothing. Common practice, no source. */
const FURTHER_OUT_MM = 8;
const SHOE_UP_MM = 30;

/** At most four steps of many, the first and the last among them. */
const spread = (all: readonly number[]): readonly number[] =>
  all.length <= 4
    ? all
    : [0, 1 / 3, 2 / 3, 1].map((share) => all[Math.round(share * (all.length - 1))]!);

/** Steps of a move on the bed in one pitch of its bolts, and how many of the places are planned in full. */
const STEPS = 4;
const MOST_MOVES = 2;

/** Places of the blank on the bed, near first, at which two straps or more can lie, stops not counted. */
function placesToLie(input: HoldInput, which: Which): readonly Point<'bed'>[] {
  const { job, holding } = input;
  const { inserts, spoilboard } = job.shop.bed;
  const pitch = inserts?.pitchMm ?? { x: 60, y: 60 };
  const placing = input.placings[which];
  const cuts = cutsOf(checkedProgram(job, placing, holding.programs[which], input.programs[which]));
  const clear = keepClearOf(job, placing, cuts);
  const wish = holding.clamps[which];
  const { box } = pieceOf(job, placing);
  const shifts = Array.from({ length: STEPS }, (_, k) => k - Math.floor(STEPS / 2) + 1);
  const places = shifts
    .flatMap((i) =>
      shifts.map((j) => ({
        x: Math.round(job.onBed.value.x + (i * pitch.x) / STEPS),
        y: Math.round(job.onBed.value.y + (j * pitch.y) / STEPS),
      })),
    )
    .filter(({ x, y }) => x !== job.onBed.value.x || y !== job.onBed.value.y)
    .toSorted((a, b) => awayFrom(a, job.onBed.value) - awayFrom(b, job.onBed.value));
  const found: Point<'bed'>[] = [];
  for (const place of places) {
    if (found.length >= MOST_MOVES) break;
    const there = { ...job, onBed: { ...job.onBed, value: place } };
    const low = layoutOnBed(there, { x: box.lowX, y: box.lowY });
    const high = layoutOnBed(there, { x: box.highX, y: box.highY });
    if (low.x < 0 || low.y < 0 || high.x > spoilboard.xMm || high.y > spoilboard.yMm) continue;
    const { free } = candidatesOf(there, holding, placing, clear, [], wish);
    if (free.length >= holdNumbers.fewestStraps) found.push(place);
  }
  return found;
}

const awayFrom = (a: Point<'bed'>, b: Point<'bed'>): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Two, or four, screws through the blank, where it is sound wood at the end. */
function screwsFor(input: HoldInput, which: Which): readonly Change[] {
  const { job, holding, placings } = input;
  const { screw, isNew } = screwToUse(job, holding);
  const { widthMm, heightMm } = job.blank;
  const whole = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  // A part in a nest has no waste that could take a screw.
  if (pieceOf(job, placings[which]).name === 'part') return [];
  return [2, 4].flatMap((count): readonly Change[] => {
    const both = [placings.frontUp, placings.backUp];
    const at = screwRoom(job, { ...holding, screw }, both, [whole], count);
    return at.length === 0 ? [] : [{ kind: 'screws', at, screw, isNew }];
  });
}
