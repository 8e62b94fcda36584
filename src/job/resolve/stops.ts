import { DEFAULTS } from '../defaults.ts';
import type { Band, Edge, Made, Stops, Touch } from '../job.ts';
import type { RawStops, RawTouch } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, note, placeOfKey, startPlace } from './context.ts';
import type { Drawer } from './cutters.ts';
import { cutterNamed } from './cutters.ts';
import { mm } from './lengths.ts';
import { gapAt, spreadAt } from './spread.ts';

/** The stops; null, with its faults, when how they touch or are made is not known. */
export function stopsOf(context: Context, raw: RawStops, drawer: Drawer): Stops | null {
  const band = bandOf(context, raw);
  const made = madeOf(context, raw, drawer);
  const seatGap = gapAt(context, [raw, 'seat-gap'], raw['seat-gap'], DEFAULTS.seatGap);
  const give = gapAt(context, [raw, 'give'], raw.give, DEFAULTS.give);
  if (band === null || made === null) return null;
  return {
    corner: { frontUp: raw.corner['front-up'], backUp: raw.corner['back-up'] },
    fence: raw.fence.replace('-edge', '') as Edge,
    fenceTouch: touchOf(raw['fence-touch']),
    sideTouch: touchOf(raw['side-touch']),
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
  if (raw.cutter !== undefined) {
    const cutter = cutterNamed(context, drawer, [raw, 'cutter'], raw.cutter);
    if (cutter !== null && cutter.kind !== 'flat')
      fault(
        context,
        [raw, 'cutter'],
        `${cutter.name} is a ${cutter.kind} cutter, which cannot mill an upright face`,
        'name a flat cutter',
      );
    return cutter === null ? null : { kind: 'milled-in-place', cutter };
  }
  const flat = drawer.cutters.filter((cutter) => cutter.kind === 'flat');
  const [only] = flat;
  if (only !== undefined && flat.length === 1) {
    note(
      context,
      [raw, 'made'],
      `the stops are taken as milled with ${only.name}, the only flat cutter`,
    );
    return { kind: 'milled-in-place', cutter: only };
  }
  if (drawer.isKnown && !context.touched.has(raw))
    fault(
      context,
      [raw, 'made'],
      'milled-in-place does not say which cutter mills the stops',
      `write cutter: ${only?.name ?? 'flat 6'}`,
    );
  return null;
}
