import { DEFAULTS } from '../defaults.ts';
import type { Band, Edge, Fence, Locating, Made, Touch } from '../job.ts';
import { EXAMPLES } from '../schema/examples.ts';
import type { RawStops, RawTouch } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, placeOfKey, startPlace } from './context.ts';
import type { Drawer } from './cutters.ts';
import { millOf } from './mill.ts';
import { dowelHolesOf } from './dowels.ts';
import { mm, pointMm } from './lengths.ts';
import { gapAt, spreadAt } from './spread.ts';

/**
 * The stops, or the fence when a dowel takes the side stop's place; null, with its faults, when how they touch or
 * are made is not known.
 */
export function stopsOf(context: Context, raw: RawStops, drawer: Drawer): Locating | null {
  const fence = fenceOf(context, raw, drawer);
  if (raw.dowel !== undefined) return withDowel(context, raw, raw.dowel, fence);
  const { corner, 'side-touch': sideTouch } = raw;
  const missing = MISSING_WITHOUT_DOWEL.find((key) => raw[key] === undefined);
  if (missing !== undefined && !context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      `stops: ${missing} is missing`,
      `write ${EXAMPLES[`stops.${missing}`] ?? missing}, or a dowel instead of corner and side-touch`,
    );
  if (fence === null || corner === undefined || sideTouch === undefined) return null;
  return {
    locating: 'stops',
    stops: {
      ...fence,
      corner: { frontUp: corner['front-up'], backUp: corner['back-up'] },
      sideTouch: touchOf(sideTouch),
    },
  };
}

const MISSING_WITHOUT_DOWEL = ['corner', 'side-touch'] as const;

function withDowel(
  context: Context,
  raw: RawStops,
  rawDowel: NonNullable<RawStops['dowel']>,
  fence: Fence | null,
): Locating | null {
  for (const key of ['corner', 'side-touch', 'square', 'spacing'] as const)
    if (raw[key] !== undefined)
      fault(
        context,
        placeOfKey(context, raw, key),
        `${key} is for a side stop, and here a dowel takes its place`,
        'take it out, or the dowel',
      );
  const dowel = dowelHolesOf(context, rawDowel, [pointMm(rawDowel.at)]);
  if (fence === null || dowel === null) return null;
  return { locating: 'fence-and-dowel', fenceAndDowel: { ...fence, dowel } };
}

function fenceOf(context: Context, raw: RawStops, drawer: Drawer): Fence | null {
  const band = bandOf(context, raw);
  const made = madeOf(context, raw, drawer);
  const seatGap = gapAt(context, [raw, 'seat-gap'], raw['seat-gap'], DEFAULTS.seatGap);
  const give = gapAt(context, [raw, 'give'], raw.give, DEFAULTS.give);
  if (band === null || made === null) return null;
  return {
    fence: raw.fence.replace('-edge', '') as Edge,
    fenceTouch: touchOf(raw['fence-touch']),
    band,
    made,
    seatGap,
    give,
  };
}

function touchOf(raw: RawTouch): Touch {
  if (typeof raw !== 'object') return { kind: 'buttons', atMm: [mm(raw)] };
  if ('arm' in raw) return { kind: 'arm', fromMm: mm(raw.arm[0]), toMm: mm(raw.arm[1]) };
  return { kind: 'buttons', atMm: raw.map(mm) };
}

function bandOf(context: Context, raw: RawStops): Band | null {
  const { height, 'touch-height': touchHeight } = raw;
  if (height !== undefined && touchHeight !== undefined)
    fault(
      context,
      placeOfKey(context, raw, 'height'),
      'the stops have both a height and a touch-height',
      'write height for a plain stop, or touch-height for one that touches in a narrow band',
    );
  if (touchHeight !== undefined) return { kind: 'narrow', touchHeightMm: mm(touchHeight) };
  if (height !== undefined) return { kind: 'plain', heightMm: mm(height) };
  if (!context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      'stops: how high they touch is missing',
      'write height: 8 for a plain stop, or touch-height: 12 for a narrow band',
    );
  return null;
}

function madeOf(context: Context, raw: RawStops, drawer: Drawer): Made | null {
  if (raw.made === 'milled-in-place') return milled(context, raw, drawer);
  if (raw.cutter !== undefined)
    fault(
      context,
      [raw, 'cutter'],
      `cutter says what milled the stops, and these are ${raw.made}`,
      'take it out, or write made: milled-in-place',
    );
  const rows =
    raw.made === 'set-by-hand'
      ? [DEFAULTS.handAngle, DEFAULTS.handSquare, DEFAULTS.handSpacing]
      : [DEFAULTS.pinAngle, DEFAULTS.pinSquare, DEFAULTS.pinSpacing];
  const [angle, square, spacing] = rows as [
    (typeof rows)[number],
    (typeof rows)[number],
    (typeof rows)[number],
  ];
  return {
    kind: raw.made,
    angle: spreadAt(context, [raw, 'angle'], raw.angle, angle),
    square: spreadAt(context, [raw, 'square'], raw.square, square),
    spacing: spreadAt(context, [raw, 'spacing'], raw.spacing, spacing),
  };
}

function milled(context: Context, raw: RawStops, drawer: Drawer): Made | null {
  for (const key of ['angle', 'square', 'spacing'] as const)
    if (raw[key] !== undefined)
      fault(
        context,
        [raw, key],
        `${key} is for stops that are set, and these are milled in place`,
        'take it out',
      );
  const cutter = millOf(context, raw, [raw, 'made'], drawer, {
    taken: 'the stops are taken as milled',
    silent: 'milled-in-place does not say which cutter mills the stops',
  });
  return cutter === null ? null : { kind: 'milled-in-place', cutter };
}
