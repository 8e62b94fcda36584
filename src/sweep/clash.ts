import type { Point } from '../plane/point.ts';
import type { Clearance } from './clearance.ts';

/**
 * Something that moves with the cutter comes too near to a body, in one placing: of all places where it
 * does, the lowest at which they meet, or, when they never meet, the lowest within the margin.
 */
export interface Clash {
  readonly placing: 'front-up' | 'back-up';
  readonly body: string;
  readonly what: Clearance['what'];
  /** `strikes`: they meet; `too-near`: they miss each other by less than the margin. */
  readonly kind: 'strikes' | 'too-near';
  readonly at: Point<'layout'>;
  /** Height of its lower end above the bed there, mm. */
  readonly heightMm: number;
  /** How much higher it would have to pass, the margin included, mm. */
  readonly shortMm: number;
  readonly during:
    | { readonly by: 'feature'; readonly name: string }
    /** `lineCount`: how many lines of the program clash like this. */
    | { readonly by: 'line'; readonly line: number; readonly lineCount: number };
}

/** Room that is kept between what moves and what stands, mm. */
export interface Margin {
  readonly overMm: number;
  readonly besideMm: number;
}
