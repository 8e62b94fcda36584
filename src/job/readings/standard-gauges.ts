/**
 * Limits of error of gauges by their standards: half-widths in mm for a measured length in mm.
 * Sources: DIN 862 (calipers, merged cells of a table read and interpreted), DIN 875 (squares, from
 * memory), EC directive 73/362 (tapes, numbers from memory), JIS B 7503:2011 (dials with 0.01
 * divisions, range up to 10 mm, read in a maker's reprint).
 */
export type GaugeKind =
  | 'digital caliper'
  | 'vernier caliper'
  | 'square class 00'
  | 'square class 0'
  | 'square class 1'
  | 'square class 2'
  | 'tape class I'
  | 'tape class II'
  | 'dial';

export const GAUGES: Readonly<Record<GaugeKind, (lengthMm: number) => number>> = {
  'digital caliper': (mm) => (mm <= 100 ? 20 : mm <= 600 ? 30 : 40) / 1000,
  'vernier caliper': (mm) =>
    (mm <= 300 ? 50 : Math.min(120, 60 + 10 * Math.ceil((mm - 400) / 100))) / 1000,
  'square class 00': (mm) => (2 + mm / 100) / 1000,
  'square class 0': (mm) => (5 + mm / 50) / 1000,
  'square class 1': (mm) => (10 + mm / 20) / 1000,
  'square class 2': (mm) => (20 + mm / 10) / 1000,
  'tape class I': (mm) => 0.1 + 0.1 * (mm / 1000),
  'tape class II': (mm) => 0.3 + 0.2 * (mm / 1000),
  // One turn of the hand is 1 mm; within it the error is at most 10 micrometres.
  dial: (mm) => (mm <= 0.1 ? 5 : mm <= 0.5 ? 9 : mm <= 1 ? 10 : 15) / 1000,
};

export const isGaugeKind = (name: string): name is GaugeKind => Object.hasOwn(GAUGES, name);
