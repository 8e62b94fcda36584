import type { Schema } from './build.ts';
import {
  about,
  either,
  keyed,
  listOf,
  oneOf,
  optional,
  pairOf,
  text,
  threeOf,
  whole,
  yesOrNo,
} from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';
import type { RawSpread } from './raw-shop.ts';
import { SHOP_PARTS } from './schema-shop.ts';

const corner = () => oneOf('near-left', 'near-right', 'far-left', 'far-right');
const face = () => oneOf('front', 'back');
const slope = (what: string, example: RawSpread = '±0.3 per 200') =>
  optional(about(q.slopeSpread(), what, example));
const spread = (what: string, example: RawSpread) =>
  optional(about(q.lengthSpread(), what, example));

const cup = keyed<raw.RawCup>({
  hump: about(q.lengthSpread(), 'how far the middle stands over the edges', '0..0.1'),
  along: optional(about(oneOf('x', 'y'), 'the direction it bows along', 'y')),
  up: optional(about(face(), 'the face the hump is on', 'front')),
  'pressed-flat': optional(about(yesOrNo(), 'whether clamping flattens it', 'no')),
});

const blank = keyed<raw.RawBlank>({
  size: about(threeOf(q.sized()), 'along X, along Y, thick', ['280 ±0.4', '180 ±0.4', '24 ±0.15']),
  material: optional(about(text(), 'what it is made of', 'ash')),
  grain: optional(about(oneOf('along-x', 'along-y'), 'which way the grain runs', 'along-x')),
  edges: optional(
    about(
      oneOf('as-bought', 'sawn', 'jointed', 'cut-here'),
      'how the edges were made: fills square, taper, bevel, crook, bumps and size where none is given',
      'sawn',
    ),
  ),
  square: slope('how the left edge leans against the lower edge'),
  'taper-x': slope('how much further the right edge leans than the left'),
  'taper-y': slope('how the upper edge leans against the lower'),
  bevel: slope('how far each edge is out of square to the faces', '±0.6 deg'),
  crook: slope('how far each edge bows over its own length', '±0.15 per 300'),
  bumps: spread('how far single places of an edge stand out', '0.04 sd'),
  'thickness-taper': slope('how the thickness changes'),
  swarf: spread('what lies under the blank', 'half-normal 0.02'),
  cup: optional(about(cup, 'how the blank bows across')),
  marked: optional(
    about(listOf(oneOf('lower', 'upper', 'left', 'right')), 'the reference edges', [
      'lower',
      'left',
    ]),
  ),
  movement: optional(
    about(
      keyed<NonNullable<raw.RawBlank['movement']>>({
        x: optional(about(q.strainSpread(), 'along X', '±0.001')),
        y: optional(about(q.strainSpread(), 'along Y', '0.3 per 200 sd')),
      }),
      'strain of the wood between the placings, along X and Y',
      { x: '±0.001', y: 0 },
    ),
  ),
  calipered: optional(
    about(
      keyed<NonNullable<raw.RawBlank['calipered']>>({
        'x-at': optional(about(q.distance(), 'the size along X, at this y', 90)),
        'y-at': optional(about(q.distance(), 'the size along Y, at this x', 140)),
      }),
      'where the size was measured: along X at this y, along Y at this x',
      { 'x-at': 90, 'y-at': 140 },
    ),
  ),
});

const feature = keyed<raw.RawFeature>({
  name: about(text(), 'what needs call it', 'dial recess'),
  circle: optional(about(q.size(), 'diameter', 120)),
  rectangle: optional(about(pairOf(q.size()), 'along X and along Y', [58, 58])),
  slot: optional(about(pairOf(q.size()), 'length with its round ends, and width', [60, 8])),
  polygon: optional(
    about(listOf(pairOf(q.place())), 'corners, from `at`', [
      [0, 0],
      [30, 0],
      [0, 20],
    ]),
  ),
  'corner-radius': optional(about(q.distance(), "of a rectangle; left out, the cutter's", 3.2)),
  at: optional(
    about(
      pairOf(q.place()),
      "centre, from the blank's lower-left corner seen from the front",
      [140, 90],
    ),
  ),
  turned: optional(about(q.angle(), 'counter-clockwise about `at`, seen from the front', '30 deg')),
  cut: optional(
    about(
      oneOf('pocket', 'profile-outside', 'profile-inside', 'drill'),
      'how; left out, pocket',
      'pocket',
    ),
  ),
  depth: about(q.depth(), 'below the face it is cut from', 6, 'through'),
  cutter: about(text(), 'which cutter of the shop file', 'flat 6'),
});

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

const stops = keyed<raw.RawStops>({
  corner: about(
    keyed<raw.RawStops['corner']>({ 'front-up': corner(), 'back-up': corner() }),
    'which corner of the bed the stops make, in each placing',
    { 'front-up': 'near-left', 'back-up': 'near-right' },
  ),
  fence: about(
    oneOf('lower-edge', 'upper-edge', 'left-edge', 'right-edge'),
    'the edge that goes against the stops first',
    'lower-edge',
  ),
  'fence-touch': touch('two buttons, or an arm, from the front-up corner', [30, 250]),
  'side-touch': touch('one button, or an arm, from the front-up corner', 90),
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

const zero = keyed<raw.RawZero>({
  xy: about(
    oneOf('stops', 'milled-stops', 'edges', 'middle', 'kept'),
    'what X and Y are found on',
    'milled-stops',
  ),
  'xy-touched': optional(
    about(
      pairOf(q.place()),
      'where: X at that y, Y at that x; counted from the left and near side of the place where the blank lies on the bed, whichever face is up',
      [140, 90],
    ),
  ),
  kept: optional(
    about(oneOf('held', 're-homed', 'power-off'), 'what happened to a zero that is kept', 'held'),
  ),
  z: about(oneOf('top', 'bed'), 'what Z is found on', 'top'),
  'z-touched': optional(
    about(
      pairOf(q.place()),
      'where Z is touched; counted from the left and near side of the place where the blank lies on the bed, whichever face is up',
      [140, 90],
    ),
  ),
  with: optional(about(text(), 'a touch tool of the shop file', 'paper')),
});

const need = keyed<raw.RawNeed>({
  name: about(text(), 'what the prediction calls it', 'shaft in the pocket'),
  concentric: optional(
    about(pairOf(text()), 'two features whose centres should agree', [
      'shaft hole',
      'movement pocket',
    ]),
  ),
  misalignment: optional(
    about(pairOf(q.place()), 'a point at which back and front should agree', [70, 120]),
  ),
  within: about(q.size(), 'largest distance that is good', 0.2),
});

const JOB_SHAPE = {
  flipwright: about(whole(), 'version of this format', 1),
  name: about(text(), 'what the job is called', 'Instrument lid'),
  shop: about(text(), 'the shop file, from this file', 'shop.yaml'),
  'good-enough': optional(about(q.chance(), 'chance of each need that counts as met', '99 %')),
  'on-bed': optional(
    about(pairOf(q.place()), 'where the front-up corner stands on the bed', [70, 65]),
  ),
  blank: about(blank, 'the piece of wood'),
  first: optional(about(face(), 'the face that is cut first', 'front')),
  front: optional(about(listOf(feature), 'what is cut from the front')),
  back: optional(about(listOf(feature), 'what is cut from the back, seen from the front')),
  turn: about(
    oneOf('about-x', 'about-y'),
    'about-y: left and right change places; about-x: near and far',
    'about-y',
  ),
  stops: about(stops, 'what the blank is pushed against'),
  zero: about(
    keyed<raw.RawZeros>({ 'front-up': zero, 'back-up': zero }),
    'where the work zero comes from',
  ),
  needs: about(listOf(need), 'what has to come out well'),
  hold: optional(
    about(
      keyed<raw.RawHold>({
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
      }),
      'how it is held down',
    ),
  ),
  ...SHOP_PARTS,
};

export const JOB: Schema<raw.RawJob> = keyed<raw.RawJob>(JOB_SHAPE);
/** The same with every key optional: what is left to look at once faulty keys are out. */
export const PART_OF_JOB: Schema<Partial<raw.RawJob>> = keyed<Partial<raw.RawJob>>({
  ...JOB_SHAPE,
  flipwright: optional(JOB_SHAPE.flipwright),
  name: optional(JOB_SHAPE.name),
  shop: optional(JOB_SHAPE.shop),
  blank: optional(JOB_SHAPE.blank),
  turn: optional(JOB_SHAPE.turn),
  stops: optional(JOB_SHAPE.stops),
  zero: optional(JOB_SHAPE.zero),
  needs: optional(JOB_SHAPE.needs),
});
