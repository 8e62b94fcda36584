import { unreachable } from '../../num/invariant.ts';
import type { Locating, Need } from '../job.ts';

/** What is located loosely must also go on: the same chance is wanted of that as of each need that was written. */
export function goesOn(locating: Locating): readonly Need[] {
  const need = (name: string): Need => ({
    kind: 'goes-on',
    name,
    limits: { lowMm: 0, highMm: null },
  });
  switch (locating.locating) {
    case 'stops':
      return [];
    case 'dowels':
      return [need('play on the dowels')];
    case 'fence-and-dowel':
      return [need('play on the dowel')];
    case 'nest':
      return [need('play in the nest')];
    default:
      return unreachable(locating);
  }
}
