import type { Job } from '../job/job.ts';
import type { Bounds } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { insideShares, isWithin } from '../plane/stretch-inside.ts';
import type { Body } from './body.ts';
import type { Clash, Margin } from './clash.ts';
import { obstacleOf } from './obstacle.ts';
import { overheadOf, type Overhead } from './overhead.ts';
import type { PlacedMove, TipPlace } from './placed-moves.ts';

/** The worst clash of every body with each thing that moves, over all lines of a program. */
export function programClashes(
  job: Job,
  placing: Clash['placing'],
  moves: readonly PlacedMove[],
  bodies: readonly Body[],
  margin: Margin,
): readonly Clash[] {
  const cutters = [...new Set(moves.map(({ cutter }) => cutter))];
  return bodies.flatMap((body) =>
    cutters.flatMap((cutter) =>
      overheadOf(job, cutter).flatMap((thing) => {
        const own = moves.filter((move) => move.cutter === cutter);
        return clashOf(placing, own, body, thing, margin);
      }),
    ),
  );
}

/** Lowest places over an outline: of the thing, at a place. */
interface Low {
  readonly heightMm: number;
  readonly at: Point<'layout'>;
}

function clashOf(
  placing: Clash['placing'],
  moves: readonly PlacedMove[],
  body: Body,
  thing: Overhead,
  margin: Margin,
): readonly Clash[] {
  const obstacle = obstacleOf(body, thing, margin);
  const needMm = body.highMm + margin.overMm;
  const near = worstOf(moves, obstacle.near, obstacle.bounds, needMm - thing.fromMm);
  if (near === null) return [];
  const struck = worstOf(moves, obstacle.strikes, obstacle.bounds, body.highMm - thing.fromMm);
  const { low, line, lineCount } = struck ?? near;
  const heightMm = low.heightMm + thing.fromMm;
  return [
    {
      placing,
      body: body.name,
      what: thing.what,
      kind: struck === null ? 'too-near' : 'strikes',
      at: low.at,
      heightMm,
      shortMm: needMm - heightMm,
      during: { by: 'line', line, lineCount },
    },
  ];
}

interface Worst {
  readonly low: Low;
  readonly line: number;
  readonly lineCount: number;
}

/** The lowest of all moves within outlines, below a height. */
function worstOf(
  moves: readonly PlacedMove[],
  outlines: readonly Outline<'layout'>[],
  bounds: Bounds,
  belowMm: number,
): Worst | null {
  let worst: Omit<Worst, 'lineCount'> | null = null;
  const lines = new Set<number>();
  for (const move of moves) {
    const low = lowestOf(move, outlines, bounds, belowMm);
    if (low === null) continue;
    lines.add(move.line);
    if (worst === null || low.heightMm < worst.low.heightMm) worst = { low, line: move.line };
  }
  return worst === null ? null : { ...worst, lineCount: lines.size };
}

/** The lowest place of a move's tip within outlines, if below a height. */
function lowestOf(
  { places }: PlacedMove,
  outlines: readonly Outline<'layout'>[],
  bounds: Bounds,
  belowMm: number,
): Low | null {
  let low: Low | null = null;
  const take = (place: TipPlace): void => {
    if (place.z < belowMm && (low === null || place.z < low.heightMm))
      low = { heightMm: place.z, at: { x: place.x, y: place.y } };
  };
  if (places.length === 1 && isWithin(places[0]!, outlines)) take(places[0]!);
  for (let k = 1; k < places.length; k++) {
    const [a, b] = [places[k - 1]!, places[k]!];
    if (a.z >= belowMm && b.z >= belowMm) continue;
    if (isBeside(a, b, bounds)) continue;
    for (const shares of insideShares({ x: a.x, y: a.y }, { x: b.x, y: b.y }, outlines))
      for (const share of shares) take(between(a, b, share));
  }
  return low;
}

const isBeside = (a: TipPlace, b: TipPlace, box: Bounds): boolean =>
  Math.max(a.x, b.x) < box.lowX ||
  Math.min(a.x, b.x) > box.highX ||
  Math.max(a.y, b.y) < box.lowY ||
  Math.min(a.y, b.y) > box.highY;

const between = (a: TipPlace, b: TipPlace, share: number): TipPlace => ({
  x: a.x + share * (b.x - a.x),
  y: a.y + share * (b.y - a.y),
  z: a.z + share * (b.z - a.z),
});
