import { unreachable } from '../num/invariant.ts';
import type { Corner, Edge, Locating } from './job.ts';

/** Corners of the front-up rectangle at which stops stand; the one from which the bed is measured first. */
export function cornersOf(locating: Locating): readonly [Corner, ...Corner[]] {
  switch (locating.locating) {
    case 'stops':
      return [locating.stops.corner.frontUp, locating.stops.corner.backUp];
    case 'fence-and-dowel':
      return [START_OF_FENCE[locating.fenceAndDowel.fence]];
    case 'dowels':
    case 'nest':
      return ['near-left'];
    default:
      return unreachable(locating);
  }
}

/** A fence without a side stop is measured from its near or left end. */
const START_OF_FENCE: Readonly<Record<Edge, Corner>> = {
  lower: 'near-left',
  upper: 'far-left',
  left: 'near-left',
  right: 'near-right',
};
