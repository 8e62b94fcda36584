/** What a prediction says; `--json` prints it as it stands, all lengths mm. */
export interface Prediction {
  readonly json: 1;
  readonly job: string;
  readonly seed: number;
  readonly trials: number;
  /** Names of the sources nobody stated. */
  readonly assumed: readonly string[];
  /** Everything that can be off in this set-up, in plain words. */
  readonly sources: readonly SourceLine[];
  readonly needs: readonly NeedPrediction[];
  readonly batch: BatchPrediction;
}

/** All the blanks of one batch together: what is set up once is the same for all of them. */
export interface BatchPrediction {
  readonly partCount: number;
  /** How many batches were drawn. */
  readonly trials: number;
  /** Chance that one part meets every need. */
  readonly onePart: number;
  /** Chance that every part of the batch meets every need, and its standard error. */
  readonly allGood: number;
  readonly allGoodSe: number;
  /** How many parts of the batch are expected to miss some need. */
  readonly expectedBad: number;
}

export interface SourceLine {
  /** The name that shares and `assumed` use. */
  readonly name: string;
  /** For the middle of a sentence: `the blank's length along X`. */
  readonly words: string;
  /** By how much, as it was written or as the table of defaults says. */
  readonly text: string;
  readonly recurs: 'shop' | 'power-up' | 'setup' | 'part' | 'placing' | 'feature';
  /** Why it was assumed; null when somebody stated it. */
  readonly because: string | null;
}

export type NeedPrediction = RadialPrediction | PlainPrediction;

/** A need that is judged by how far apart two places are. */
export interface RadialPrediction extends AnyPrediction {
  readonly shape: 'radial';
  readonly kind: 'concentric' | 'misalignment';
  readonly unit: 'mm';
  readonly x: { readonly mean: number; readonly sd: number };
  readonly y: { readonly mean: number; readonly sd: number };
  readonly covariance: number;
  /** A few hundred of the trials (x, y), mm, blank frame: where the back lands around the front. */
  readonly cloud: readonly (readonly [number, number])[];
}

/** A need that is judged by one figure; of a lip that figure is the smallest, unless only the largest is judged. */
export interface PlainPrediction extends AnyPrediction {
  readonly shape: 'plain';
  readonly kind: 'lip' | 'web' | 'wall' | 'depth' | 'meets' | 'parallel' | 'size' | 'goes-on';
  readonly unit: 'mm' | 'mm per 100';
  /** A few hundred of the trials. */
  readonly sample: readonly number[];
  /** The largest of a lip that has both limits: that is what the upper one judges. */
  readonly largest: Figures | null;
}

/** What can be told of one figure, in the need's unit. */
export interface Figures {
  /** With nothing off. */
  readonly nominal: number;
  readonly mean: number;
  readonly sd: number;
  readonly interval95: readonly [number, number];
  readonly shortest95: readonly [number, number];
  /** Least and greatest with everything within its limits, by search; and by the straight model. */
  readonly worst: readonly [number, number];
  readonly worstLinear: readonly [number, number];
  /** Numerical tolerance reached for the mean, sd and interval ends (two standard errors). */
  readonly sureTo: number;
}

interface AnyPrediction extends Figures {
  readonly name: string;
  readonly limits: { readonly low: number | null; readonly high: number | null };
  /** The straight model, of a radial need that of x and y; its chance of being within the limits; whether its 95 % ends agree (JCGM 101 clause 8, one digit). */
  readonly firstOrder: {
    readonly mean: number;
    readonly sd: number;
    readonly chance: number;
    readonly agrees: boolean;
  };
  /**
   * Two readings have no mean and three no standard deviation (JCGM 101 6.4.9): then such figures of
   * the trials mean nothing, there are no shares, and only interval and chance can be told.
   */
  readonly moments: 'known' | 'no sd' | 'no mean';
  /** Chance, 0..1, of being within the limits, its standard error, and the interval that holds it 95 times in 100. */
  readonly chance: number;
  readonly chance95: readonly [number, number];
  readonly chanceSe: number;
  /** Total-effect variance shares, largest first. */
  readonly shares: readonly Share[];
  /** The same by how the sources recur. */
  readonly recurring: Readonly<Record<RecurrenceKey, number>>;
}

export interface Share {
  readonly source: string;
  readonly share: number;
  readonly se: number;
}

export type RecurrenceKey = 'shop' | 'powerUp' | 'setup' | 'part' | 'placing' | 'feature';
