import { BATCH } from '../num/batch.ts';
import type { Job } from '../job/job.ts';
import { blankInLayout, placingsOf } from '../setup/place.ts';
import { misfitModel } from '../setup/misfit.ts';
import type { BedSurvey } from './bed-survey.ts';
import type { Estimate } from './estimate.ts';

/** What a bed's lean does to one need of a job, in the need's unit; `marginMm` is how far off it may be. */
export interface NeedEffect {
  readonly need: string;
  readonly effect: Estimate;
  readonly margin: number;
}

/** Least and greatest depth error that the lean makes across the whole blank in one placing, mm; positive is deeper. */
export interface AcrossPart {
  readonly faceUp: 'front' | 'back';
  readonly fromMm: number;
  readonly toMm: number;
}

/** Of those needs that heights can change at all. */
export function effectOnNeeds(job: Job, survey: BedSurvey): readonly NeedEffect[] {
  const misfit = misfitModel(job);
  const column = (axis: 'x' | 'y'): number =>
    misfit.deviations.findIndex((one) => one.kind === 'bed-lean' && one.axis === axis);
  const [x, y] = [column('x'), column('y')];
  if (x < 0 || y < 0) return [];
  const figuresAt = (leanX: number, leanY: number): Float64Array => {
    const draws = new Float64Array(misfit.deviations.length * BATCH);
    const out = new Float64Array(misfit.outputCount * BATCH);
    draws[x * BATCH] = leanX;
    draws[y * BATCH] = leanY;
    misfit.evaluate(draws, 1, out);
    return out;
  };
  const { leanX, leanY, plane } = survey;
  const step = 1e-4;
  const [none, here, right, away] = [
    figuresAt(0, 0),
    figuresAt(leanX.value, leanY.value),
    figuresAt(step, 0),
    figuresAt(0, step),
  ];
  const covariance =
    plane.unscaled[1]![2]! / Math.sqrt(plane.unscaled[1]![1]! * plane.unscaled[2]![2]!);
  return misfit.judged.flatMap((judged): NeedEffect[] => {
    if (judged.shape === 'radial') return [];
    const at = judged.at * BATCH;
    const [perX, perY] = [(right[at]! - none[at]!) / step, (away[at]! - none[at]!) / step];
    if (perX === 0 && perY === 0) return [];
    const [a, b] = [perX * leanX.sd, perY * leanY.sd];
    const nominal = none[at]!;
    return [
      {
        need: judged.need.name,
        effect: {
          value: here[at]! - nominal,
          sd: Math.sqrt(Math.max(0, a * a + b * b + 2 * covariance * a * b)),
          dof: leanX.dof,
        },
        margin: Math.min(
          judged.low === null ? Infinity : nominal - judged.low,
          judged.high === null ? Infinity : judged.high - nominal,
        ),
      },
    ];
  });
}

/** Source: registration.md rule 8: deeper by the bed here less the bed where z was touched. */
export function acrossPart(job: Job, survey: BedSurvey): readonly AcrossPart[] {
  const { frontUp, backUp } = placingsOf(job);
  const { widthMm, heightMm } = job.blank;
  const corners = [0, widthMm].flatMap((x) => [0, heightMm].map((y) => ({ x, y })));
  return [frontUp, backUp].map((placing) => {
    const zero = placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
    const touched = zero.z.at ?? { x: widthMm / 2, y: heightMm / 2 };
    const deeper = corners.map((corner) => {
      const at = blankInLayout(job, placing.mirror, corner);
      return survey.leanX.value * (at.x - touched.x) + survey.leanY.value * (at.y - touched.y);
    });
    return { faceUp: placing.faceUp, fromMm: Math.min(...deeper), toMm: Math.max(...deeper) };
  });
}
