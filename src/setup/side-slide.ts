import type { Job, Stops } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { edgeInFrame } from './edge-in-frame.ts';
import type { Faces } from './faces.ts';
import type { Contact, Placing } from './placing.ts';
import type { SeatFrame } from './seat-frame.ts';
import type { Slide } from './seat.ts';
import { bevelFelt, placingKey, type ContactColumns } from './touching.ts';

/** Slid along the fence until the first candidate of the side stop touches: a button, or an arm's ends or a bulge. */
export function sideSlide(
  { job, stops, placing, frame, faces }: Slid,
  columns: Columns,
  touching: (placing: Placing, contact: Contact) => ContactColumns,
): Slide {
  const felt = bevelFelt(stops.band, placing.faceUp);
  const thick = columns.of({ kind: 'thickness' });
  const side = edgeInFrame(placing.end.edge, frame.blankInwardSign, frame.depthMm, columns);
  const across = frame.along === 'x' ? 'y' : 'x';
  const bOf = (contact: Contact): number =>
    frame.inwardSign * (contact.at[across] - frame.origin[across]);
  const contacts = placing.contacts
    .filter((contact) => contact.face === 'side')
    .map((contact) => ({ s: bOf(contact), ...touching(placing, contact) }));
  const s1 = contacts[0]!;
  const s2 = contacts[1] ?? null;
  // A button falls into a hollow spot; an arm rests on the edge beside it.
  const floor = s2 === null ? -Infinity : 0;
  const give = columns.of({ kind: 'give', placing: placingKey(placing.faceUp), face: 'side' });

  let kS = 0;
  let s0 = 0;
  let curve = 0;
  let span = 0;
  let q1a = 0;
  let q1b = 0;
  let q2a = 0;
  let q2b = 0;
  let g1 = 0;
  let g2 = 0;
  let feltSide = 0;
  return {
    spareMm: () => Infinity,
    load: (draws, i, shape) => {
      feltSide = felt(draws[side.bevel + i]!, job.blank.thickMm + draws[thick + i]!);
      kS = -shape[side.at + 1]! * side.sign;
      s0 = -(shape[side.at]! + shape[side.at + 1]! * side.from);
      curve = shape[side.at + 2]!;
      span = shape[side.at + 3]!;
      // The contacts on the real face.
      const cornerB =
        (faces.fence + faces.fenceSlope * faces.side) / (1 - faces.fenceSlope * faces.sideSlope);
      const step = 1 / Math.sqrt(1 + faces.sideSlope * faces.sideSlope);
      q1b = cornerB + s1.s * step;
      q1a = faces.side + faces.sideSlope * q1b - draws[give + i]!;
      q2b = s2 === null ? q1b : cornerB + s2.s * step;
      q2a = faces.side + faces.sideSlope * q2b - draws[give + i]!;
      g1 = Math.max(floor, draws[s1.bump + i]! + draws[s1.gap + i]!) + feltSide;
      g2 = s2 === null ? g1 : Math.max(floor, draws[s2.bump + i]! + draws[s2.gap + i]!) + feltSide;
    },
    // The candidate that needs the blank farthest away.
    along: (cos, sin, c, k, backB) => {
      const b1 = cos * q1b - sin * q1a;
      const l1 = cos * q1a + sin * q1b - kS * b1 - s0;
      const u1 = side.from + side.sign * (b1 - backB);
      let far = l1 + curve * u1 * (span - u1) + g1;
      if (s2 !== null) {
        const b2 = cos * q2b - sin * q2a;
        const l2 = cos * q2a + sin * q2b - kS * b2 - s0;
        const u2 = side.from + side.sign * (b2 - backB);
        far = Math.max(far, l2 + curve * u2 * (span - u2) + g2);
        if (curve > 0) {
          // A bulge may touch the arm between its ends, where it is parallel to it.
          const perU = (l2 - l1) / (u2 - u1);
          const top = (span + perU / curve) / 2;
          const u = Math.max(Math.min(u1, u2), Math.min(Math.max(u1, u2), top));
          far = Math.max(far, l1 + perU * (u - u1) + curve * u * (span - u) + feltSide);
        }
      }
      return (far + kS * c) / (1 - kS * k);
    },
  };
}

/** A placing with a side stop. */
interface Slid {
  readonly job: Job;
  readonly stops: Stops;
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly faces: Faces;
}
