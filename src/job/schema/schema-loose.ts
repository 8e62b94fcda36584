import type { Schema } from './build.ts';
import { about, keyed, listOf, oneOf, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';

const takeUp = () =>
  optional(
    about(
      oneOf('anywhere', 'left', 'right', 'near', 'far'),
      'where the blank lies in its play: anywhere, or pushed one way in every placing',
      'anywhere',
    ),
  );

const laid = () =>
  optional(
    about(
      q.slopeSpread(),
      'how squarely the blank is laid for the first placing, which nothing seats',
      '±1 per 200',
    ),
  );

const FIT = {
  diameter: about(q.size(), 'nominal diameter', 8),
  clearance: optional(about(q.lengthSpread(), 'of each hole on its dowel, in diameter', '0..0.1')),
  fit: optional(about(text(), 'an ISO 286 fit instead, for metal bushes only', 'H7/g6')),
  bush: optional(about(oneOf('metal'), 'the holes are metal bushes', 'metal')),
  pin: optional(about(q.sized(), 'measured diameter of the dowels; with hole', '7.98 ±0.01')),
  hole: optional(about(q.sized(), 'measured diameter of the holes; with pin', '8.05 ±0.02')),
  drilled: about(
    oneOf('with-the-blank', 'separately'),
    'through blank and bed in one clamping, or each by itself',
    'with-the-blank',
  ),
  'drill-error': optional(
    about(
      q.lengthSpread(),
      'of each hole in the blank, along X and along Y; drilled separately',
      '±0.1',
    ),
  ),
  'take-up': takeUp(),
  laid: laid(),
};

/** Keys of the dowels that locate the blank. */
export const dowels: Schema<raw.RawDowels> = keyed<raw.RawDowels>({
  at: about(listOf(pairOf(q.place())), 'two to four places, seen from the front', [
    [140, 12],
    [140, 168],
  ]),
  ...FIT,
});

/** Keys of the one dowel beside a fence. */
export const dowel: Schema<raw.RawDowel> = keyed<raw.RawDowel>({
  at: about(pairOf(q.place()), 'its place, seen from the front', [140, 150]),
  ...FIT,
});

/** Keys of a nest. */
export const nest: Schema<raw.RawNest> = keyed<raw.RawNest>({
  around: optional(
    about(
      text(),
      'the feature whose cut outline drops into the nest; left out: the blank, in both placings',
      'body outline',
    ),
  ),
  clearance: optional(about(q.lengthSpread(), 'gap on every side', '0.05..0.15')),
  cutter: optional(about(text(), 'the cutter that cuts the nest', 'flat 6')),
  wall: optional(about(q.size(), 'how high its walls are; left out: half the thickness', 8)),
  'take-up': takeUp(),
  'seat-gap': optional(
    about(q.lengthSpread(), 'chips and burrs where it can touch', 'half-normal 0.03'),
  ),
  laid: laid(),
});
