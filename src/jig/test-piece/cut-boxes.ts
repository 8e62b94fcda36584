import { invariant } from '../../num/invariant.ts';
import { depthsTo, type Feeds } from '../program/feeds.ts';
import type { Move, Place } from '../program/program.ts';

/** An upright box from the machine's point of view, mm. */
export interface Box {
  readonly lowX: number;
  readonly lowY: number;
  readonly highX: number;
  readonly highY: number;
}

/** Lanes of a pocket overlap: common practice, no source. */
const LANE_PER_DIAMETER = 0.45;
/** Over the surface, where it goes on slowly. */
const OVER_MM = 1;

/**
 * Takes a box out between two heights: at each depth rounds from the middle outwards, then once more
 * round the walls with what was left on. All rounds run counter-clockwise, which climbs.
 */
export function cutBox(
  box: Box,
  topMm: number,
  bottomMm: number,
  leaveMm: number,
  fluteMm: number,
  feeds: Feeds,
): readonly Move[] {
  const r = feeds.radiusMm;
  const walls = shrunk(box, r);
  invariant(walls !== null, 'a box narrower than its cutter');
  const rough = roundsIn(shrunk(walls, leaveMm) ?? middleLine(walls), 2 * r * LANE_PER_DIAMETER);
  const first = startOf(rough[0]!);
  const cut = (p: Place, feedMmPerMin: number): Move => ({ kind: 'cut', to: p, feedMmPerMin });
  const down = (at: { x: number; y: number }, z: number): Move =>
    cut({ ...at, z }, feeds.downMmPerMin);
  const round = (one: Box, z: number): readonly Move[] =>
    cornersOf(one).map((p) => cut({ ...p, z }, feeds.alongMmPerMin));
  const last = depthsTo(topMm, bottomMm, fluteMm);
  return [
    { kind: 'over', ...first },
    cut({ ...first, z: topMm + OVER_MM }, feeds.alongMmPerMin),
    ...depthsTo(topMm, bottomMm, feeds.stepMm).flatMap((z) => [
      cut({ ...first, z: Math.min(topMm + OVER_MM, z + feeds.stepMm) }, feeds.alongMmPerMin),
      down(first, z),
      ...rough.flatMap((one) => round(one, z)),
    ]),
    ...last.flatMap((z) => [cut({ ...startOf(walls), z }, feeds.downMmPerMin), ...round(walls, z)]),
    { kind: 'up' },
  ];
}

/** A slot as wide as the cutter, there and back at each depth. */
export function cutLine(
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
  topMm: number,
  bottomMm: number,
  feeds: Feeds,
): readonly Move[] {
  const cut = (p: { readonly x: number; readonly y: number }, z: number, feed: number): Move => ({
    kind: 'cut',
    to: { x: p.x, y: p.y, z },
    feedMmPerMin: feed,
  });
  return [
    { kind: 'over', x: from.x, y: from.y },
    cut(from, topMm + OVER_MM, feeds.alongMmPerMin),
    ...depthsTo(topMm, bottomMm, feeds.stepMm).flatMap((z) => [
      cut(from, z, feeds.downMmPerMin),
      cut(to, z, feeds.alongMmPerMin),
      cut(from, z, feeds.alongMmPerMin),
    ]),
    { kind: 'up' },
  ];
}

function shrunk(box: Box, byMm: number): Box | null {
  const one = {
    lowX: box.lowX + byMm,
    lowY: box.lowY + byMm,
    highX: box.highX - byMm,
    highY: box.highY - byMm,
  };
  return one.lowX > one.highX || one.lowY > one.highY ? null : one;
}

/** A box without width in the middle of a narrow one. */
function middleLine(box: Box): Box {
  const [x, y] = [(box.lowX + box.highX) / 2, (box.lowY + box.highY) / 2];
  return box.highX - box.lowX < box.highY - box.lowY
    ? { ...box, lowX: x, highX: x }
    : { ...box, lowY: y, highY: y };
}

/** Rounds from the inside out, the last one the box itself. */
function roundsIn(box: Box, laneMm: number): readonly Box[] {
  const rounds: Box[] = [box];
  for (let one = shrunk(box, laneMm); one !== null; one = shrunk(one, laneMm)) rounds.unshift(one);
  return rounds;
}

const startOf = (box: Box): { readonly x: number; readonly y: number } => ({
  x: box.lowX,
  y: box.lowY,
});

/** Counter-clockwise, ending where it begins. */
const cornersOf = (box: Box): readonly { readonly x: number; readonly y: number }[] => [
  { x: box.lowX, y: box.lowY },
  { x: box.highX, y: box.lowY },
  { x: box.highX, y: box.highY },
  { x: box.lowX, y: box.highY },
  { x: box.lowX, y: box.lowY },
];
