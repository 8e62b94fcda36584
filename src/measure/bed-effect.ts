import { BATCH } from '../num/batch.ts';
import { bedSurface } from '../job/bed-surface.ts';
import type { Job } from '../job/job.ts';
import { bedWith } from '../job/readings/with-measured.ts';
import type { BedHeights } from '../job/shop.ts';
import { bedOff } from '../setup/heights.ts';
import { blankInLayout, layoutOnBed, placingsOf } from '../setup/place.ts';
import { misfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import type { Estimate } from './estimate.ts';

/** What a bed does to one need of a job, in the need's unit; `margin` is how far off it may be. */
export interface NeedEffect {
  readonly need: string;
  readonly effect: Estimate;
  readonly margin: number;
}

/** Least and greatest depth error that the bed makes across the whole blank in one placing, mm; positive is deeper. */
export interface AcrossPart {
  readonly faceUp: 'front' | 'back';
  readonly fromMm: number;
  readonly toMm: number;
}

/** A bed place of a job: where z is touched, or the middle of a feature, and how high the bed stands there. */
export interface PartPlace {
  readonly at: { readonly x: number; readonly y: number };
  /** Over the bed's own mean plane's middle, mm. */
  readonly height: Estimate;
}

/** A job on the bed that was read. */
export const onMeasuredBed = (job: Job, heights: BedHeights): Job => ({
  ...job,
  shop: { ...job.shop, bed: bedWith(job.shop.bed, heights) },
});

/** Of those needs that heights can change at all. `job` lies on its measured bed. */
export function effectOnNeeds(job: Job): readonly NeedEffect[] {
  const { leanX, leanY, unevenness, spoilboard, inserts } = job.shop.bed;
  const unread = { leanX, leanY, unevenness, spoilboard, inserts };
  const flat = misfitModel({ ...job, shop: { ...job.shop, bed: unread } });
  const misfit = misfitModel(job);
  const run = (model: typeof misfit, draws: Float64Array): Float64Array => {
    const out = new Float64Array(model.outputCount * BATCH);
    model.evaluate(draws, 1, out);
    return out;
  };
  const none = run(flat, new Float64Array(flat.deviations.length * BATCH));
  const means = new Float64Array(misfit.deviations.length * BATCH);
  const unsure: { readonly column: number; readonly sd: number; readonly dof: number }[] = [];
  for (const { distribution, deviations } of sourcesOf(job, misfit.deviations))
    for (const k of deviations) {
      const kind = misfit.deviations[k]!.kind;
      if (kind === 'bed-lean' && distribution.kind === 'exactly')
        means[k * BATCH] = distribution.value;
      if (kind !== 'bed-height' || distribution.kind !== 'scaled-t') continue;
      means[k * BATCH] = distribution.mean;
      unsure.push({ column: k * BATCH, sd: distribution.scale, dof: distribution.dof });
    }
  const here = run(misfit, means);
  const raised = unsure.map(({ column }) => {
    const draws = means.slice();
    draws[column]! += STEP_MM;
    return run(misfit, draws);
  });
  return misfit.judged.flatMap((judged): NeedEffect[] => {
    if (judged.shape === 'radial') return [];
    const at = judged.at * BATCH;
    const moved = raised.map((out) => (out[at]! - here[at]!) / STEP_MM);
    if (moved.every((one) => one === 0)) return [];
    const nominal = none[at]!;
    return [
      {
        need: judged.need.name,
        effect: {
          value: here[at]! - nominal,
          sd: Math.hypot(...moved.map((per, k) => per * unsure[k]!.sd)),
          dof: unsure[0]!.dof,
        },
        margin: Math.min(
          judged.low === null ? Infinity : nominal - judged.low,
          judged.high === null ? Infinity : judged.high - nominal,
        ),
      },
    ];
  });
}

const STEP_MM = 1e-4;
/** Places each way at which the bed under the blank is looked at. */
const ACROSS = 12;

/** Source: registration.md rule 8: deeper by the bed here less the bed where z was touched. */
export function acrossPart(job: Job): readonly AcrossPart[] {
  const { frontUp, backUp } = placingsOf(job);
  const { widthMm, heightMm } = job.blank;
  const share = Array.from({ length: ACROSS + 1 }, (_, k) => k / ACROSS);
  const places = share.flatMap((a) => share.map((b) => ({ x: a * widthMm, y: b * heightMm })));
  const off = bedOff(job) ?? (() => 0);
  const [leanX, leanY] = [job.shop.bed.leanX, job.shop.bed.leanY].map(({ distribution }) =>
    distribution.kind === 'exactly' ? distribution.value : 0,
  ) as [number, number];
  return [frontUp, backUp].map((placing) => {
    const zero = placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
    const middle = blankInLayout(job, placing.mirror, { x: widthMm / 2, y: heightMm / 2 });
    const touched = zero.z.at ?? middle;
    const deeper = places.map((place) => {
      const at = blankInLayout(job, placing.mirror, place);
      return leanX * (at.x - touched.x) + leanY * (at.y - touched.y) + off(at) - off(touched);
    });
    return { faceUp: placing.faceUp, fromMm: Math.min(...deeper), toMm: Math.max(...deeper) };
  });
}

/** Every bed place that the depths of a job hang on. `job` lies on its measured bed. */
export function partPlaces(job: Job, heights: BedHeights): readonly PartPlace[] {
  const misfit = misfitModel(job);
  const surface = bedSurface(heights);
  const level =
    heights.points.reduce((sum, { heightMm }) => sum + heightMm, 0) / heights.points.length;
  return misfit.deviations.flatMap((deviation): PartPlace[] => {
    if (deviation.kind !== 'bed-height') return [];
    const at = layoutOnBed(job, { x: deviation.xMm, y: deviation.yMm });
    const { x, y } = at;
    return [
      {
        at: { x, y },
        height: {
          value: surface.at(x, y) - level,
          sd: surface.sdAt(x, y),
          dof: heights.points.length - 3,
        },
      },
    ];
  });
}
