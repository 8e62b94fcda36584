import type { Cutting, Holding } from '../job/holding.ts';
import type { Feature, Job } from '../job/job.ts';
import type { Program } from '../sweep/program/program.ts';
import { plannedForce } from './cutting-force.ts';
import { holdNumbers } from './numbers.ts';
import { strengthsOf } from './wood.ts';

/** What the cutter does to the work in one placing at its worst, N, and what was assumed for it. */
export interface PlannedForce {
  readonly sidewaysN: number;
  readonly liftN: number;
  readonly feature: string;
  readonly isStated: boolean;
  readonly assumed: readonly string[];
}

/**
 * The largest of a placing's cuts; a person's own bound counts instead of the estimate, and a
 * program's fastest feed instead of the shop file's.
 */
export function forceOf(
  job: Job,
  holding: Holding,
  features: readonly Feature[],
  program: Program | null,
): PlannedForce {
  const fastest = program === null ? null : fastestMmPerMin(program);
  const each = features.map((feature) => forceOfFeature(job, holding, feature, fastest));
  const worst = each.reduce<PlannedForce | null>(
    (most, one) => (most === null || one.sidewaysN > most.sidewaysN ? one : most),
    null,
  );
  const liftN = each.reduce<number>(
    (most, one) => Math.max(most, one.liftN),
    holdNumbers.leastLiftN,
  );
  const stated = holding.force;
  return {
    sidewaysN: stated.sidewaysN ?? worst?.sidewaysN ?? holdNumbers.leastSidewaysN,
    liftN: stated.liftN ?? liftN,
    feature: worst?.feature ?? '',
    isStated: stated.sidewaysN !== null,
    assumed: [...new Set(each.flatMap(({ assumed }) => assumed))],
  };
}

/** The fastest feed of a program's cuts that go sideways; null when it has none. */
function fastestMmPerMin({ moves }: Program): number | null {
  return moves.reduce<number | null>((most, { from, to, feedMmPerMin }) => {
    const goesAside = from === null || Math.hypot(to.x - from.x, to.y - from.y) > 0;
    return feedMmPerMin === null || !goesAside ? most : Math.max(most ?? 0, feedMmPerMin);
  }, null);
}

function forceOfFeature(
  job: Job,
  holding: Holding,
  feature: Feature,
  programFeed: number | null,
): PlannedForce {
  const { cutter } = feature;
  const cutting: Cutting | undefined = holding.cutting.get(cutter.name);
  const assumed: string[] = [];
  const or = <T>(value: T | null | undefined, instead: T, what: string): T => {
    if (value !== null && value !== undefined) return value;
    assumed.push(`${cutter.name}: ${what}`);
    return instead;
  };
  const fluteCount = or(cutting?.flutes, holdNumbers.fluteCount, '2 flutes');
  const speedPerMin = or(cutter.speedPerMin, 18_000, '18000 turns a minute');
  const feedMmPerMin = or(
    programFeed ?? cutter.feedMmPerMin,
    holdNumbers.chipMm * fluteCount * speedPerMin,
    '0.1 mm for each flute and turn',
  );
  const stepMm = Math.min(
    feature.depthMm,
    or(cutting?.stepMm, cutter.diameterMm, 'steps as deep as it is wide'),
  );
  const helix = or(cutting?.helix, 'up', 'an upcut spiral');
  const planned = plannedForce({
    diameterMm: cutter.diameterMm,
    fluteCount,
    feedMmPerMin,
    speedPerMin,
    stepMm,
    // Nobody knows the paths: any cut can be a full slot.
    sideMm: cutter.diameterMm,
    cutting: strengthsOf(job.blank.material).cutting,
    helixTangent: helix === 'up' || helix === 'compression' ? holdNumbers.helixTangent : 0,
  });
  return { ...planned, feature: feature.name, isStated: false, assumed };
}
