import type { StopsJob } from '../../../src/job/job.ts';
import { keysOf, misalign, type Off } from '../misalign.ts';
import { allOff } from './all-off.ts';
import { secondMisalign } from './second-misalign.ts';
import type { SetUp } from './set-ups.ts';

export interface Agreement {
  readonly apartMm: number;
  /** How far the models may be apart: rounding, and what production's passes leave. */
  readonly allowedMm: number;
  /** How much the second model minds the deviations that production never asks for, mm. */
  readonly unaskedMm: number;
}

/** Both models on one set-up with everything off at once. */
export function agreementOn(setUp: SetUp): Agreement {
  const { job, at } = setUp;
  const off = allOff(setUp);
  const asked = askedOf(job, off);
  const second = secondMisalign(job, asked, at);
  return {
    apartMm: apart(misalign(job, asked, at), second),
    allowedMm: roundingMm(job, off),
    unaskedMm: apart(secondMisalign(job, off, at), second),
  };
}

/** Only the deviations that the production model of this job has a column for. */
export function askedOf(job: StopsJob, off: Off): Off {
  const known = new Set(keysOf(job));
  return Object.fromEntries(Object.entries(off).filter(([key]) => known.has(key)));
}

export const apart = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);

/** How far apart two models may be: rounding, and what production's passes leave. */
export const roundingMm = (job: StopsJob, off: Off): number =>
  ROUNDING_MM + leftByPassesMm(job, off);

/** Places of up to 400 mm are rounded to 6e-14 mm, and levers and nested roots multiply that. */
const ROUNDING_MM = 1e-9;

/** As many as `PASSES` in src/setup/seat.ts. */
const PASSES = 12;
const LARGEST_SHIFT_MM = 5;

/**
 * The production model finds the seat by a set number of passes, each of which leaves this share of
 * the last one's error: a slide changes how far a crook stands out by its slope, and turns the blank by
 * its curvature, which a side contact at the far end of the blank feels as another slide.
 */
function leftByPassesMm(job: StopsJob, off: Off): number {
  const { widthMm, heightMm } = job.blank;
  const alongX = job.stops.fence === 'lower' || job.stops.fence === 'upper';
  const [length, depth] = alongX ? [widthMm, heightMm] : [heightMm, widthMm];
  const crooks = (['lower', 'upper', 'left', 'right'] as const).map((edge) =>
    Math.abs(off[`crook/${edge}`] ?? 0),
  );
  const left = Math.max(...crooks) * (4 + (8 * depth) / length);
  return LARGEST_SHIFT_MM * left ** PASSES;
}
