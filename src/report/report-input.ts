import type { HoldPlan } from '../hold/plan.ts';
import type { StopPart } from '../jig/stop-part.ts';
import type { Job } from '../job/job.ts';
import type { Chance } from '../stackup/chance.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Placings } from '../sweep/clearances.ts';

/** All that a report tells. It holds no clock, so the same input gives the same bytes. */
export interface ReportInput {
  readonly job: Job;
  readonly placings: Placings;
  readonly prediction: Prediction;
  /** Printed stops; none where the blank is located by what is made in the bed. */
  readonly stops: readonly StopPart[];
  /** The plan of how it is held; null where none was made. */
  readonly hold: { readonly plan: HoldPlan | null; readonly notes: readonly string[] };
  /** Ways of locating beside each other, and what to do first; null where nobody asked. */
  readonly comparison: Comparison | null;
  readonly advice: readonly AdviceItem[] | null;
  /** The script of the 3-D view and the licences of what it brings along; null: a still picture alone. */
  readonly viewer: ViewerScript | null;
  /** Of the program that made the page. */
  readonly version: string;
}

export interface ViewerScript {
  readonly code: string;
  readonly notices: readonly Notice[];
}

/** A library that is part of the page. */
export interface Notice {
  readonly name: string;
  readonly licence: string;
}

/** The same part located in several ways, each predicted. */
export interface Comparison {
  readonly needs: readonly string[];
  readonly ways: readonly ComparedWay[];
}

export interface ComparedWay {
  /** Such as `dowels through the waste`. */
  readonly name: string;
  /** What it is and what it asks for, a sentence or none. */
  readonly words: string;
  readonly isThisJob: boolean;
  /** Chance of each of the needs, in their order; null: this way does not know that need. */
  readonly chances: readonly (Chance | null)[];
}

/** One thing to do, the most worthwhile first. */
export interface AdviceItem {
  /** What to do, a sentence. */
  readonly doThis: string;
  /** Why, a sentence. */
  readonly because: string;
  /** What it does to the chance of one need; null where that was not worked out. */
  readonly gain: { readonly need: string; readonly before: Chance; readonly after: Chance } | null;
}
