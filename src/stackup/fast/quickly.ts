import { invariant } from '../../num/invariant.ts';
import type { Judged } from '../../setup/judged.ts';
import type { MisfitModel } from '../../setup/misfit.ts';
import type { Source } from '../../sources/source.ts';
import { momentsKnown, type MomentsKnown } from '../certain.ts';
import { chanceDigits, digitsOf } from '../digits.ts';
import { askedOf } from '../figure.ts';
import { modelOf } from '../model-of.ts';
import { T_99, type Estimate } from './estimate.ts';
import { fastAnswer, type FastFigure } from './fast.ts';
import { commonPoints, type CommonPoints } from './points.ts';

/** A number, its standard error, how far it may be off (99 % half-width), and how many significant digits that leaves. */
export interface QuickNumber {
  readonly value: number;
  readonly se: number;
  readonly sure: number;
  /** Of a chance those of its smaller side, of all others those of the figure's standard deviation. */
  readonly digits: number;
}

/** What a need comes to, mm, or mm per 100 of a turn. */
export interface QuickFigure {
  readonly mean: QuickNumber;
  readonly sd: QuickNumber;
  /** Ends of the symmetric 95 % interval. */
  readonly low: QuickNumber;
  readonly high: QuickNumber;
  /** Whether the points themselves were counted, since averaging over inputs of constant slope did not pay or was not borne out. */
  readonly fellBack: boolean;
}

export interface QuickNeed extends QuickFigure {
  readonly name: string;
  readonly kind: Judged['need']['kind'];
  readonly unit: 'mm' | 'mm per 100';
  readonly limits: { readonly low: number | null; readonly high: number | null };
  /** Chance of failing. */
  readonly bad: QuickNumber;
  /** The largest of a lip that has both limits. */
  readonly largest: QuickFigure | null;
}

export interface QuickAnswer {
  readonly evaluations: number;
  readonly moments: MomentsKnown;
  readonly needs: readonly QuickNeed[];
  /** Fewest certain digits of all numbers that there are. */
  readonly digits: number;
}

export interface QuickOptions {
  readonly seed: number;
  /** Points to share with other answers (`commonPoints`), which then differ by what differs in the set-ups alone. */
  readonly points?: CommonPoints;
}

/** Points of each of the 16 replicates; fewer make a coarser answer in less time. */
export const QUICK_POINTS = 1024;

/**
 * Every need of a set-up from some sixteen thousand scrambled points, for live use and for comparing many set-ups: mean, standard
 * deviation, 95 % ends and chance of failing, each with its standard error and certain digits. Needs no more evaluations
 * than that, whatever the way of locating; where averaging is wrong, as for outline minima with a corner in them, the raw points
 * count and the numbers have fewer digits.
 */
export function quickly(
  misfit: MisfitModel,
  sources: readonly Source[],
  { seed, points = commonPoints(seed, QUICK_POINTS) }: QuickOptions,
): QuickAnswer {
  const model = modelOf(misfit, sources);
  const asked = askedOf(misfit.judged);
  const moments = momentsKnown(sources);
  const { evaluations, figures, chances } = fastAnswer(model, asked, points.of(model), points.seed);
  const needs = misfit.judged.map((judged, k): QuickNeed => {
    const { lowest, highest } = asked.questions[k]!;
    const { value, sure } = chances[k]!;
    const good = Math.min(1, Math.max(0, value));
    return {
      name: judged.need.name,
      kind: judged.need.kind,
      unit: judged.shape === 'plain' ? judged.unit : 'mm',
      limits: limitsOf(judged),
      ...figureOf(figures[lowest]!),
      bad: {
        value: 1 - good,
        se: sure / T_99,
        sure,
        digits: chanceDigits(good, sure, [good - sure, good + sure]),
      },
      largest: lowest === highest ? null : figureOf(figures[highest]!),
    };
  });
  return { evaluations, moments, needs, digits: fewestDigits(needs, moments) };
}

const limitsOf = (judged: Judged): QuickNeed['limits'] => ({
  low: judged.shape === 'plain' ? judged.low : null,
  high: judged.high,
});

function figureOf({ mean, sd, low, high, isSmoothed }: FastFigure): QuickFigure {
  invariant(
    Number.isFinite(mean.value),
    'a point did not seat: the contacts are too close for the spreads',
  );
  const number = ({ value, sure }: Estimate): QuickNumber => ({
    value,
    se: sure / T_99,
    sure,
    digits: digitsOf(sd.value, sure),
  });
  return {
    mean: number(mean),
    sd: number(sd),
    low: number(low),
    high: number(high),
    fellBack: !isSmoothed,
  };
}

/** Without a mean or a standard deviation the ends alone count, and of those the chance tells. */
function fewestDigits(needs: readonly QuickNeed[], moments: MomentsKnown): number {
  const numbers = needs.flatMap((need) => [
    need.bad,
    ...[need, ...(need.largest === null ? [] : [need.largest])].flatMap(
      ({ mean, sd, low, high }) => (moments === 'known' ? [mean, sd, low, high] : [low, high]),
    ),
  ]);
  return Math.min(4, ...numbers.map(({ digits }) => digits));
}
