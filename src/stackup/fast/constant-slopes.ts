import type { Term } from '../../num/sum-share.ts';
import { meanOf, sdOf } from '../../num/spread-of.ts';
import type { Distribution } from '../../num/distribution.ts';
import { unreachable } from '../../num/invariant.ts';
import { BATCH } from '../../num/batch.ts';
import type { Model } from '../model.ts';
import { drawBatch, evaluateAt } from '../trials.ts';

/** Inputs that move an output by the same slope wherever all the others are. */
export interface ConstantSlope {
  readonly input: number;
  readonly slope: number;
}

const SAMPLES = 12;
/** Of a standard deviation, to either side of the mean: inside the limits of every even spread. */
const SIDE = 1.5;
/** A slope may wander by so much of the output's standard deviation, over the input's own. */
const WANDER = 0.01;

/**
 * For each output the inputs of constant slope: at 12 trials the slopes from the trial to both sides of the mean
 * hardly differ. A kink that 24 looks do not meet is taken for none, so whoever uses this checks what comes out.
 */
export function constantSlopes(
  model: Model,
  seed: number,
  sds: readonly number[],
  isCandidate: (distribution: Distribution) => boolean = (one) => termOf(one, 1) !== null,
): readonly (readonly ConstantSlope[])[] {
  const draws = new Float64Array(model.inputs.length * BATCH);
  drawBatch(model, seed, 0, LOOKS_LANE, draws);
  const candidates = model.inputs.flatMap(({ distribution }, k) =>
    isCandidate(distribution) ? [{ k, mean: meanOf(distribution), sd: sdOf(distribution) }] : [],
  );
  const places: Float64Array[] = [];
  for (let i = 0; i < SAMPLES; i++) {
    const here = Float64Array.from(model.inputs, (_, k) => draws[k * BATCH + i]!);
    places.push(here);
    for (const { k, mean, sd } of candidates) {
      for (const side of [-SIDE, SIDE]) {
        const there = here.slice();
        there[k] = mean + side * sd;
        places.push(there);
      }
    }
  }
  const results = evaluateAt(model, places);
  const per = 1 + 2 * candidates.length;
  return sds.map((sd, output) =>
    candidates.flatMap(({ k, mean, sd: own }, c): ConstantSlope[] => {
      const slopes: number[] = [];
      for (let i = 0; i < SAMPLES; i++) {
        const here = results[i * per]![output]!;
        const at = draws[k * BATCH + i]!;
        [-SIDE, SIDE].forEach((side, s) => {
          const off = mean + side * own - at;
          if (Math.abs(off) < 0.3 * own) return;
          slopes.push((results[i * per + 1 + 2 * c + s]![output]! - here) / off);
        });
      }
      const slope = slopes.reduce((sum, one) => sum + one, 0) / slopes.length;
      const wander = Math.max(...slopes.map((one) => Math.abs(one - slope)));
      return wander * own <= WANDER * sd ? [{ input: k, slope }] : [];
    }),
  );
}

const LOOKS_LANE = 2;

/** What an input adds to a sum at a slope; null for spreads that are not even about their mean. */
export function termOf(distribution: Distribution, slope: number): Term | null {
  switch (distribution.kind) {
    case 'normal':
      return { kind: 'normal', size: Math.abs(slope) * distribution.sd };
    case 'rectangular':
    case 'triangular':
      return {
        kind: distribution.kind,
        size: (Math.abs(slope) * (distribution.high - distribution.low)) / 2,
      };
    case 'exactly':
    case 'arcsine':
    case 'half-normal':
    case 'either':
    case 'scaled-t':
      return null;
    default:
      return unreachable(distribution);
  }
}
