import { meanOf, sdOf } from '../num/spread-of.ts';
import type { Distribution } from '../num/distribution.ts';
import type { PlaneNormal } from '../num/radius.ts';
import type { Model } from './model.ts';
import { evaluateAt } from './trials.ts';

/** The model as a straight line through the means of its inputs. */
export interface Straight {
  readonly means: Float64Array;
  /** `atMeans[output]`, `slopes[output][input]`. */
  readonly atMeans: readonly number[];
  readonly slopes: readonly Float64Array[];
  /** `kinks[output][input]`: by how much the slope jumps at the means, times the input's standard deviation. */
  readonly kinks: readonly Float64Array[];
}

/** Of a standard deviation: so near to the means a bend is straight and a kink is not. */
const NEAR = 1e-4;

/**
 * Slopes by central differences over plus and minus one standard deviation, at the means.
 * Source: GUM (JCGM 100:2008) 5.1.3 and its note 2.
 */
export function straightOf(model: Model): Straight {
  const means = Float64Array.from(model.inputs, ({ distribution }) => finite(meanOf(distribution)));
  const steps = model.inputs.map(({ distribution }) => stepOf(distribution));
  const places = [means];
  steps.forEach((step, k) => {
    for (const share of [1, -1, NEAR, -NEAR]) {
      const place = means.slice();
      place[k] = place[k]! + share * step;
      places.push(place);
    }
  });
  const results = evaluateAt(model, places);
  const atMeans = results[0]!;
  const outputs = Array.from({ length: model.outputCount }, (_, output) => output);
  const at = (k: number, place: number, output: number): number =>
    results[1 + 4 * k + place]![output]!;
  return {
    means,
    atMeans,
    slopes: outputs.map((output) =>
      Float64Array.from(steps, (step, k) =>
        step === 0 ? 0 : (at(k, 0, output) - at(k, 1, output)) / (2 * step),
      ),
    ),
    kinks: outputs.map((output) =>
      Float64Array.from(steps, (_, k) =>
        Math.abs((at(k, 2, output) + at(k, 3, output) - 2 * atMeans[output]!) / NEAR),
      ),
    ),
  };
}

/** First-order mean and covariance of two outputs. */
export function straightVector(model: Model, line: Straight, x: number, y: number): PlaneNormal {
  let [varX, varY, cov] = [0, 0, 0];
  model.inputs.forEach(({ distribution }, k) => {
    const variance = sdOf(distribution) ** 2;
    const [a, b] = [line.slopes[x]![k]!, line.slopes[y]![k]!];
    if (a === 0 && b === 0) return;
    varX += a * a * variance;
    varY += b * b * variance;
    cov += a * b * variance;
  });
  return { meanX: line.atMeans[x]!, meanY: line.atMeans[y]!, varX, varY, cov };
}

function stepOf(distribution: Distribution): number {
  const sd = sdOf(distribution);
  return Number.isFinite(sd) ? sd : distribution.kind === 'scaled-t' ? distribution.scale : 0;
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : 0;
}
