import type { Schema } from '../schema/build.ts';
import {
  about,
  either,
  keyed,
  listOf,
  oneOf,
  optional,
  pairOf,
  text,
  whole,
} from '../schema/build.ts';
import * as q from '../schema/quantities.ts';
import { date } from '../schema/schema-bed-care.ts';
import type {
  RawComb,
  RawReading,
  RawReadings,
  RawSquare,
  RawTestPiece,
  RawTurn,
  RawWeb,
} from './raw-readings.ts';

const reading = (): Schema<RawReading> =>
  either(q.place(), listOf(q.place()), 'write a length, or a list of them: [12.02, 12.04]');

const square = keyed<RawSquare>({
  by: oneOf('diagonals', 'three-lengths', 'square-and-dial', 'turned-over', 'circle', 'length'),
  gauge: optional(text()),
  size: optional(pairOf(q.size())),
  'to-far-right': optional(reading()),
  'to-far-left': optional(reading()),
  'left-side': optional(reading()),
  over: optional(q.size()),
  dial: optional(pairOf(q.place())),
  turned: optional(pairOf(q.place())),
  points: optional(oneOf('right', 'left')),
  square: optional(text()),
  gap: optional(reading()),
  diameter: optional(q.size()),
  'at-45': optional(reading()),
  'at-135': optional(reading()),
  'along-x': optional(reading()),
  'along-y': optional(reading()),
  axis: optional(oneOf('x', 'y')),
  commanded: optional(q.size()),
  measured: optional(reading()),
});

const comb = keyed<RawComb>({
  along: oneOf('x', 'y'),
  at: about(pairOf(q.place()), 'seen from the front, from the lower-left corner', [20, 4]),
  t1: about(reading(), 'wall between the first front slot and the back slot', 12.05),
  t2: about(reading(), 'wall between the back slot and the second front slot', 11.97),
});

const turn = keyed<RawTurn>({
  combs: listOf(comb),
  webs: optional(listOf(keyed<RawWeb>({ at: pairOf(q.place()), web: reading() }))),
});

const testPiece = keyed<RawTestPiece>({
  gauge: optional(text()),
  wall: optional(q.size()),
  web: optional(q.size()),
  cutter: optional(text()),
  size: optional(about(pairOf(q.size()), "the piece's own size by caliper", [280.31, 180.02])),
  turns: listOf(turn),
});

const SHAPE = {
  'flipwright-readings': whole(),
  shop: optional(text()),
  measured: optional(date()),
  square: optional(listOf(square)),
  'test-piece': optional(testPiece),
};

export const READINGS: Schema<RawReadings> = keyed<RawReadings>(SHAPE);
export const PART_OF_READINGS: Schema<Partial<RawReadings>> = keyed<Partial<RawReadings>>({
  ...SHAPE,
  'flipwright-readings': optional(SHAPE['flipwright-readings']),
});
