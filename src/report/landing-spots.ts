import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { featureNamed } from '../setup/place.ts';
import type { Prediction, RadialPrediction } from '../stackup/prediction.ts';
import type { LandedCut } from './landed.ts';

/** A place of the part at which it is shown how far the back misses, a mark a trial. */
export interface Spot {
  readonly at: Point<'blank'>;
  /** mm, blank frame. */
  readonly cloud: readonly (readonly [number, number])[];
  /** The need that limits it, and how far it may be off; null where nothing does. */
  readonly limit: { readonly need: string; readonly mm: number } | null;
}

/** A centre nearer than this to a place that is shown already is not shown again, mm. */
const SAME_MM = 1;

/** Every place that a need judges, and the middle of every other cut of the back. */
export function landingSpots(
  job: Job,
  prediction: Prediction,
  backs: readonly LandedCut[],
): readonly Spot[] {
  const judged = prediction.needs.flatMap((need) =>
    need.shape === 'radial' ? [judgedSpot(job, need)] : [],
  );
  const others = backs
    .filter(({ feature: { at } }) => judged.every((spot) => apartMm(spot.at, at) > SAME_MM))
    .map(({ feature, misses }): Spot => ({
      at: feature.at,
      cloud: misses.map(([x, y]) => [x!, y!] as const),
      limit: null,
    }));
  return [...judged, ...others];
}

function judgedSpot(job: Job, { name, cloud, limits }: RadialPrediction): Spot {
  const need = job.needs.find((one) => one.name === name)!;
  const at =
    need.kind === 'misalignment'
      ? need.at
      : featureNamed(job, need.kind === 'concentric' ? need.features[0] : '').at;
  return { at, cloud, limit: limits.high === null ? null : { need: name, mm: limits.high } };
}

/** How many times as large misses can be drawn so that no place runs into the next nor leaves the room it has. */
export function magnification(
  spots: readonly Spot[],
  reductionTo1: number,
  mostMm: number,
): number {
  const reach = Math.max(0, ...spots.map(reachMm));
  if (reach === 0) return 1;
  const apart = spots.flatMap(({ at }, k) =>
    spots.slice(k + 1).map((other) => apartMm(at, other.at) / reductionTo1),
  );
  const room = Math.min(
    mostMm,
    ...apart.filter((mm) => mm > LEAST_APART_MM).map((mm) => 0.48 * mm),
  );
  const most = (room * reductionTo1) / reach;
  return TIMES.findLast((times) => times <= most) ?? 1;
}

/** Places drawn nearer than this lie over each other anyhow, mm on paper. */
const LEAST_APART_MM = 6;

const TIMES = [
  1, 2, 3, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 250, 300, 400, 500,
];

/** The limit, and all but the wildest of the marks. */
function reachMm({ cloud, limit }: Spot): number {
  const lengths = cloud.map(([x, y]) => Math.hypot(x, y)).sort((a, b) => a - b);
  return Math.max(limit?.mm ?? 0, lengths[Math.floor(0.98 * (lengths.length - 1))] ?? 0);
}

const apartMm = (a: Point<'blank'>, b: Point<'blank'>): number => Math.hypot(a.x - b.x, a.y - b.y);
