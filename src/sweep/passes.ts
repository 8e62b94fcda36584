import type { Job } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { sweptByBox } from '../plane/clip.ts';
import type { Outline } from '../plane/outline.ts';
import type { Placing } from '../setup/placing.ts';
import { axisDistanceMm, axisWays, type AxisWay } from './axis.ts';
import type { Clearance } from './clearance.ts';
import { overheadOf, type Overhead } from './overhead.ts';

/** How one thing passes an outline while one feature is cut. */
export interface Pass {
  readonly what: Clearance['what'];
  readonly feature: string;
  /** Height of the thing's lower end above the bed, mm. */
  readonly heightMm: number;
  /** Plan distance between what it sweeps and the outline, mm; 0 when it touches or comes over it. */
  readonly besideMm: number;
}

/** Every pass of everything that moves with the cutter, in one placing, by one outline. */
export function passesBy(job: Job, placing: Placing, outline: Outline<'layout'>): readonly Pass[] {
  const swept = sweptOnce(outline);
  return axisWays(job, placing).flatMap((way) => {
    const axisMm = axisDistanceMm(way, outline);
    return overheadOf(job, way.feature.cutter).map((thing) => ({
      what: thing.what,
      feature: way.feature.name,
      heightMm: way.tipMm + thing.fromMm,
      besideMm: besideMm(way, axisMm, thing, swept),
    }));
  });
}

type Swept = (xMm: number, yMm: number) => readonly Outline<'layout'>[];

/** Sweeping is slow, and the same box goes round the same outline for every feature. */
function sweptOnce(outline: Outline<'layout'>): Swept {
  const known = new Map<string, readonly Outline<'layout'>[]>();
  return (xMm, yMm) => {
    const key = `${xMm} ${yMm}`;
    const found = known.get(key) ?? sweptByBox(outline, xMm, yMm);
    known.set(key, found);
    return found;
  };
}

/** The lowest of the passes that come over the outline, or null. */
export function lowestPass(passes: readonly Pass[]): Pass | null {
  return passes
    .filter((pass) => pass.besideMm === 0)
    .reduce<Pass | null>(
      (low, pass) => (low === null || pass.heightMm < low.heightMm ? pass : low),
      null,
    );
}

function besideMm(way: AxisWay, axisMm: number, thing: Overhead, swept: Swept): number {
  switch (thing.plan.kind) {
    case 'disc':
      return Math.max(0, axisMm - thing.plan.radiusMm);
    case 'box':
      // The box stands still about a swept outline just when it moves about the outline itself.
      return swept(thing.plan.xMm, thing.plan.yMm).reduce(
        (least, round) => Math.min(least, axisDistanceMm(way, round)),
        Infinity,
      );
    default:
      return unreachable(thing.plan);
  }
}
