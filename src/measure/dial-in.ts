import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { dialSign } from '../setup/dial-sign.ts';
import type { Estimate } from './estimate.ts';
import { factor95 } from './estimate.ts';
import type { LengthFormula } from './length-formula.ts';
import type { AxisField } from './test-piece.ts';
import { fieldAt, placingAt, readSdAt } from './test-piece.ts';

/** What to add to the second placing's zero along one machine axis, mm, positive right or away. */
export interface Offset {
  readonly axis: 'x' | 'y';
  readonly estimate: Estimate;
  /** Half of the interval in which the next part lies 95 times in 100 once it is dialled in, by these turns alone; infinite after one turn. */
  readonly nextHalf95: number;
  /** The sd by the readings alone, without the placings' own scatter. */
  readonly readingSd: number;
  /**
   * Where the test piece's own length was calipered and taken out: the sd of one such reading. The
   * offset is then that of a blank of nominal length. Null: its length is in the offset.
   */
  readonly calipered: number | null;
}

/** The offset that brings the back onto the front at a place. */
export function offsetAt(job: Job, field: AxisField, at: Point<'blank'>): Offset {
  const off = fieldAt(field, at);
  const sign = dialSign(job, field.axis);
  const placing = placingAt(field, at);
  return {
    axis: field.axis,
    estimate: { ...off, value: -sign * off.value + 0 },
    readingSd: readSdAt(field, at),
    calipered: null,
    nextHalf95:
      placing === null ? Infinity : factor95(placing.dof) * Math.hypot(off.sd, placing.sd),
  };
}

/** The offset of a blank of nominal length, from a test piece whose own length was calipered. */
export function atNominal(
  offset: Offset,
  { factor, nominalMm }: Pick<LengthFormula, 'factor' | 'nominalMm'>,
  measured: { readonly mm: number; readonly sd: number },
): Offset {
  const { estimate, readingSd, nextHalf95 } = offset;
  const beside = Math.abs(factor) * measured.sd;
  const sd = Math.hypot(estimate.sd, beside);
  return {
    ...offset,
    estimate: {
      value: estimate.value - factor * (measured.mm - nominalMm),
      sd,
      // Welch-Satterthwaite, the caliper's part being known (JCGM 100:2008, G.4.1).
      dof: estimate.sd === 0 ? Infinity : estimate.dof * (sd / estimate.sd) ** 4,
    },
    readingSd: Math.hypot(readingSd, beside),
    // Two lengths are read: the test piece's and the next blank's.
    nextHalf95: Math.hypot(nextHalf95, Math.SQRT2 * factor95(Infinity) * beside),
    calipered: measured.sd,
  };
}

/** Where the needs of a job judge the plan, blank frame: the middle of those places, else of the blank. */
export function judgedPlace(job: Job): Point<'blank'> {
  const places = job.needs.flatMap((need): Point<'blank'>[] => {
    if (need.kind === 'misalignment') return [need.at];
    if (need.kind !== 'concentric' && need.kind !== 'lip' && need.kind !== 'meets') return [];
    return job.features.filter(({ name }) => need.features.includes(name)).map(({ at }) => at);
  });
  const { widthMm, heightMm } = job.blank;
  if (places.length === 0) return { x: widthMm / 2, y: heightMm / 2 };
  return {
    x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
    y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
  };
}
