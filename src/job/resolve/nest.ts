import { DEFAULTS } from '../defaults.ts';
import type { Nest } from '../job.ts';
import type { RawNest } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import type { Context } from './context.ts';
import { fault, note, placeOfKey } from './context.ts';
import type { Drawer } from './cutters.ts';
import { mm } from './lengths.ts';
import { millOf } from './mill.ts';
import { gapAt, spreadAt } from './spread.ts';

/** The nest; null, with its faults, when nobody knows what cuts it. */
export function nestOf(
  context: Context,
  raw: RawNest,
  thickMm: number,
  drawer: Drawer,
  holder: object,
): Nest | null {
  const cutter = millOf(context, raw, [holder, 'nest'], drawer, {
    taken: 'the nest is taken as cut',
    silent: 'the nest does not say which cutter cuts it',
  });
  if (raw.around === undefined && raw.laid !== undefined)
    fault(
      context,
      [raw, 'laid'],
      'laid is for a first placing that nothing seats, and here the blank is in the nest',
      'take it out, or write around: the feature whose outline drops into the nest',
    );
  if (raw.wall === undefined && Number.isFinite(thickMm))
    note(
      context,
      placeOfKey(context, holder, 'nest'),
      `the walls of the nest are taken as ${said(thickMm / 2)} mm high, half the thickness`,
    );
  if (cutter === null) return null;
  return {
    around: raw.around ?? null,
    clearance: gapAt(
      context,
      [raw, 'clearance'],
      raw.clearance,
      DEFAULTS.nestClearance,
      'a clearance',
    ),
    cutter,
    wallMm: raw.wall === undefined ? thickMm / 2 : mm(raw.wall),
    takeUp: raw['take-up'] ?? 'anywhere',
    seatGap: gapAt(context, [raw, 'seat-gap'], raw['seat-gap'], DEFAULTS.seatGap),
    laid: spreadAt(context, [raw, 'laid'], raw.laid, DEFAULTS.laid),
  };
}
