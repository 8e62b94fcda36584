import type { Band, Face } from '../job/job.ts';
import type { Columns } from './columns.ts';
import type { Contact, Placing } from './placing.ts';
import type { PlacingKey } from './deviation.ts';

/** Spots of an edge within this distance are one spot, with one bump (registration.md, rule 6). */
const SAME_SPOT_MM = 5;

/** Columns of what one contact adds to how far the edge stands out there. */
export interface ContactColumns {
  readonly bump: number;
  readonly gap: number;
}

/** Gives each touched spot of each edge one bump, whichever placing touches it. */
export function contactColumns(
  placings: readonly Placing[],
  columns: Columns,
): (placing: Placing, contact: Contact) => ContactColumns {
  const spots: { readonly edge: Contact['edge']; readonly alongMm: number }[] = [];
  const spotOf = (contact: Contact): (typeof spots)[number] => {
    const known = spots.find(
      (spot) =>
        spot.edge === contact.edge && Math.abs(spot.alongMm - contact.alongEdgeMm) <= SAME_SPOT_MM,
    );
    if (known !== undefined) return known;
    const spot = { edge: contact.edge, alongMm: contact.alongEdgeMm };
    spots.push(spot);
    return spot;
  };
  for (const placing of placings) placing.contacts.forEach(spotOf);
  return (placing, contact) => ({
    bump: columns.of({ kind: 'bump', ...spotOf(contact) }),
    gap: columns.of({ kind: 'seat-gap', placing: placingKey(placing.faceUp), contact: contact.id }),
  });
}

export function placingKey(faceUp: Face): PlacingKey {
  return faceUp === 'front' ? 'front-up' : 'back-up';
}

/**
 * How far an edge of bevel `eps` stands out where the stop feels it, beyond its line at half
 * thickness: at the most prominent height of the band, or at one height.
 */
export function bevelFelt(band: Band, faceUp: Face): (bevel: number, thickMm: number) => number {
  const sign = faceUp === 'front' ? 1 : -1;
  if (band.kind === 'narrow') {
    return (bevel, thickMm) => sign * bevel * (band.touchHeightMm - thickMm / 2);
  }
  return (bevel, thickMm) => {
    const lean = sign * bevel;
    return Math.max((-lean * thickMm) / 2, lean * (band.heightMm - thickMm / 2));
  };
}
