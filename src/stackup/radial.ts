import { invariant } from '../num/invariant.ts';
import { chanceWithinRadius, radiusMoments, radiusQuantile } from '../num/radius.ts';
import { covarianceOf, momentsOf, shortestInterval, symmetricInterval } from '../num/summary.ts';
import type { Judged } from '../setup/judged.ts';
import { chanceOf } from './chance.ts';
import { straightVector } from './first-order.ts';
import type { Predicted } from './predicted.ts';
import { CLOUD } from './predicted.ts';
import type { RadialPrediction } from './prediction.ts';
import { sureTo, toleranceOf } from './sure-to.ts';
import { worstRadius, worstStraightRadius } from './worst.ts';

export type Told = 'shares' | 'recurring' | 'moments';

/** All but the causes of a need that is judged by the length of a vector. */
export function radial(
  { model, line, results }: Predicted,
  { need, x: at, high: withinMm }: Extract<Judged, { readonly shape: 'radial' }>,
): Omit<RadialPrediction, Told> {
  const [x, y] = [results[at]!, results[at + 1]!];
  const radius = Float64Array.from(x, (value, i) => Math.sqrt(value * value + y[i]! * y[i]!));
  const { mean, sd } = momentsOf(radius);
  invariant(
    Number.isFinite(mean),
    'a trial did not seat: the contacts are too close for the spreads',
  );
  const sorted = radius.slice().sort();
  const interval95 = symmetricInterval(sorted, 0.95);
  const good = radius.reduce((count, value) => count + (value <= withinMm ? 1 : 0), 0);
  const straight = straightVector(model, line, at, at + 1);
  const [momentsX, momentsY] = [momentsOf(x), momentsOf(y)];
  return {
    name: need.name,
    kind: need.kind,
    shape: 'radial',
    unit: 'mm',
    nominal: 0,
    limits: { low: null, high: withinMm },
    mean,
    sd,
    interval95,
    shortest95: shortestInterval(sorted, 0.95),
    worst: worstRadius(model, line, at, at + 1),
    worstLinear: worstStraightRadius(model, line, at, at + 1),
    firstOrder: {
      ...radiusMoments(straight),
      chance: chanceWithinRadius(straight, withinMm),
      agrees:
        Math.abs(radiusQuantile(straight, 0.025) - interval95[0]) <= toleranceOf(sd, 1) &&
        Math.abs(radiusQuantile(straight, 0.975) - interval95[1]) <= toleranceOf(sd, 1),
    },
    ...chanceOf(good, radius.length),
    sureTo: sureTo(radius),
    x: momentsX,
    y: momentsY,
    covariance: covarianceOf(x, y),
    cloud: Array.from({ length: Math.min(CLOUD, x.length) }, (_, i) => [x[i]!, y[i]!] as const),
  };
}
