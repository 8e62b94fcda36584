import type { Cutter, Face } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';

/**
 * A board of the blank's size that tells, once both faces are cut, how far the back came out off the
 * front. Places as on the blank, seen from the front.
 */
export interface TestPiece {
  readonly cutter: Cutter;
  readonly toothMm: number;
  readonly combs: readonly Comb[];
  readonly verniers: readonly Vernier[];
  readonly tongues: readonly Tongue[];
}

/**
 * Three slots in a row, cut from the front, the back and the front. With m the misalignment along the
 * row, s and b what the cutter takes too much off a front wall and a back wall: the lower or left tooth
 * is t1 = tooth + m - s - b, the other t2 = tooth - m - s - b. So m = (t1 - t2) / 2, and neither the
 * caliper's zero nor the cutter's size is in it.
 */
export interface Comb {
  /** 1 and up, as on the card. */
  readonly number: number;
  readonly axis: 'x' | 'y';
  readonly middle: Point<'blank'>;
  /** From the left or the lower end. */
  readonly slots: readonly [TestBox, TestBox, TestBox];
}

/** An upright box that is cut out, and the face it is cut from. */
export interface TestBox {
  readonly face: Face;
  readonly low: Point<'blank'>;
  readonly high: Point<'blank'>;
}

/**
 * Slots of both faces that meet end to end on a thin tongue: front ones `pitchMm` apart, back ones
 * `stepMm` closer, from the middle pair on. The pair in line, counted from the middle one (right or up
 * positive), times the step is the misalignment.
 */
export interface Vernier {
  readonly axis: 'x' | 'y';
  readonly middle: Point<'blank'>;
  /** Odd. */
  readonly pairCount: number;
  readonly pitchMm: number;
  readonly stepMm: number;
  /** Taken out in the second placing, down to the tongue that lies on the bed. */
  readonly recess: { readonly low: Point<'blank'>; readonly high: Point<'blank'> };
  readonly slots: readonly VernierSlot[];
}

/** A slot as wide as the cutter, between the middles of its ends. */
export interface VernierSlot {
  readonly face: Face;
  readonly from: Point<'blank'>;
  readonly to: Point<'blank'>;
}

/** An edge rebated from both faces, so that a caliper reads what is left between. */
export interface Tongue {
  readonly name: string;
  readonly low: Point<'blank'>;
  readonly high: Point<'blank'>;
}

/** Numbers of the test piece, mm. Common practice, no source, unless a line says otherwise. */
export const testNumbers = {
  /** From the edge of the board to a comb, and between combs. */
  insetMm: 12,
  gapMm: 8,
  /** Thickness of the tongue that a vernier is cut in: too thin for a slanting look to matter. */
  tongueMm: 3,
  vernierSlotMm: 10,
  /** One step of the vernier; half of it is guessed by eye: 0.05. */
  stepMm: 0.1,
  mostPairs: 11,
  leastPairs: 5,
  /** What a caliper measures between two rebates, and how wide and long they are. */
  webMm: 4,
  rebateMm: 8,
  rebateLongMm: 16,
  /** Left for the last light pass round a slot. */
  finishMm: 0.3,
  /** A slot is wider than the cutter by this at least, so that the last pass can climb all round. */
  roundMm: 1.5,
} as const;
