import type { Schema } from './build.ts';
import {
  about,
  keyed,
  listOf,
  named,
  oneOf,
  optional,
  pairOf,
  text,
  threeOf,
  whole,
} from './build.ts';
import { holdDown, track } from './schema-hold.ts';
import * as q from './quantities.ts';
import { BED_CARE, shim } from './schema-bed-care.ts';
import type * as raw from './raw-shop.ts';

const round = (what: string): Schema<raw.RawRound | undefined> =>
  optional(
    about(
      keyed<raw.RawRound>({
        radius: about(q.size(), 'its radius', 10),
        from: about(q.distance(), 'height of its lower end above the tip of the cutter', 30),
      }),
      what,
    ),
  );

const bolt = () => oneOf('M4', 'M5', 'M6', 'M8');
const slope = (what: string) => optional(about(q.slopeSpread(), what, '±0.3 per 200'));
const spread = (what: string, example: raw.RawSpread) =>
  optional(about(q.lengthSpread(), what, example));

const aboveTheTip = keyed<raw.RawAboveTip>({
  'collet-nut': round('the nut that turns with the cutter'),
  spindle: round('the body of the spindle or router'),
  'dust-shoe': optional(
    about(
      keyed<raw.RawShoe>({
        size: about(pairOf(q.size()), 'along X and along Y', [110, 90]),
        from: about(q.distance(), 'height of its lower end above the tip of the cutter', 12),
      }),
      'the shoe or brush that hangs round the cutter',
    ),
  ),
});

const machine = keyed<raw.RawMachine>({
  travel: optional(about(threeOf(q.size()), 'how far the axes go: X, Y, Z', [600, 400, 90])),
  drive: optional(about(oneOf('screw', 'belt'), 'what moves the axes; decides defaults', 'screw')),
  lean: slope('how the Y axis leans against the X axis'),
  'scale-x': slope('how much too long the X axis measures'),
  'scale-y': slope('how much too long the Y axis measures'),
  'lost-motion': optional(about(q.play(), 'play of an axis, both ways together', 0.06)),
  repeatability: spread('how well an axis comes back to a place', '0.02 sd'),
  'local-error': spread(
    'smooth error of an axis along its travel: the same at the same place; left out, none',
    '±0.03',
  ),
  'local-error-over': optional(
    about(q.size(), 'over what length it changes; left out, 100 mm', 100),
  ),
  homing: spread('how well homing finds the same place', '±0.05'),
  'power-off': spread('what a power cycle may add', '±0.05'),
  'cutter-lean-x': slope('how the cutter leans along X'),
  'cutter-lean-y': slope('how the cutter leans along Y'),
  'above-the-tip': optional(about(aboveTheTip, "what turns or hangs above the cutter's tip")),
});

const bed = keyed<raw.RawBed>({
  spoilboard: optional(
    about(
      keyed<raw.RawSpoilboard>({
        size: about(pairOf(q.size()), 'along X and along Y', [600, 400]),
        thickness: about(q.size(), 'how thick it is today', 18),
        material: optional(about(text(), 'what screws hold in; left out, MDF', 'mdf')),
        'old-holes': optional(
          about(
            listOf(pairOf(q.place())),
            'holes of earlier screws, which new ones keep away from',
            [[120, 80]],
          ),
        ),
      }),
      'the board that is screwed to the bed',
      { size: [600, 400], thickness: 18 },
    ),
  ),
  inserts: optional(
    about(
      keyed<raw.RawInserts>({
        thread: about(bolt(), 'their thread', 'M6'),
        first: about(pairOf(q.place()), 'the nearest one on the left', [50, 50]),
        pitch: about(pairOf(q.size()), 'from one to the next, along X and along Y', [100, 75]),
        count: about(pairOf(whole()), 'how many along X and along Y', [6, 5]),
      }),
      'threaded inserts in the bed, in rows; places from its near-left corner',
      { thread: 'M6', first: [50, 50], pitch: [100, 75], count: [6, 5] },
    ),
  ),
  't-tracks': optional(about(listOf(track), 'tracks in the bed that take bolts anywhere')),
  'lean-x': slope('how the bed leans along X against the travel'),
  'lean-y': slope('how the bed leans along Y against the travel'),
  unevenness: spread('how uneven the bed is, place by place', '±0.05'),
  ...BED_CARE,
});

const cutter = keyed<raw.RawCutter>({
  name: about(text(), 'what features call it', 'flat 6'),
  kind: about(oneOf('flat', 'vee', 'ball'), 'what it cuts with', 'flat'),
  diameter: about(q.sized(), 'diameter and how far it may be off', '6 ±0.04'),
  angle: optional(about(q.angle(), 'included angle of a vee', '90 deg')),
  'tip-flat': optional(about(q.lengthOrSpread(), 'width of the flat at the tip of a vee', 0.1)),
  flute: optional(about(q.size(), 'length that cuts', 22)),
  'stick-out': optional(about(q.size(), 'length below the collet', 32)),
  length: optional(about(q.size(), 'of the whole cutter', 50)),
  flutes: optional(about(whole(), 'how many cutting edges', 2)),
  helix: optional(
    about(oneOf('up', 'down', 'straight', 'compression'), 'which way it throws the chips', 'up'),
  ),
  'push-off': spread('how far the cut pushes it aside', '0..0.05'),
  speed: optional(about(q.speed(), 'turns a minute', 18000)),
  feed: optional(about(q.feed(), 'mm a minute', 1800)),
  step: optional(about(q.size(), 'depth of one pass', 3)),
});

const touchTool = keyed<raw.RawTouchTool>({
  thick: optional(about(q.size(), 'thickness of a sheet or plate', 0.1)),
  diameter: optional(about(q.size(), 'diameter of a pin or probe', 6)),
  spread: spread('how far one touch may be off', '±0.02'),
  bias: optional(about(q.place(), 'error of every touch, positive away from the face', 0)),
});

/** Keys of a shop file that a job may override. */
export const SHOP_PARTS = {
  units: optional(
    about(oneOf('mm', 'inch'), 'what sheets and terminal speak; files are in mm', 'mm'),
  ),
  machine: optional(about(machine, 'the machine and how true it is')),
  bed: optional(about(bed, 'what the machine works on')),
  cutters: optional(about(listOf(cutter), 'the cutters, each with its name')),
  'touch-off': optional(about(named(touchTool), 'what zero is touched with, by name')),
  gauges: optional(about(named(q.gauge()), 'what things are measured with, by name')),
  'hold-downs': optional(about(listOf(holdDown), 'clamps and screws at hand')),
  shims: optional(about(named(shim()), 'thicknesses at hand, by name', { paper: '0.10 ±0.01' })),
} as const;

const SHOP_SHAPE = {
  'flipwright-shop': about(whole(), 'version of this format', 1),
  name: optional(about(text(), 'what the shop is called', 'Back room')),
  ...SHOP_PARTS,
};

export const SHOP: Schema<raw.RawShop> = keyed<raw.RawShop>(SHOP_SHAPE);
/** The same with every key optional: what is left to look at once faulty keys are out. */
export const PART_OF_SHOP: Schema<Partial<raw.RawShop>> = keyed<Partial<raw.RawShop>>({
  ...SHOP_SHAPE,
  'flipwright-shop': optional(SHOP_SHAPE['flipwright-shop']),
});
