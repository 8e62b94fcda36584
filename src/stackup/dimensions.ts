import { sdOf } from '../num/spread-of.ts';
import { straightOf } from './first-order.ts';
import type { Model } from './model.ts';

/** The inputs, those first that move some result most by the straight model and its kinks. */
export function dimensionsOf(model: Model): readonly number[] {
  const { slopes, kinks } = straightOf(model);
  const reach = model.inputs.map(({ distribution }, k) =>
    slopes.map((slope, output) => {
      const sd = sdOf(distribution);
      return (Number.isFinite(sd) ? Math.abs(slope[k]!) * sd : 0) + kinks[output]![k]!;
    }),
  );
  const largest = slopes.map((_, output) => Math.max(...reach.map((one) => one[output]!), 1e-300));
  const rank = reach.map((one) =>
    Math.max(0, ...one.map((size, output) => size / largest[output]!)),
  );
  return model.inputs.map((_, k) => k).sort((a, b) => rank[b]! - rank[a]! || a - b);
}
