import type { Job } from '../job/job.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { axisDistanceMm, axisWays, comesOver, type AxisWay } from './axis.ts';
import type { Body } from './body.ts';
import type { Clash, Margin } from './clash.ts';
import { obstacleOf, type Obstacle } from './obstacle.ts';
import { overheadOf, type Overhead } from './overhead.ts';

/** The ways of a placing's features, each at its full depth, lowest first: deeper is never safer. */
export const waysOf = (job: Job, placing: Placing): readonly AxisWay[] =>
  axisWays(job, placing).toSorted((a, b) => a.tipMm - b.tipMm);

/** The worst clash of every body with each thing that moves, over all features of a placing. */
export function featureClashes(
  job: Job,
  placing: Clash['placing'],
  ways: readonly AxisWay[],
  bodies: readonly Body[],
  margin: Margin,
): readonly Clash[] {
  return bodies.flatMap((body) => {
    const worst = new Map<Clash['what'], Clash>();
    const obstacles = obstaclesOf(body, margin);
    for (const way of ways)
      for (const thing of overheadOf(job, way.feature.cutter)) {
        const clash = clashOf(placing, way, thing, body, margin, obstacles);
        const before = worst.get(thing.what);
        if (clash !== null && (before === undefined || isWorse(clash, before)))
          worst.set(thing.what, clash);
      }
    return [...worst.values()];
  });
}

/** Growing an outline is slow, and the same thing comes by for every feature. */
function obstaclesOf(body: Body, margin: Margin): (thing: Overhead) => Obstacle {
  const known = new Map<string, Obstacle>();
  return (thing) => {
    const key = JSON.stringify(thing.plan);
    const found = known.get(key) ?? obstacleOf(body, thing, margin);
    known.set(key, found);
    return found;
  };
}

/** To meet is worse than to come too near, and lower is worse. */
const isWorse = (a: Clash, b: Clash): boolean =>
  a.kind === b.kind ? a.shortMm > b.shortMm : a.kind === 'strikes';

function clashOf(
  placing: Clash['placing'],
  way: AxisWay,
  thing: Overhead,
  body: Body,
  margin: Margin,
  obstacles: (thing: Overhead) => Obstacle,
): Clash | null {
  const heightMm = way.tipMm + thing.fromMm;
  const shortMm = body.highMm + margin.overMm - heightMm;
  if (shortMm <= 0) return null;
  const { near, strikes } = obstacles(thing);
  const over = near.find((outline) => comesOver(way, outline));
  if (over === undefined) return null;
  const meets = heightMm < body.highMm && strikes.some((outline) => comesOver(way, outline));
  return {
    placing,
    body: body.name,
    what: thing.what,
    kind: meets ? 'strikes' : 'too-near',
    at: nearestPlace(way, body.outline),
    heightMm,
    shortMm,
    during: { by: 'feature', name: way.feature.name },
  };
}

/** The place of the body that the axis comes nearest to, among its corners and middle. */
function nearestPlace(way: AxisWay, outline: Outline<'layout'>): Point<'layout'> {
  const middle = {
    x: outline.reduce((sum, p) => sum + p.x, 0) / outline.length,
    y: outline.reduce((sum, p) => sum + p.y, 0) / outline.length,
  };
  const at = (p: Point<'layout'>): number => axisDistanceMm(way, [p]);
  return outline.reduce((best, p) => (at(p) < at(best) ? p : best), middle);
}
