import type { Job, StopsJob } from '../job/job.ts';
import type { HoldPlan } from '../hold/plan.ts';
import type { StopPart } from '../jig/stop-part.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Clearance } from '../sweep/clearance.ts';
import type { Placings } from '../sweep/clearances.ts';

/** All that a bench sheet tells. It holds no clock, so the same input gives the same bytes. */
export type SheetInput = StopsInput | BedInput;

/** A job that is located by stops, which are printed. */
export interface StopsInput extends Told {
  readonly made: 'stops';
  readonly job: StopsJob;
  readonly stops: readonly SheetStop[];
  /** A picture of each stop as a solid, in the same order: SVG elements made by `stopPicture`. */
  readonly stopPictures: readonly string[];
  /** Files to print that lie beside the sheet. */
  readonly fileNames: readonly string[];
}

/** A job that is located by what is made at the machine: dowels, a nest, a fence and a dowel. */
export interface BedInput extends Told {
  readonly made: 'in-the-bed';
  readonly job: Exclude<Job, StopsJob>;
  /** The fence that is printed (`jig: fence-stop`) in place of a bar of the shop's own; absent: none is. */
  readonly printedFence?: PrintedFence;
}

/** A fence as it is printed: drawn on the sheet as it stands. */
export interface PrintedFence {
  readonly stop: SheetStop;
  /** An SVG element made by `stopPicture`. */
  readonly picture: string;
  /** The file to print that lies beside the sheet. */
  readonly fileName: string;
}

export interface Told {
  readonly placings: Placings;
  readonly prediction: Prediction;
  readonly clearances: readonly Clearance[];
  /** How it is held down, and what that could not take into account; null when it was not planned. */
  readonly hold: { readonly plan: HoldPlan | null; readonly notes: readonly string[] };
  /** Of the program that made the sheet. */
  readonly version: string;
}

/** What the sheet needs to know of a stop. */
export type SheetStop = Pick<
  StopPart,
  'body' | 'heads' | 'screws' | 'pins' | 'lands' | 'towardsBlank' | 'band' | 'allowanceMm'
>;
