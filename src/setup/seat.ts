import type { Edge, Job } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { EDGE_INDEX } from './edges.ts';
import type { Faces } from './faces.ts';
import type { Contact, Placing } from './placing.ts';
import type { Pose } from './pose.ts';
import type { SeatFrame } from './seat-frame.ts';
import { bevelFelt, placingKey, type ContactColumns } from './touching.ts';

/**
 * Where a crook stands out depends on where the blank lies along the stop, which depends on the
 * crook. Each pass keeps a share of the last one's error: a slide changes how far a crook stands out
 * by its slope, and turns the blank by its curvature, which the side contact feels with a lever; about
 * crook * (4 + 8 depth / length), 0.06 for the worst edges of a deep blank, 0.005 for sawn ones. Twelve
 * passes leave less than 1e-10 mm of a 5 mm shift; most blanks settle after three.
 */
const PASSES = 12;
const SETTLED_MM = 1e-10;

export type Seat = (
  draws: Float64Array,
  i: number,
  shape: Float64Array,
  faces: Faces,
  pose: Pose,
) => void;

/**
 * Seats the blank: pushed on the fence first (two contacts give the angle and one offset), then
 * slid along it until the first candidate of the side stop touches; then give and clamp drag move it.
 *
 * Contacts are points at their nominal distance along the real faces (the radius of a round pin is
 * neglected). An edge stands out from its line by sag, bump, seat gap and bevel, all taken along the blank's
 * axis; along the face's normal they would differ by the square of the lean.
 */
export function seatOf(
  job: Job,
  placing: Placing,
  frame: SeatFrame,
  columns: Columns,
  touching: (placing: Placing, contact: Contact) => ContactColumns,
): Seat {
  const key = placingKey(placing.faceUp);
  const felt = bevelFelt(job, placing.faceUp);
  const thick = columns.of({ kind: 'thickness' });
  const fence = edgeInFrame(placing.fence.edge, frame.blankAlongSign, frame.lengthMm, columns);
  const side = edgeInFrame(placing.sideStop.edge, frame.blankInwardSign, frame.depthMm, columns);
  const firstCorner = frame.onSecondStop ? frame.lengthMm : 0;
  const sideContacts = placing.contacts.filter((contact) => contact.face === 'side');
  const aOf = (contact: Contact): number =>
    frame.alongSign * (contact.at[frame.along] - frame.origin[frame.along]);
  const across = frame.along === 'x' ? 'y' : 'x';
  const bOf = (contact: Contact): number =>
    frame.inwardSign * (contact.at[across] - frame.origin[across]);
  const fenceContacts = placing.contacts.filter((contact) => contact.face === 'fence');
  fenceContacts.sort((one, other) => aOf(one) - aOf(other));
  const [f1, f2] = [fenceContacts[0]!, fenceContacts[1]!];
  const [p1, p2] = [aOf(f1), aOf(f2)];
  const [at1, at2] = [touching(placing, f1), touching(placing, f2)];
  const sides = sideContacts.map((contact) => ({ s: bOf(contact), ...touching(placing, contact) }));
  const s1 = sides[0]!;
  const s2 = sides[1] ?? null;
  const rock = f1.kind === 'arm-end' ? columns.of({ kind: 'rock', placing: key }) : null;
  // A button falls into a hollow spot; an arm rests on the edge beside it.
  const fenceFloor = f1.kind === 'arm-end' ? 0 : -Infinity;
  const sideFloor = s2 === null ? -Infinity : 0;
  const giveFence = columns.of({ kind: 'give', placing: key, face: 'fence' });
  const giveSide = columns.of({ kind: 'give', placing: key, face: 'side' });
  const dragSide = columns.of({ kind: 'clamp-drag', placing: key, from: 'side' });
  const dragFence = columns.of({ kind: 'clamp-drag', placing: key, from: 'fence' });

  return (draws, i, shape, faces, pose) => {
    const thickMm = job.blank.thickMm + draws[thick + i]!;
    const feltFence = felt(draws[fence.bevel + i]!, thickMm);
    const feltSide = felt(draws[side.bevel + i]!, thickMm);

    // The blank's two edges as lines of the blank, in seat-frame directions.
    const kF = -shape[fence.at + 1]! * fence.sign;
    const f0 = -(shape[fence.at]! + shape[fence.at + 1]! * fence.from);
    const curveF = shape[fence.at + 2]!;
    const spanF = shape[fence.at + 3]!;
    const kS = -shape[side.at + 1]! * side.sign;
    const s0 = -(shape[side.at]! + shape[side.at + 1]! * side.from);
    const curveS = shape[side.at + 2]!;
    const spanS = shape[side.at + 3]!;

    // The contacts on the real faces.
    const fenceStep = 1 / Math.sqrt(1 + faces.fenceSlope * faces.fenceSlope);
    const cornerB =
      (faces.fence + faces.fenceSlope * faces.side) / (1 - faces.fenceSlope * faces.sideSlope);
    const sideStep = 1 / Math.sqrt(1 + faces.sideSlope * faces.sideSlope);
    const p1a = firstCorner + (p1 - firstCorner) * fenceStep;
    const p2a = firstCorner + (p2 - firstCorner) * fenceStep;
    const p1b = faces.fence + faces.fenceSlope * p1a - draws[giveFence + i]!;
    const p2b = faces.fence + faces.fenceSlope * p2a - draws[giveFence + i]!;
    const q1b = cornerB + s1.s * sideStep;
    const q1a = faces.side + faces.sideSlope * q1b - draws[giveSide + i]!;
    const q2b = s2 === null ? q1b : cornerB + s2.s * sideStep;
    const q2a = faces.side + faces.sideSlope * q2b - draws[giveSide + i]!;

    const da = p2a - p1a;
    const db = p2b - p1b;
    const big = da + kF * db;
    const small = kF * da - db;
    const square = big * big + small * small;

    const e1 = Math.max(fenceFloor, draws[at1.bump + i]! + draws[at1.gap + i]!);
    const e2 = Math.max(fenceFloor, draws[at2.bump + i]! + draws[at2.gap + i]!);
    const g1 = Math.max(sideFloor, draws[s1.bump + i]! + draws[s1.gap + i]!) + feltSide;
    const g2 =
      s2 === null ? g1 : Math.max(sideFloor, draws[s2.bump + i]! + draws[s2.gap + i]!) + feltSide;

    let cos = 1;
    let sin = 0;
    let backA = 0;
    let backB = 0;
    for (let pass = 0; pass < PASSES; pass++) {
      // How far the edge stands out at the two fence contacts.
      const a1 = cos * p1a + sin * p1b - backA;
      const a2 = cos * p2a + sin * p2b - backA;
      const t1 = fence.from + fence.sign * a1;
      const t2 = fence.from + fence.sign * a2;
      let o1 = curveF * t1 * (spanF - t1) + e1;
      let o2 = curveF * t2 * (spanF - t2) + e2;
      if (rock !== null && curveF > 0) {
        // A bulging edge rests on the arm between the tangents from its two (raised) ends and rocks.
        const from = a1 + Math.sqrt(e1 / curveF);
        const to = a2 - Math.sqrt(e2 / curveF);
        if (from < to) {
          const rest = from + draws[rock + i]! * (to - from);
          const t = fence.from + fence.sign * rest;
          const slope = fence.sign * curveF * (spanF - 2 * t);
          const out = curveF * t * (spanF - t);
          o1 = out + slope * (a1 - rest);
          o2 = out + slope * (a2 - rest);
        }
      }
      // Turn: the edge's line through both contacts.
      const g = o2 - o1;
      const root = Math.sqrt(square - g * g);
      sin = (big * g - small * root) / square;
      cos = (small * g + big * root) / square;
      const c1 = cos * p1b - sin * p1a - kF * (cos * p1a + sin * p1b) - f0 + o1 + feltFence;

      // Slide: the candidate of the side stop that needs the blank farthest away.
      const b1 = cos * q1b - sin * q1a;
      const l1 = cos * q1a + sin * q1b - kS * b1 - s0;
      const u1 = side.from + side.sign * (b1 - backB);
      let far = l1 + curveS * u1 * (spanS - u1) + g1;
      if (s2 !== null) {
        const b2 = cos * q2b - sin * q2a;
        const l2 = cos * q2a + sin * q2b - kS * b2 - s0;
        const u2 = side.from + side.sign * (b2 - backB);
        far = Math.max(far, l2 + curveS * u2 * (spanS - u2) + g2);
        if (curveS > 0) {
          // A bulge may touch the arm between its ends, where it is parallel to it.
          const perU = (l2 - l1) / (u2 - u1);
          const top = (spanS + perU / curveS) / 2;
          const u = Math.max(Math.min(u1, u2), Math.min(Math.max(u1, u2), top));
          far = Math.max(far, l1 + perU * (u - u1) + curveS * u * (spanS - u) + feltSide);
        }
      }
      const nextA = (far + kS * c1) / (1 - kS * kF);
      const nextB = c1 + kF * nextA;
      const change = Math.abs(nextA - backA) + Math.abs(nextB - backB);
      backA = nextA;
      backB = nextB;
      if (change < SETTLED_MM) break;
    }
    pose.cos = cos;
    pose.sin = sin;
    pose.backA = backA + (cos * draws[dragSide + i]! + sin * draws[dragFence + i]!);
    pose.backB = backB + (cos * draws[dragFence + i]! - sin * draws[dragSide + i]!);
  };
}

interface EdgeInFrame {
  /** Where the edge's numbers stand in the shapes, and its bevel's column. */
  readonly at: number;
  readonly bevel: number;
  /** Along the edge, t = from + sign * (seat-frame coordinate). */
  readonly from: number;
  readonly sign: 1 | -1;
}

function edgeInFrame(edge: Edge, sign: 1 | -1, lengthMm: number, columns: Columns): EdgeInFrame {
  return {
    at: EDGE_INDEX[edge],
    bevel: columns.of({ kind: 'bevel', edge }),
    from: sign === 1 ? 0 : lengthMm,
    sign,
  };
}
