import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../num/radius.ts';
import type { Judged } from '../setup/judged.ts';
import { chanceOf } from './chance.ts';
import { toleranceOf } from './digits.ts';
import { straightVector } from './first-order.ts';
import { CLOUD, type Lined } from './predicted.ts';
import type { RadialPrediction } from './prediction.ts';
import { toldOf } from './told.ts';
import { worstRadius, worstStraightRadius } from './worst.ts';

export type Told = 'shares' | 'recurring' | 'moments';

/** All but the causes of need `k`, one that is judged by the length of a vector. */
export function radial(
  { model, line, totals, task, kept }: Lined,
  { need, x: at, high: withinMm }: Extract<Judged, { readonly shape: 'radial' }>,
  k: number,
): Omit<RadialPrediction, Told> {
  const { figures, questions } = task.asked;
  const f = questions[k]!.lowest;
  const told = toldOf(totals.figure(f));
  const vector = figures.slice(0, f).filter(({ kind }) => kind === 'length').length;
  const plane = totals.plane(vector);
  const perDegree = 1 / Math.max(1, plane.count - 1);
  const straight = straightVector(model, line, at, at + 1);
  const { interval95, sd } = told;
  const [x, y] = [kept[at]!, kept[at + 1]!];
  return {
    name: need.name,
    kind: need.kind,
    shape: 'radial',
    unit: 'mm',
    nominal: 0,
    limits: { low: null, high: withinMm },
    ...told,
    worst: worstRadius(model, line, at, at + 1),
    worstLinear: worstStraightRadius(model, line, at, at + 1),
    firstOrder: {
      ...radiusMoments(straight),
      chance: chanceWithinRadius(straight, withinMm),
      agrees:
        Math.abs(radiusQuantile(straight, 0.025) - interval95[0]) <= toleranceOf(sd, 1) &&
        Math.abs(radiusQuantile(straight, 0.975) - interval95[1]) <= toleranceOf(sd, 1),
    },
    ...chanceOf(totals.good[k]!, totals.trials()),
    x: { mean: plane.meanX, sd: Math.sqrt(plane.xx * perDegree) },
    y: { mean: plane.meanY, sd: Math.sqrt(plane.yy * perDegree) },
    covariance: plane.xy * perDegree,
    cloud: Array.from({ length: Math.min(CLOUD, x.length) }, (_, i) => [x[i]!, y[i]!] as const),
  };
}
