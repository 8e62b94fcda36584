import type { Cutter } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { roundingMm } from '../numbers.ts';
import { depthsTo, feedsOf, type Feeds } from './feeds.ts';
import type { Move, Program } from './program.ts';
import { CAUTIONS } from './words.ts';

/** A round hole between two heights over the surface of the spoilboard, mm. */
export interface Bore {
  readonly at: Point<'layout'>;
  readonly diameterMm: number;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Such as `B12`; its number when it has none. */
  readonly name?: string;
}

export interface BoreWish {
  readonly name: string;
  readonly jobName: string;
  readonly header: readonly string[];
  readonly zeroAt: Point<'layout'>;
  /** Height of Z zero over the surface of the spoilboard. */
  readonly zeroHighMm: number;
  readonly bores: readonly Bore[];
  /** Top of what stands on the bed, mm above it. */
  readonly highestMm: number;
  /** What lies under the cutter at the witness place, the first hole. */
  readonly over: string;
}

/** Above the highest thing on the bed, and where pecks and witness stop above the surface, mm. */
const SAFE_OVER_MM = 5;
const PECK_OVER_MM = 1;
const WITNESS_MM = 2;
/** A peck is as deep as the cutter is wide, at most. Common practice, no source. */
const PECK_PER_DIAMETER = 1;

/** The widest flat cutter that fits into every hole and reaches down; or what would. */
export function boringCutter(cutters: readonly Cutter[], bores: readonly Bore[]): Step<Cutter> {
  const leastMm = bores.reduce((least, bore) => Math.min(least, bore.diameterMm), Infinity);
  const deepMm = bores.reduce((most, bore) => Math.max(most, bore.topMm - bore.bottomMm), 0);
  const fitting = cutters
    .filter(({ kind }) => kind === 'flat')
    .filter(({ diameterMm }) => diameterMm <= leastMm + roundingMm)
    .filter(({ stickOutMm }) => stickOutMm === null || stickOutMm >= deepMm)
    .toSorted((a, b) => b.diameterMm - a.diameterMm);
  const [widest] = fitting;
  return widest === undefined
    ? cannot(
        `no flat cutter of the shop file bores a hole of ${mm(leastMm)}, ${mm(deepMm)} deep`,
        `a flat cutter of diameter ${figure(leastMm)} or less that sticks out ${figure(deepMm)} or more`,
      )
    : made(widest);
}

/**
 * Bores holes: straight down in pecks where the cutter fills the hole, else round and round, climbing,
 * a full turn a step, with one turn at the bottom.
 */
export function boreHoles(wish: BoreWish, cutter: Cutter): Step<Program> {
  const feeds = feedsOf(cutter);
  if (feeds.kind === 'cannot') return feeds;
  const [first] = wish.bores;
  if (first === undefined)
    return cannot(`${wish.name}: there is no hole to bore`, 'one hole or more');
  const { zeroAt } = wish;
  return made({
    name: wish.name,
    jobName: wish.jobName,
    header: wish.header,
    cautions: CAUTIONS,
    cutter: feeds.value.cutter,
    zeroAt,
    zeroHighMm: wish.zeroHighMm,
    highestMm: wish.highestMm,
    safeMm: wish.highestMm + SAFE_OVER_MM,
    witness: {
      at: { x: first.at.x - zeroAt.x, y: first.at.y - zeroAt.y, z: wish.highestMm + WITNESS_MM },
      over: wish.over,
    },
    spindle: 'turns',
    moves: wish.bores.flatMap((bore, i) => [
      {
        kind: 'note',
        words: `hole ${bore.name ?? i + 1}: ${figure(bore.diameterMm)} wide, ${figure(bore.topMm - bore.bottomMm)} deep`,
      },
      ...boreMoves(bore, zeroAt, feeds.value),
    ]),
  });
}

/** The moves of one hole, from the safe height and back to it. */
export function boreMoves(bore: Bore, zeroAt: Point<'layout'>, feeds: Feeds): readonly Move[] {
  const x = bore.at.x - zeroAt.x;
  const y = bore.at.y - zeroAt.y;
  const roundMm = bore.diameterMm / 2 - feeds.radiusMm;
  const way = roundMm > roundingMm ? rounds(x, y, roundMm, bore, feeds) : pecks(x, y, bore, feeds);
  return [...way, { kind: 'up' }];
}

/** After each peck up out of the hole, so that the chips come out; no canned cycle. */
function pecks(x: number, y: number, bore: Bore, feeds: Feeds): readonly Move[] {
  const stepMm = Math.min(feeds.stepMm, 2 * feeds.radiusMm * PECK_PER_DIAMETER);
  const cut = (z: number, feedMmPerMin: number): Move => ({
    kind: 'cut',
    to: { x, y, z },
    feedMmPerMin,
  });
  return [
    { kind: 'over', x, y },
    ...depthsTo(bore.topMm, bore.bottomMm, stepMm).flatMap((z) => [
      cut(bore.topMm + PECK_OVER_MM, feeds.alongMmPerMin),
      cut(z, feeds.downMmPerMin),
    ]),
    cut(bore.topMm + PECK_OVER_MM, feeds.alongMmPerMin),
  ];
}

function rounds(x: number, y: number, roundMm: number, bore: Bore, feeds: Feeds): readonly Move[] {
  const { topMm, bottomMm } = bore;
  const centre = { x, y };
  const at = (z: number) => ({ x: x + roundMm, y, z });
  const turn = (z: number): Move => ({
    kind: 'arc',
    to: at(z),
    centre,
    // Counter-clockwise inside a hole climbs, with a spindle that turns clockwise seen from above.
    turn: 'counter-clockwise',
    feedMmPerMin: feeds.downMmPerMin,
  });
  return [
    { kind: 'over', x: x + roundMm, y },
    { kind: 'cut', to: at(topMm + PECK_OVER_MM), feedMmPerMin: feeds.alongMmPerMin },
    ...depthsTo(topMm + PECK_OVER_MM, bottomMm, Math.min(feeds.stepMm, feeds.radiusMm)).map(turn),
    turn(bottomMm),
    { kind: 'cut', to: { x, y, z: bottomMm }, feedMmPerMin: feeds.alongMmPerMin },
  ];
}
