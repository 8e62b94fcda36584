import type { StopsJob } from '../../../src/job/job.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import type { Contact, Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import type { RealBlank } from './real-blank.ts';
import { realContact, type RealStops } from './real-stops.ts';
import { dot, plus, type XY } from './vectors.ts';

/** One contact as it really is: where it stands and how far the blank's edge stands out at it. */
export interface Touch {
  readonly kind: Contact['kind'];
  readonly edge: Contact['edge'];
  readonly at: XY;
  /** Bump and seat gap, mm. */
  readonly raisedMm: number;
  /** Bump, seat gap and bevel, mm. */
  readonly standsOutMm: number;
}

/** Spots of one edge this close are one spot: registration rule 6. */
const ONE_SPOT_MM = 5;

/** The real contacts of one placing; the fence's nearer the side stop in use first. */
export function touchesOf(
  job: StopsJob,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  stops: RealStops,
): { readonly fence: readonly [Touch, Touch]; readonly side: readonly Touch[] } {
  const touch = (contact: Contact): Touch => {
    const gap = off[`seat-gap/${placing.faceUp}-up/${contact.id}`] ?? 0;
    const feltMm = gap + (off[bumpKey(job, contact)] ?? 0);
    // An arm spans a hollow spot and rests beside it; a button falls in.
    const raisedMm = contact.kind === 'arm-end' ? Math.max(0, feltMm) : feltMm;
    return {
      kind: contact.kind,
      edge: contact.edge,
      at: realContact(stops, placing, contact, off),
      raisedMm,
      standsOutMm: raisedMm + blank.bevelMm(contact.edge),
    };
  };
  const sign = placing.sideStop === 'first' ? 1 : -1;
  const distance = ({ at }: Contact): number => sign * dot(plus(at, stops.corner, -1), stops.along);
  const onFence = placing.contacts
    .filter(({ face }) => face === 'fence')
    .toSorted((a, b) => distance(a) - distance(b));
  const [near, far] = onFence.map(touch);
  return {
    fence: [near!, far!],
    side: placing.contacts.filter(({ face }) => face === 'side').map(touch),
  };
}

function bumpKey(job: StopsJob, { edge, alongEdgeMm }: Contact): string {
  const spot = spotsOf(job).find((one) => one.edge === edge && isOneSpot(one.alongMm, alongEdgeMm));
  return `bump/${edge}/${spot!.alongMm}`;
}

/** The spots of the blank's edges that are touched, each named by the first contact there. */
export function spotsOf(job: StopsJob): readonly Spot[] {
  const { frontUp, backUp } = placingsOf(job);
  const spots: Spot[] = [];
  for (const { edge, alongEdgeMm: alongMm } of [...frontUp.contacts, ...backUp.contacts])
    if (!spots.some((one) => one.edge === edge && isOneSpot(one.alongMm, alongMm)))
      spots.push({ edge, alongMm });
  return spots;
}

interface Spot {
  readonly edge: Contact['edge'];
  readonly alongMm: number;
}

const isOneSpot = (a: number, b: number): boolean => Math.abs(a - b) <= ONE_SPOT_MM;
