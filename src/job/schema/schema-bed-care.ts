import { readDate } from '../text/date.ts';
import { readSized } from '../text/sized.ts';
import type { Schema } from './build.ts';
import {
  about,
  either,
  keyed,
  listOf,
  optional,
  pairOf,
  text,
  threeOf,
  whole,
  written,
} from './build.ts';
import * as q from './quantities.ts';
import type { RawHeights, RawShim } from './raw-bed-care.ts';
import type { Written } from './raw-shop.ts';

/** A day; such texts sort as the days do. */
export const date = (): Schema<Written> => written('write a date such as 2026-11-20', readDate);

/** Keys of the bed that say how it lies and what it is shimmed by. */
export const BED_CARE = {
  heights: optional(
    about(
      keyed<RawHeights>({
        file: optional(about(text(), 'a list x,y,height or a grid y\\x', 'bed-heights.csv')),
        points: optional(
          about(listOf(threeOf(q.place())), 'the same here: x, y, height', [
            [50, 50, 0],
            [550, 50, 0.12],
            [50, 350, -0.05],
            [550, 350, 0.09],
          ]),
        ),
        measured: optional(about(date(), 'when; void once the bed is re-surfaced', '2026-11-20')),
        gauge: optional(about(text(), 'what they were read with, a gauge of the shop', 'dial')),
      }),
      "heights of the bed against the machine's travel, from its near-left corner",
    ),
  ),
  resurfaced: optional(
    about(date(), 'when the board was last skimmed, shimmed or changed', '2026-11-18'),
  ),
  screws: optional(
    about(listOf(pairOf(q.place())), 'what holds the board down, and where shims go', [
      [30, 30],
      [570, 30],
      [30, 370],
      [570, 370],
    ]),
  ),
} as const;

/** A thickness at hand, with how far it may be off, and how many there are. */
export const shim = (): Schema<Written | RawShim> =>
  either(
    thickness(),
    keyed<RawShim>({ thick: thickness(), count: optional(whole()) }),
    'write a thickness such as 0.10 ±0.01, or {thick: 0.10 ±0.01, count: 12}',
  );

const thickness = (): Schema<Written> => written('write a thickness such as 0.10 ±0.01', readSized);
