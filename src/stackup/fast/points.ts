import type { Distribution } from '../../num/distribution.ts';
import { fillDraws, quantileOf } from '../../num/draw.ts';
import { unreachable } from '../../num/invariant.ts';
import { fillScrambled, SOBOL_DIMENSIONS } from '../../num/sobol.ts';
import { fillWords } from '../../num/stream.ts';
import { dimensionsOf } from '../dimensions.ts';
import type { Model } from '../model.ts';

/** How many independent scramblings tell how sure a number is. */
export const REPLICATES = 16;

/**
 * Randomised Sobol points of a model's inputs in standard form, so that a spread that changes only scales them:
 * a live view keeps them from one look to the next, and its numbers move smoothly.
 */
export interface Points {
  /** Points of each replicate, a power of 2. */
  readonly count: number;
  /** `standard[input][replicate * count + i]`: a standard normal, or its size, or a share. */
  readonly standard: readonly Float64Array[];
}

/**
 * @param count points of each replicate, a power of 2. Inputs that matter most get the first, best spread
 * dimensions; those beyond the table get random points.
 */
export function pointsOf(model: Model, seed: number, count: number): Points {
  const words = new Int32Array(count);
  const standard = model.inputs.map(() => new Float64Array(REPLICATES * count));
  dimensionsOf(model).forEach((k, dimension) => {
    const { id, distribution } = model.inputs[k]!;
    const form = STANDARD[formOf(distribution)];
    for (let replicate = 0; replicate < REPLICATES; replicate++) {
      if (dimension < SOBOL_DIMENSIONS)
        fillScrambled(dimension, seed, id, replicate, words, 0, count);
      else fillWords(seed, id, replicate, PADDING_LANE, words, count);
      fillDraws(form, words, standard[k]!, replicate * count, count);
    }
  });
  return { count, standard };
}

/** Lane of the addressed streams for inputs beyond the Sobol table. */
const PADDING_LANE = 5;

/** All points of one input, spread as the model has it now. */
export function placed(distribution: Distribution, standard: Float64Array): Float64Array {
  const draws = new Float64Array(standard.length);
  switch (distribution.kind) {
    case 'normal':
      fillScaled(standard, distribution.mean, distribution.sd, draws);
      break;
    case 'half-normal':
      fillScaled(standard, 0, distribution.sigma, draws);
      break;
    case 'rectangular':
      fillScaled(standard, distribution.low, distribution.high - distribution.low, draws);
      break;
    case 'exactly':
    case 'triangular':
    case 'arcsine':
    case 'either':
    case 'scaled-t': {
      const quantile = quantileOf(distribution);
      for (let i = 0; i < draws.length; i++) draws[i] = quantile(standard[i]!);
      break;
    }
    default:
      unreachable(distribution);
  }
  return draws;
}

function fillScaled(
  standard: Float64Array,
  from: number,
  scale: number,
  draws: Float64Array,
): void {
  for (let i = 0; i < draws.length; i++) draws[i] = from + scale * standard[i]!;
}

type Form = 'normal' | 'half-normal' | 'share';

const STANDARD: Readonly<Record<Form, Distribution>> = {
  normal: { kind: 'normal', mean: 0, sd: 1 },
  'half-normal': { kind: 'half-normal', sigma: 1 },
  share: { kind: 'rectangular', low: 0, high: 1 },
};

const formOf = ({ kind }: Distribution): Form =>
  kind === 'normal' || kind === 'half-normal' ? kind : 'share';
