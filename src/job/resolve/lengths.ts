import { invariant } from '../../num/invariant.ts';
import type { RawPlace } from '../schema/raw-job.ts';
import type { Written } from '../schema/raw-shop.ts';
import { readAngle } from '../text/angle.ts';
import { readLength } from '../text/length.ts';
import { readSlope } from '../text/slope.ts';

/** mm of a text that the schema has let through. */
export function mm(written: Written): number {
  const read = readLength(String(written));
  invariant(read.ok, `the schema let ${written} through as a length`);
  return read.value.value;
}

export const mmOrNull = (written: Written | undefined): number | null =>
  written === undefined ? null : mm(written);

export const pointMm = (written: RawPlace): { readonly x: number; readonly y: number } => ({
  x: mm(written[0]),
  y: mm(written[1]),
});

/** A tangent of a text that the schema has let through. */
export function tangent(written: Written): number {
  const read = readSlope(String(written));
  invariant(read.ok, `the schema let ${written} through as a slope`);
  return read.value.value;
}

/** Radians of a text that the schema has let through; 0 when nothing was written. */
export function radians(written: Written | undefined): number {
  if (written === undefined) return 0;
  const read = readAngle(String(written));
  invariant(read.ok, `the schema let ${written} through as an angle`);
  return read.value.value;
}
