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

/** Points of models that share inputs: what is the same in two of them draws the same, so that they are compared on one luck. */
export interface CommonPoints {
  readonly seed: number;
  readonly of: (model: Model) => Points;
}

/**
 * Inputs of the first model that is asked for get dimensions by how much they matter in it, the best spread ones first; what later
 * ones bring with them gets the next. Inputs beyond the table get random points.
 *
 * @param count points of each replicate, a power of 2 and no more than 1024.
 */
export function commonPoints(seed: number, count: number): CommonPoints {
  const words = new Int32Array(count);
  const dimensions = new Map<number, number>();
  const known = new Map<string, Float64Array>();
  const standardOf = (id: number, form: Form): Float64Array => {
    const key = `${form} ${id}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const filled = new Float64Array(REPLICATES * count);
    const dimension = dimensions.get(id)!;
    for (let replicate = 0; replicate < REPLICATES; replicate++) {
      if (dimension < SOBOL_DIMENSIONS)
        fillScrambled(dimension, seed, id, replicate, words, 0, count);
      else fillWords(seed, id, replicate, PADDING_LANE, words, count);
      fillDraws(STANDARD[form], words, filled, replicate * count, count);
    }
    known.set(key, filled);
    return filled;
  };
  return {
    seed,
    of: (model) => {
      if (model.inputs.some(({ id }) => !dimensions.has(id)))
        for (const k of dimensionsOf(model)) {
          const { id } = model.inputs[k]!;
          if (!dimensions.has(id)) dimensions.set(id, dimensions.size);
        }
      return {
        count,
        standard: model.inputs.map(({ id, distribution }) => standardOf(id, formOf(distribution))),
      };
    },
  };
}

export const pointsOf = (model: Model, seed: number, count: number): Points =>
  commonPoints(seed, count).of(model);

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
