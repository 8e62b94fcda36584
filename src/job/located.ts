import { unreachable } from '../num/invariant.ts';
import type { Corner, Cutter, DowelHoles, Edge, Fence, Locating } from './job.ts';

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

/** The holes by which a blank is located; null when it is not located by any. */
export function dowelHolesIn(locating: Locating): DowelHoles | null {
  if (locating.locating === 'dowels') return locating.dowels;
  return locating.locating === 'fence-and-dowel' ? locating.fenceAndDowel.dowel : null;
}

/** The fence against which the blank is pushed; null when there is none. */
export function fenceIn(locating: Locating): Fence | null {
  if (locating.locating === 'stops') return locating.stops;
  return locating.locating === 'fence-and-dowel' ? locating.fenceAndDowel : null;
}

/** The cutter that mills the stops or the nest; null when none does. */
export function jigCutterIn(locating: Locating): Cutter | null {
  if (locating.locating === 'nest') return locating.nest.cutter;
  const made = fenceIn(locating)?.made;
  return made?.kind === 'milled-in-place' ? made.cutter : null;
}
