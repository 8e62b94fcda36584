import { BATCH } from '../num/batch.ts';
import type { Feature, Job } from '../job/job.ts';
import type { Outline } from '../plane/outline.ts';
import { newColumns } from '../setup/columns.ts';
import { partsLanded } from '../setup/parts-landed.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import { modelOf } from '../stackup/model-of.ts';
import { runTrials } from '../stackup/trials.ts';

/** A cut of the second face, against what it is to meet on the first, in the first trials of a prediction. */
export interface LandedCut {
  readonly feature: Feature;
  /**
   * Of each trial, how far each place misses, mm, blank frame: at `feature.at + (x, y)` by
   * `(m[0] + m[2] x + m[3] y, m[1] + m[4] x + m[5] y)`.
   */
  readonly misses: readonly (readonly number[])[];
}

/**
 * Where every cut of the back lands against the front: against the front cut that a need names with it, or else
 * against a cut in the same place of the front. The draws are those of the prediction with that seed, trial by trial.
 */
export function landedBacks(job: Job, seed: number, trials: number): readonly LandedCut[] {
  const columns = newColumns();
  const parts = partsLanded(job, columns, false, true);
  const pairs = job.features
    .filter(({ face }) => face === 'back')
    .map((feature) => {
      const partner = partnerOf(job, feature);
      const off = partner === null ? null : parts.affine(partner.name);
      const there =
        partner === null
          ? parts.landingAt(`front under ${feature.name}`, 'front', feature.at)
          : null;
      return { feature, back: parts.affine(feature.name), front: off, there };
    });
  const work = parts.work();
  const evaluate = (draws: Float64Array, count: number, out: Float64Array): void => {
    for (let i = 0; i < count; i++) {
      for (const load of work) load(draws, i);
      pairs.forEach(({ feature, back, front, there }, k) => {
        const miss = Array.from(back.off);
        if (there !== null) {
          miss[0]! -= there.x();
          miss[1]! -= there.y();
        }
        if (front !== null) {
          const [dx, dy] = [feature.at.x - front.at.x, feature.at.y - front.at.y];
          const [x, y, xx, xy, yx, yy] = front.off as unknown as readonly number[];
          miss[0]! -= x! + xx! * dx + xy! * dy;
          miss[1]! -= y! + yx! * dx + yy! * dy;
          [xx, xy, yx, yy].forEach((lean, j) => (miss[2 + j]! -= lean!));
        }
        miss.forEach((value, j) => (out[(6 * k + j) * BATCH + i] = value));
      });
    }
  };
  const deviations = columns.asked();
  const outputCount = 6 * pairs.length;
  const misfit = { deviations, outputCount, evaluate, needs: [], judged: [], partCount: 1 };
  const results = runTrials(modelOf(misfit, sourcesOf(job, deviations)), seed, trials);
  return pairs.map(({ feature }, k) => ({
    feature,
    misses: Array.from({ length: trials }, (_, i) =>
      Array.from({ length: 6 }, (__, j) => results[6 * k + j]![i]!),
    ),
  }));
}

/** Where an outline of the blank comes to lie with its misses drawn so many times as large. */
export function displaced(
  outline: Outline<'blank'>,
  { feature: { at } }: LandedCut,
  [mx, my, xx, xy, yx, yy]: readonly number[],
  times: number,
): Outline<'blank'> {
  return outline.map((p) => {
    const [x, y] = [p.x - at.x, p.y - at.y];
    return {
      x: p.x + times * (mx! + xx! * x + xy! * y),
      y: p.y + times * (my! + yx! * x + yy! * y),
    };
  });
}

/** The front cut that some need names together with this one. */
function partnerOf(job: Job, feature: Feature): Feature | null {
  for (const need of job.needs) {
    if (!('features' in need) || !need.features.includes(feature.name)) continue;
    const other = need.features.find((name) => name !== feature.name);
    const found = job.features.find(({ name, face }) => name === other && face === 'front');
    if (found !== undefined) return found;
  }
  return null;
}
