import { BATCH } from '../num/batch.ts';
import { invariant, unreachable } from '../num/invariant.ts';
import type { Job, Need } from '../job/job.ts';
import { newColumns } from './columns.ts';
import type { Deviation } from './deviation.ts';
import { turnOverOf, type Landing, type TurnOver } from './turnover.ts';

/**
 * What every need of a job comes to, trial by trial: two columns a need, the x and y (mm, blank
 * frame) by which the second cut misses the first.
 */
export interface MisfitModel {
  readonly deviations: readonly Deviation[];
  readonly needs: readonly Need[];
  /** `draws` holds one column a deviation, `out` gets column `2 k` (x) and `2 k + 1` (y) for need `k`. */
  readonly evaluate: (draws: Float64Array, count: number, out: Float64Array) => void;
}

export function misfitModel(job: Job): MisfitModel {
  const columns = newColumns();
  const model = turnOverOf(job, columns);
  const landed = landingsOf(job, model);
  const pairs = job.needs.map((need) => pairOf(need, model, landed));
  const all = [...new Set(pairs.flat())];
  return {
    deviations: columns.asked(),
    needs: job.needs,
    evaluate: (draws, count, out) => {
      for (let i = 0; i < count; i++) {
        model.lay(draws, i);
        for (const landing of all) landing.locate(draws, i);
        for (let k = 0; k < pairs.length; k++) {
          const [from, to] = pairs[k]!;
          out[2 * k * BATCH + i] = to.x() - from.x();
          out[(2 * k + 1) * BATCH + i] = to.y() - from.y();
        }
      }
    },
  };
}

/** Every feature of the job, landed once, whichever needs ask for it. */
function landingsOf(job: Job, model: TurnOver): (name: string) => Landing {
  const known = new Map<string, Landing>();
  return (name) => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const feature = job.features.find((candidate) => candidate.name === name);
    invariant(feature !== undefined, `no feature ${name}`);
    const landing = model.landing(`feature ${name}`, feature.face, feature.at);
    known.set(name, landing);
    return landing;
  };
}

/**
 * Source: registration.md rules 6 and 18: misalignment is back minus front, its point one feature
 * on each face; concentric is second-named minus first-named.
 */
function pairOf(
  need: Need,
  model: TurnOver,
  landed: (name: string) => Landing,
): readonly [Landing, Landing] {
  switch (need.kind) {
    case 'concentric':
      return [landed(need.features[0]), landed(need.features[1])];
    case 'misalignment':
      return [
        model.landing(`front of ${need.name}`, 'front', need.at),
        model.landing(`back of ${need.name}`, 'back', need.at),
      ];
    default:
      return unreachable(need);
  }
}
