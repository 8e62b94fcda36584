import { about, keyed, oneOf, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';

const two = (what: string, a: string, b: string) => optional(about(pairOf(text()), what, [a, b]));
const one = (what: string, example: string) => optional(about(text(), what, example));

/** Keys of a need. */
export const need = keyed<raw.RawNeed>({
  name: about(text(), 'what the prediction calls it', 'shaft in the pocket'),
  concentric: two('two features whose centres should agree', 'shaft hole', 'movement pocket'),
  misalignment: optional(
    about(pairOf(q.place()), 'a point at which back and front should agree', [70, 120]),
  ),
  lip: two(
    'two outlines, one within the other: what is left between them, all round',
    'dial recess',
    'movement pocket',
  ),
  web: two(
    'a front and a back feature: the thickness that is left between them',
    'dial recess',
    'movement pocket',
  ),
  wall: one('a feature: what is left between its outline and an edge', 'movement pocket'),
  depth: one('a feature: how deep it is below the real face', 'dial recess'),
  meets: two(
    'a front and a back profile of one outline: the largest step between them',
    'upper half',
    'lower half',
  ),
  parallel: two('two features that should not be turned to each other', 'groove', 'rebate'),
  size: one('a feature: how large it is along an axis', 'movement pocket'),
  to: optional(
    about(
      oneOf('lower-edge', 'upper-edge', 'left-edge', 'right-edge'),
      'the edge that a wall is measured to; left out, the nearest',
      'lower-edge',
    ),
  ),
  along: optional(about(oneOf('x', 'y'), 'the axis that a size is measured along', 'x')),
  within: optional(
    about(
      q.within(),
      'largest that is good, of concentric, misalignment, meets and (as a slope) parallel',
      0.2,
      '0.1 per 100',
    ),
  ),
  'at-least': optional(about(q.distance(), 'least that is good, of the others', 2.5)),
  from: optional(about(q.distance(), 'the same, beside up-to', 60.5)),
  'up-to': optional(about(q.size(), 'most that is good', 61.5)),
});
