import type { Locating } from '../job.ts';
import type { RawJob } from '../schema/raw-job.ts';
import { EXAMPLES } from '../schema/examples.ts';
import type { Context } from './context.ts';
import { fault, placeOfKey, startPlace } from './context.ts';
import type { Drawer } from './cutters.ts';
import { dowelHolesOf } from './dowels.ts';
import { pointMm } from './lengths.ts';
import { nestOf } from './nest.ts';
import { stopsOf } from './stops.ts';

const WAYS = ['stops', 'dowels', 'nest'] as const;

/** How the blank is located; null, with its faults, when that is said in no way or in two. */
export function locatingOf(
  context: Context,
  raw: Partial<RawJob>,
  thickMm: number,
  drawer: Drawer,
): Locating | null {
  const { stops, dowels, nest } = raw;
  const given = WAYS.filter((way) => raw[way] !== undefined);
  const [first, second] = given;
  if (first === undefined) {
    if (!context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        'how the blank is located is missing',
        `write ${EXAMPLES['stops']}, or dowels, or a nest`,
      );
    return null;
  }
  if (second !== undefined) {
    fault(
      context,
      placeOfKey(context, raw, second),
      `the blank is located by ${given.join(' and ')}`,
      'write one of them; a fence and one dowel are stops with a dowel',
    );
    return null;
  }
  if (stops !== undefined) return stopsOf(context, stops, drawer);
  if (dowels !== undefined) {
    const holes = dowelHolesOf(context, dowels, dowels.at.map(pointMm));
    return holes === null ? null : { locating: 'dowels', dowels: holes };
  }
  const resolved = nest === undefined ? null : nestOf(context, nest, thickMm, drawer, raw);
  return resolved === null ? null : { locating: 'nest', nest: resolved };
}
