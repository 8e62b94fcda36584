import { about, keyed, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import type * as raw from './raw-job.ts';

/** Keys of a need. */
export const need = keyed<raw.RawNeed>({
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
