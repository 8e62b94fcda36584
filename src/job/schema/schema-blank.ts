import type { Schema } from './build.ts';
import { about, either, keyed, listOf, oneOf, optional, text, threeOf, yesOrNo } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';
import type { RawSpread } from './raw-shop.ts';

const slope = (what: string, example: RawSpread = '±0.3 per 200') =>
  optional(about(q.slopeSpread(), what, example));
const spread = (what: string, example: RawSpread) =>
  optional(about(q.lengthSpread(), what, example));
const face = () => oneOf('front', 'back');
const alongAxes = (of: () => Schema<RawSpread>, example: RawSpread) =>
  keyed<raw.RawAlongAxes>({
    x: optional(about(of(), 'along X', example)),
    y: optional(about(of(), 'along Y', example)),
  });

const cup = keyed<raw.RawCup>({
  hump: about(q.lengthSpread(), 'how far the middle stands over the edges', '0..0.1'),
  along: optional(about(oneOf('x', 'y'), 'the direction it bows along', 'y')),
  up: optional(about(face(), 'the face the hump is on', 'front')),
  'pressed-flat': optional(about(yesOrNo(), 'whether clamping flattens it', 'no')),
});

/** Keys of the blank. */
export const blank = keyed<raw.RawBlank>({
  size: about(threeOf(q.sized()), 'along X, along Y, thick', ['280 ±0.4', '180 ±0.4', '24 ±0.15']),
  material: optional(about(text(), 'what it is made of', 'ash')),
  grain: optional(
    about(
      oneOf('along-x', 'along-y', 'sheet'),
      'which way the grain runs; sheet: none, as in MDF or plywood',
      'along-x',
    ),
  ),
  board: optional(
    about(
      oneOf('flat-sawn', 'quarter-sawn'),
      'how the rings lie: a quarter-sawn board moves less across its width; left out, flat-sawn',
      'flat-sawn',
    ),
  ),
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
  'thickness-taper': optional(
    about(
      either(
        alongAxes(q.slopeSpread, '±0.1 per 200'),
        q.slopeSpread(),
        'write ±0.1 per 200, or {x: ±0.1 per 200, y: 0}',
      ),
      'how much thicker it is at the right and at the upper edge; one spread is for both',
      '±0.1 per 200',
    ),
  ),
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
      alongAxes(q.strainSpread, '±0.001'),
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
