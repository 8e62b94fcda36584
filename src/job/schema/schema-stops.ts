import type { Schema } from './build.ts';
import { about, either, keyed, listOf, oneOf, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import { dowel } from './schema-loose.ts';
import type * as raw from './raw-job.ts';
import type { RawSpread } from './raw-shop.ts';

const corner = () => oneOf('near-left', 'near-right', 'far-left', 'far-right');
const slope = (what: string, example: RawSpread = '±0.3 per 200') =>
  optional(about(q.slopeSpread(), what, example));
const spread = (what: string, example: RawSpread) =>
  optional(about(q.lengthSpread(), what, example));

const touch = (what: string, example: raw.RawTouch): Schema<raw.RawTouch> =>
  about(
    either(
      either(q.distance(), listOf(q.distance()), 'write distances'),
      keyed<{ readonly arm: raw.RawPlace }>({ arm: pairOf(q.distance()) }),
      `write distances from the front-up corner such as ${JSON.stringify(example).replace(',', ', ')}, or {arm: [20, 160]}`,
    ),
    what,
    example,
  );

/** Keys of the stops. */
export const stops = keyed<raw.RawStops>({
  corner: optional(
    about(
      keyed<NonNullable<raw.RawStops['corner']>>({
        'front-up': about(corner(), 'while the front is up', 'near-left'),
        'back-up': about(corner(), 'while the back is up', 'near-right'),
      }),
      'which corner of the bed the stops make, in each placing; not with a dowel',
      { 'front-up': 'near-left', 'back-up': 'near-right' },
    ),
  ),
  fence: about(
    oneOf('lower-edge', 'upper-edge', 'left-edge', 'right-edge'),
    'the edge that goes against the stops first',
    'lower-edge',
  ),
  'fence-touch': touch(
    'two buttons, or an arm, from the front-up corner (with a dowel: from the left or near end)',
    [30, 250],
  ),
  'side-touch': optional(
    touch('one button, or an arm, from the front-up corner; not with a dowel', 90),
  ),
  dowel: optional(
    about(dowel, 'one dowel through the blank instead of the side stop', {
      at: [140, 150],
      diameter: 8,
      drilled: 'with-the-blank',
    }),
  ),
  'touch-height': optional(
    about(q.size(), 'a narrow band of touch at this height above the bed', 12),
  ),
  height: optional(about(q.size(), 'a plain stop of this height', 8)),
  made: about(
    oneOf('set-by-hand', 'on-bed-pins', 'milled-in-place'),
    'how the stops come to stand',
    'milled-in-place',
  ),
  cutter: optional(about(text(), 'the cutter that milled them', 'flat 6')),
  angle: slope('how far the fence is turned'),
  square: slope('how far a side stop is out of square to the fence', '±0.1 per 100'),
  spacing: spread('how far the second side stop is off along the fence', '±0.3'),
  'seat-gap': spread('chips and burrs at each contact', 'half-normal 0.03'),
  give: spread('how far a stop yields', '0..0.02'),
});
