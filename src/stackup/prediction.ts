import type { BadShare } from './bad-shares.ts';
import type { MomentsKnown } from './certain.ts';
import type { Chance } from './chance.ts';
import type { Ended } from './predicting.ts';
import type { GroupShare } from './shares.ts';
import type { Phase } from './steps.ts';

/** What a prediction says; `--json` prints it as it stands, all lengths mm. */
export interface Prediction {
  readonly json: 1;
  readonly job: string;
  readonly seed: number;
  /** How many were worked; asking for exactly so many gives the same bytes again, unless somebody stopped it early. */
  readonly trials: number;
  readonly ended: Ended;
  readonly digitsAsked: number;
  /**
   * What was not worked out, since somebody stopped it: `shares` are then empty, `worst` looks at no more than the
   * corners that the straight model points to, `measured` is null, and no batches were drawn.
   */
  readonly leftOut: readonly Phase[];
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
  /** Chance that every part of the batch meets every need, and its standard error; null when no batches were drawn. */
  readonly allGood: number | null;
  readonly allGoodSe: number | null;
  /** How many parts of the batch are expected to miss some need. */
  readonly expectedBad: number;
  /** Chances that all but the first part come out right, once the first is known; null for one part. */
  readonly rest: BatchRest | null;
}

export interface BatchRest {
  /** Given that the first was measured and found good; null when it never was. */
  readonly firstGood: ChanceOfRest | null;
  /**
   * When the first was measured, without error, and every need's result then corrected by what it showed:
   * what recurs is dialled out, and the first part's own scatter dialled in (see count-batches.ts).
   */
  readonly firstCorrected: ChanceOfRest | null;
}

export interface ChanceOfRest {
  readonly chance: number;
  readonly se: number;
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
  /** Where 95 % of the misses lie, seen in the plane. */
  readonly region95: Region;
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
  /** How far the trials leave mean, standard deviation and ends of the interval unsure (99 % half-widths). */
  readonly sure: Certainty;
  /** How many significant digits of the standard deviation each of them has for certain (JCGM 101:2008, 7.9), 0 to 4. */
  readonly digits: Certainty;
}

export interface Certainty {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
}

/** An ellipse and a rectangle about the mean of a vector, each holding 95 % of it (JCGM 102:2011). */
export interface Region {
  /** Half-axes `kp` standard deviations long; the first turned by so much from X, counter-clockwise. */
  readonly ellipse: {
    readonly kp: number;
    readonly alongMm: number;
    readonly acrossMm: number;
    readonly turnRad: number;
  };
  readonly rectangle: { readonly kq: number; readonly halfXMm: number; readonly halfYMm: number };
}

/** What measuring every part with a gauge would do (JCGM 106:2012). */
export interface Measured {
  /** Standard uncertainty of the gauge, in the need's unit. */
  readonly gaugeSd: number;
  readonly asIs: Risks;
  /** How far inside the limits a part must read to be accepted when guarded. */
  readonly guardMm: number;
  readonly guarded: Risks;
}

/** Shares of all parts. */
export interface Risks {
  readonly accepted: number;
  /** Bad, and accepted all the same: the consumer's risk. */
  readonly falseAccept: number;
  /** Good, and rejected all the same: the producer's risk. */
  readonly falseReject: number;
}

interface AnyPrediction extends Figures, Chance {
  readonly name: string;
  readonly limits: { readonly low: number | null; readonly high: number | null };
  /** The straight model, of a radial need that of x and y. */
  readonly firstOrder: FirstOrder;
  /**
   * Two readings have no mean and three no standard deviation (JCGM 101 6.4.9): then such figures of
   * the trials mean nothing, there are no shares, and only interval and chance can be told.
   */
  readonly moments: MomentsKnown;
  /** What measuring with the gauge that was named would do; null when none was. */
  readonly measured: Measured | null;
  /** Variance shares, the largest total effect first. */
  readonly shares: readonly Share[];
  /** The same by how the sources recur; null where shares were not worked out. */
  readonly recurring: Readonly<Record<RecurrenceKey, number>> | null;
  /** Sum of the sources' total effects and its standard error: 1 where each acts by itself, surely more where some act together. */
  readonly together: Together | null;
}

/** Above 1, surely, where some act together. */
export interface Together {
  readonly sum: number;
  readonly se: number;
  readonly isFelt: boolean;
}

/** What first order says, and whether it is good enough here. */
export interface FirstOrder {
  readonly mean: number;
  readonly sd: number;
  /** Chance of being within the limits. */
  readonly chance: number;
  /** By how much its 95 % ends are off those of the trials, and by how much they may be (JCGM 101 clause 8, one digit). */
  readonly off: readonly [number, number];
  readonly tolerance: number;
  /** Good enough: neither end is off by more, nor are its bad parts surely too few. */
  readonly agrees: boolean;
  /** How many times as many bad parts there are, surely, as it says; null when that is not sure to be 1.5 or more. */
  readonly timesBad: number | null;
  /** Sources at whose mean a contact switches: the result bends there as at a corner. */
  readonly switching: readonly string[];
}

/** A source's hand in one need. */
export interface Share extends GroupShare {
  readonly source: string;
  /** Share of the bad parts that would be good if this were drawn anew; null where bad parts are too rare to tell. */
  readonly bad: BadShare | null;
}

export type RecurrenceKey = 'shop' | 'powerUp' | 'setup' | 'part' | 'placing' | 'feature';
