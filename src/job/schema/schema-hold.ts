import { readForce, readPressure, readTorque } from '../text/load.ts';
import type { Schema } from './build.ts';
import {
  about,
  either,
  inUnit,
  keyed,
  listOf,
  named,
  number,
  oneOf,
  optional,
  pairOf,
  text,
  whole,
  written,
  yesOrNo,
} from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-hold.ts';
import type { Written } from './raw-shop.ts';

const force = (): Schema<Written> => inUnit(written('write a force such as 60 N', readForce), 'N');
const pressure = (): Schema<Written> =>
  inUnit(written('write a pressure such as 60 kPa', readPressure), 'kPa');
const places = () => listOf(pairOf(q.place()));

const bolts = keyed<raw.RawBolts>({
  pin: optional(about(places(), 'bolts that must be used, on the bed', [[50, 130]])),
  forbid: optional(about(places(), 'bolts that must not, on the bed', [[130, 50]])),
});

export const hold: Schema<raw.RawHold> = keyed<raw.RawHold>({
  pusher: optional(
    about(
      oneOf('towards-stops', 'none'),
      'what keeps the blank on the stops while it is clamped',
      'towards-stops',
    ),
  ),
  'clamp-drag': optional(
    about(q.lengthSpread(), 'shift away from the stops when clamped', '0..0.1'),
  ),
  clamps: optional(
    about(
      either(
        oneOf('auto', 'none'),
        keyed<raw.RawClamps>({ 'front-up': optional(bolts), 'back-up': optional(bolts) }),
        'write auto, none, or {front-up: {pin: [[50, 130]]}}',
      ),
      'where clamps go: chosen, none at all, or chosen with bolts pinned and forbidden; left out, auto',
      'auto',
      { 'front-up': { pin: [[50, 130]] } },
    ),
  ),
  screws: optional(
    about(places(), 'screws through the waste into the spoilboard, seen from the front', [
      [12, 12],
      [268, 168],
    ]),
  ),
  friction: optional(
    about(
      number('write a figure such as 0.2', (value) =>
        value > 0 && value <= 1 ? null : 'is not above 0 and up to 1',
      ),
      'of the blank on the bed; left out, 0.2, an estimate',
      0.25,
    ),
  ),
  'cutting-force': optional(
    about(force(), 'most that any cutter pulls sideways; left out, estimated', '60 N'),
  ),
  'lifting-force': optional(
    about(force(), 'most that any cutter lifts; left out, estimated', '20 N'),
  ),
  vacuum: optional(
    about(
      keyed<raw.RawVacuum>({
        gauge: about(pressure(), 'below the air outside', '60 kPa'),
        sealed: about(pairOf(q.size()), 'sealed area, along X and Y', [200, 120]),
      }),
      'a vacuum bed, centred under the blank',
    ),
  ),
  tape: optional(
    about(
      keyed<raw.RawTape>({
        strength: optional(
          about(pressure(), 'sideways, allowed; left out, 20 kPa, an estimate', '20 kPa'),
        ),
        stuck: about(pairOf(q.size()), 'stuck area, along X and Y', [200, 120]),
      }),
      'tape between blank and bed, centred; it is not counted on against lifting',
    ),
  ),
  filler: optional(
    about(yesOrNo(), 'whether a filler lies in the first pockets when turned over', 'yes'),
  ),
});

const program = keyed<raw.RawProgram>({
  file: about(text(), 'an RS-274 program, from this file', 'front.nc'),
  cutter: about(text(), 'the cutter it starts with', 'flat 6'),
  tools: optional(about(named(text()), 'cutters by the number of their T word', { '2': 'vee 90' })),
});

export const programs: Schema<raw.RawPrograms> = keyed<raw.RawPrograms>({
  'front-up': optional(about(program, 'for the face that is cut with the front up')),
  'back-up': optional(about(program, 'for the face that is cut with the back up')),
});

export const tabs: Schema<raw.RawTabs> = keyed<raw.RawTabs>({
  count: about(whole(), 'how many', 4),
  width: about(q.size(), 'along the cut', 6),
  thick: about(q.size(), 'how high they are left', 2),
});

export const track: Schema<raw.RawTrack> = keyed<raw.RawTrack>({
  along: about(oneOf('x', 'y'), 'the axis it runs along', 'x'),
  at: about(q.place(), 'the other coordinate, on the bed', 60),
  from: about(q.place(), 'where it begins', 20),
  to: about(q.place(), 'where it ends', 580),
});

export const holdDown: Schema<raw.RawHoldDown> = keyed<raw.RawHoldDown>({
  name: about(text(), 'what the plan calls it', 'strap'),
  kind: about(oneOf('strap-clamp', 'screw'), 'what it is', 'strap-clamp'),
  count: optional(about(whole(), 'how many there are', 4)),
  slot: optional(
    about(pairOf(q.size()), 'of a strap: how near and far its bolt stands from the nose', [20, 60]),
  ),
  length: optional(about(q.size(), 'of the strap; of the screw', 80)),
  pad: optional(about(pairOf(q.size()), 'of a strap: across it and along it', [20, 12])),
  height: optional(about(q.size(), 'of the bar of a strap', 12)),
  bolt: optional(about(oneOf('M4', 'M5', 'M6', 'M8'), 'of a strap', 'M6')),
  torque: optional(
    about(
      written('write a torque such as 4 Nm', readTorque) as Schema<string>,
      'of the bolt',
      '4 Nm',
    ),
  ),
  diameter: optional(about(q.size(), 'of a screw: its shank', 4)),
  head: optional(
    about(pairOf(q.size()), 'of a screw: diameter, and how far it stands above the blank', [8, 3]),
  ),
});
