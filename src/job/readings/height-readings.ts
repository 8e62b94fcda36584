import { sdOf } from '../../num/spread-of.ts';
import type { Place } from '../fault.ts';
import { type Holder, valuePlace } from '../file/places.ts';
import { type Context, fault, startPlace } from '../resolve/context.ts';
import { mm, pointMm } from '../resolve/lengths.ts';
import { suggestion } from '../schema/closest.ts';
import type { RawHeights } from '../schema/raw-bed-care.ts';
import type { RawBed } from '../schema/raw-shop.ts';
import { LENGTH } from '../text/length.ts';
import { readSpread } from '../text/spread.ts';
import { readBedHeights, type BedReading } from './bed-heights.ts';

/** A touch with a cutter and paper, when no gauge is named (common practice, no source). */
const TOUCH_OFF = '±0.02';

/** Where faults are told, and how a file that is named at a place is found. */
export interface Desk {
  readonly context: Context;
  readonly find: (path: string, namedAt: Place) => Uint8Array | null;
}

/** The height readings of a bed; void ones, and those that are not there, are faults. */
export function readingsOf(
  desk: Desk,
  bed: RawBed,
  today: string,
): { readonly readings: readonly BedReading[]; readonly readIn: string } {
  const { context } = desk;
  const nothing = { readings: [], readIn: '' };
  const { heights } = bed;
  if (heights === undefined) {
    fault(
      context,
      startPlace(context, bed),
      'bed: heights is missing',
      'write heights: {file: bed-heights.csv, measured: 2026-11-20, gauge: dial}',
    );
    return nothing;
  }
  checkDates(context, bed, heights, today);
  const { file, points } = heights;
  if ((file === undefined) === (points === undefined)) {
    fault(
      context,
      startPlace(context, heights),
      `heights has ${file === undefined ? 'neither file nor points' : 'both file and points'}`,
      'write one of them',
    );
    return nothing;
  }
  if (points !== undefined)
    return {
      readings: points.map(([x, y, z], index) => ({
        at: pointMm([x, y]),
        heightMm: mm(z),
        line: placeAt(context, points, index).line,
      })),
      readIn: startPlace(context, points).file,
    };
  const place = placeAt(context, heights, 'file');
  const bytes = desk.find(file!, place);
  if (bytes === null) {
    fault(context, place, `the file ${file!} is not there`, 'write its place from this file');
    return nothing;
  }
  const read = readBedHeights({ name: file!, bytes });
  if (!read.ok) context.faults.push(...read.faults);
  return { readings: read.ok ? read.value : [], readIn: file! };
}

function checkDates(context: Context, bed: RawBed, heights: RawHeights, today: string): void {
  const { measured } = heights;
  if (measured === undefined) {
    if (bed.resurfaced !== undefined)
      fault(
        context,
        startPlace(context, heights),
        'heights do not say when they were measured, and the board was re-surfaced',
        'write measured: with the date',
      );
    return;
  }
  const place = placeAt(context, heights, 'measured');
  if (String(measured) > today)
    fault(
      context,
      place,
      `measured ${measured} is after today, ${today}`,
      'write the day they were read',
    );
  // The day itself counts as after: a board is read when it has been skimmed.
  if (bed.resurfaced !== undefined && String(measured) < String(bed.resurfaced))
    fault(
      context,
      place,
      `the heights were measured on ${measured}, before the board was re-surfaced on ${bed.resurfaced}`,
      'read them again, and write the new date',
    );
}

/** The sd of one height reading, mm, and what it was read with. */
export function heightGaugeOf(
  context: Context,
  heights: RawHeights | undefined,
): { readonly sdMm: number; readonly text: string } {
  const name = heights?.gauge;
  const { gauges } = context;
  const written = name === undefined ? undefined : gauges[name];
  if (name !== undefined && written === undefined)
    fault(
      context,
      placeAt(context, heights!, 'gauge'),
      `the gauge ${name} is not in the shop file`,
      suggestion(name, Object.keys(gauges), 'gauge there'),
    );
  const text = String(written ?? TOUCH_OFF);
  const read = readSpread(LENGTH, LENGTH.read(text).ok ? `±${text}` : text);
  if (!read.ok)
    fault(
      context,
      placeAt(context, heights!, 'gauge'),
      `the gauge ${name ?? ''} is good to ${text}, which is not for heights`,
      'name a dial, or what zero is touched with',
    );
  return {
    sdMm: read.ok ? sdOf(read.value.distribution) : 0,
    text: name === undefined ? `${text}, as a touch with paper, assumed` : `${name}, ${text}`,
  };
}

/** Where a value stands. */
export const placeAt = (context: Context, holder: object, key: string | number): Place =>
  valuePlace(context.places, holder as Holder, key);
