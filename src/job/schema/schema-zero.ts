import { about, keyed, oneOf, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';

/** Keys of the zero of one placing. */
export const zero = keyed<raw.RawZero>({
  xy: about(
    oneOf('stops', 'milled-stops', 'edges', 'middle', 'hole', 'dowels', 'nest', 'kept'),
    'what X and Y are found on; dowels and nest: the zero from which this machine drilled the bed or cut the nest',
    'milled-stops',
  ),
  'xy-touched': optional(
    about(
      pairOf(q.place()),
      'where: X at that y, Y at that x; counted from the left and near side of the place where the blank lies on the bed, whichever face is up',
      [140, 90],
    ),
  ),
  hole: optional(
    about(
      text(),
      'a round hole that the first placing has cut through, or a round boss: a circle with cut: profile-outside',
      'shaft hole',
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
