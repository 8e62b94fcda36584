import type { Schema } from './build.ts';
import { about, keyed, listOf, oneOf, optional, pairOf, text, whole } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';
import { blank } from './schema-blank.ts';
import { feature } from './schema-feature.ts';
import { hold, programs } from './schema-hold.ts';
import { jig } from './schema-jig.ts';
import { dowels, nest } from './schema-loose.ts';
import { need } from './schema-need.ts';
import { SHOP_PARTS } from './schema-shop.ts';
import { stops } from './schema-stops.ts';
import { zero } from './schema-zero.ts';

const JOB_SHAPE = {
  flipwright: about(whole(), 'version of this format', 1),
  name: about(text(), 'what the job is called', 'Instrument lid'),
  shop: about(text(), 'the shop file, from this file', 'shop.yaml'),
  'good-enough': optional(about(q.chance(), 'chance of each need that counts as met', '99 %')),
  'on-bed': optional(
    about(pairOf(q.place()), 'where the front-up corner stands on the bed', [70, 65]),
  ),
  blank: about(blank, 'the piece of wood'),
  first: optional(about(oneOf('front', 'back'), 'the face that is cut first', 'front')),
  front: optional(about(listOf(feature), 'what is cut from the front')),
  back: optional(about(listOf(feature), 'what is cut from the back, seen from the front')),
  turn: about(
    oneOf('about-x', 'about-y'),
    'about-y: left and right change places; about-x: near and far',
    'about-y',
  ),
  stops: optional(about(stops, 'what the blank is pushed against')),
  dowels: optional(about(dowels, 'what the blank is put on, instead of stops')),
  nest: optional(about(nest, 'what the blank is dropped into, instead of stops')),
  zero: about(
    keyed<raw.RawZeros>({
      'front-up': about(zero, 'while the front is up'),
      'back-up': about(zero, 'while the back is up'),
    }),
    'where the work zero comes from',
  ),
  needs: about(listOf(need), 'what has to come out well'),
  'between-placings': optional(
    about(
      keyed<raw.RawBetween>({
        hours: about(q.hours(), 'how long it lies between the placings', 20),
        humidity: about(q.humidity(), 'of the air there, the driest and the dampest', '45..60 %'),
        temperature: optional(about(q.temperature(), 'of the air; left out, 20 C', '20 C', '68 F')),
      }),
      'what moves the wood between the placings, instead of blank: movement',
      { hours: 20, humidity: '45..60 %' },
    ),
  ),
  repeat: optional(
    about(
      keyed<raw.RawRepeat>({
        count: about(pairOf(whole()), 'how many along X and along Y', [2, 3]),
        pitch: about(pairOf(q.size()), 'from one to the next, along X and along Y', [90, 70]),
      }),
      'several parts in one blank: every feature and need again for each, called `name (2,1)`; what is written is the one nearest the lower-left corner',
      { count: [2, 3], pitch: [90, 70] },
    ),
  ),
  parts: optional(
    about(
      keyed<raw.RawParts>({
        count: optional(about(whole(), 'how many blanks', 6)),
        order: optional(
          about(
            oneOf('each-in-turn', 'all-fronts-first'),
            'whether each is finished before the next',
            'each-in-turn',
          ),
        ),
      }),
      'how many are made, and in which order',
    ),
  ),
  hold: optional(about(hold, 'how it is held down')),
  program: optional(
    about(programs, 'your own programs, checked instead of what the features ask for'),
  ),
  jig: optional(about(jig, 'what is to be made beside the stops')),
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
  zero: optional(JOB_SHAPE.zero),
  needs: optional(JOB_SHAPE.needs),
});
