import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../num/radius.ts';
import type { Source } from '../sources/source.ts';
import type { Judged } from '../setup/judged.ts';
import { chanceOf } from './chance.ts';
import { clauseEight } from './clause-eight.ts';
import { straightVector } from './first-order.ts';
import type { Causes } from './need-shares.ts';
import { CLOUD, type Lined } from './predicted.ts';
import type { RadialPrediction } from './prediction.ts';
import { regionOf } from './region.ts';
import { toldOf } from './told.ts';
import { worstStraightRadius } from './worst-straight.ts';
import { cornerRadius, type Range } from './worst.ts';

export type Told = keyof Causes | 'moments' | 'measured';

/** All but the causes of need `k`, one that is judged by the length of a vector. */
export function radial(
  { model, line, totals, task, kept }: Lined,
  { need, x: at, high: withinMm }: Extract<Judged, { readonly shape: 'radial' }>,
  k: number,
  sources: readonly Source[],
  searched: ReadonlyMap<number, Range> | null,
): Omit<RadialPrediction, Told> {
  const { figures, questions } = task.asked;
  const f = questions[k]!.lowest;
  const told = toldOf(totals.figure(f));
  const vector = figures.slice(0, f).filter(({ kind }) => kind === 'length').length;
  const plane = totals.plane(vector);
  const perDegree = 1 / Math.max(1, plane.count - 1);
  const straight = straightVector(model, line, at, at + 1);
  const chance = chanceOf(totals.good[k]!, totals.trials());
  const [x, y] = [kept[at]!, kept[at + 1]!];
  return {
    name: need.name,
    kind: need.kind,
    shape: 'radial',
    unit: 'mm',
    nominal: 0,
    limits: { low: null, high: withinMm },
    ...told,
    worst: searched?.get(at) ?? cornerRadius(model, line, at, at + 1),
    worstLinear: worstStraightRadius(model, line, at, at + 1),
    firstOrder: clauseEight(
      { ...radiusMoments(straight), chance: chanceWithinRadius(straight, withinMm) },
      [radiusQuantile(straight, 0.025), radiusQuantile(straight, 0.975)],
      told,
      chance,
      line,
      [at, at + 1],
      sources,
    ),
    ...chance,
    x: { mean: plane.meanX, sd: Math.sqrt(plane.xx * perDegree) },
    y: { mean: plane.meanY, sd: Math.sqrt(plane.yy * perDegree) },
    covariance: plane.xy * perDegree,
    region95: regionOf(plane, x, y),
    cloud: Array.from({ length: Math.min(CLOUD, x.length) }, (_, i) => [x[i]!, y[i]!] as const),
  };
}
