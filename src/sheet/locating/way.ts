import type { Cutter } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import type { Placing, Side } from '../../setup/placing.ts';
import type { Field } from '../field.ts';
import type { Html } from '../html.ts';
import type { Box } from '../label-room.ts';
import type { Step } from '../step.ts';
import type { Drawn, Spot } from '../svg.ts';

/** All that one way of locating the blank has to say and to draw; the page around it is the same for every way. */
export interface Way {
  /** Of the table of heights: its title, its first column, and what it tells. */
  readonly heights: { readonly title: string; readonly column: string; readonly tells: string };
  /** Cautions of this way alone, whole sentences. */
  readonly cautions: readonly Html[];
  /** What to have and to make, before anything else is prepared. */
  readonly prepare: readonly Step[];
  /** Cutters that make what locates, besides those that cut the part. */
  readonly cutters: readonly Cutter[];
  readonly key: Key;
  /** While the blank is off the bed. */
  readonly turning: {
    /** Before the blank is deburred: what is made or set between the placings. */
    readonly before: readonly Step[];
    /** Burrs, and what must not be touched. */
    readonly burrs: Html;
    /** Just before it is turned. */
    readonly after: readonly Step[];
  };
  /** Once the part is off the bed: what the next blank needs. */
  readonly next: readonly Step[];
  readonly in: (placing: Placing) => Located;
}

/** What the drawings show of this way. */
export interface Key {
  readonly title: string;
  readonly things: readonly Html[];
  /** Lines and signs of this way. */
  readonly lines: readonly Html[];
  readonly pictures: readonly Html[];
}

/** One placing as this way locates it. */
export interface Located {
  /** Before zero is set and the blank is laid. */
  readonly making: readonly Step[];
  /** Laying, pressing home, clamping, feeling. */
  readonly laying: readonly Step[];
  /** With all zeros set, before the first cut. */
  readonly drilling: readonly Step[];
  /** What cutter, nut and shoe must pass besides every clamp: `every stop`. */
  readonly passing: string;
  /** Something that stays in reach, to set the next cutter by: `the top of a stop`. */
  readonly landmark: { readonly words: string; readonly short: string };
  /** What the blank lies on. */
  readonly floor: string;
  /** Whether no floor is left beside the blank that a Z zero could be touched on. */
  readonly hidesFloor: boolean;
  /** Where an edge of the blank is touched, for a corner and for a middle: `at half its thickness, beside the stops`. */
  readonly atEdges: string;
  readonly atMiddle: string;
  /** How it comes off the bed: `take the blank out`. */
  readonly lifting: string;
  readonly sideWords: (side: Side) => readonly string[];
  /** Layout places that the drawing must take in. */
  readonly reach: readonly Point<'layout'>[];
  /** Under the blank and over it. */
  readonly under: (field: Field) => Html;
  readonly over: (field: Field) => Html;
  /** What no label may cover. */
  readonly marks: (field: Field) => readonly Box[];
  /** Labels of what stands there, where they cover nothing taken. */
  readonly labels: (field: Field, taken: readonly Box[]) => Drawn;
  /** The same in the small plan of the turn. */
  readonly sketch: (plan: Plan) => Html;
}

/** The small plan of a laid blank: its box on paper, and where a layout place falls in it. */
export interface Plan {
  readonly box: Box;
  readonly spot: (at: Point<'layout'>) => Spot;
}
