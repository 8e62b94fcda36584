import type { Fence, Job } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { edgeInFrame } from './edge-in-frame.ts';
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
export const PASSES = 12;
export const SETTLED_MM = 1e-10;

/** Finds the pose of one placing in trial `i`; `shape` are the edges of the blank as it is then. */
export type Seat = (draws: Float64Array, i: number, shape: Float64Array, pose: Pose) => void;

/** What stops the blank along the fence: a side stop, or a dowel. */
export interface Slide {
  readonly load: (draws: Float64Array, i: number, shape: Float64Array) => void;
  /**
   * Where the blank then lies along `a`, mm (`Pose.backA`), when it is turned by that cosine and sine, rests on the
   * fence so that its place across is `c + k` times the one along, and lay at `backB` a pass ago.
   */
  readonly along: (cos: number, sin: number, c: number, k: number, backB: number) => number;
  /** Play left on each side after that, mm, as in `Pose`. */
  readonly spareMm: () => number;
}

/** One placing that is pushed against a fence. */
export interface Pushed {
  readonly job: Job;
  readonly fence: Fence;
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly faces: Faces;
  readonly slide: Slide;
}

/**
 * Seats the blank: pushed on the fence first (two contacts give the angle and one offset), then
 * slid along it until the slide stops it; then give and clamp drag move it.
 *
 * Contacts are points at their nominal distance along the real faces (the radius of a round pin is
 * neglected). An edge stands out from its line by sag, bump, seat gap and bevel, all taken along the blank's
 * axis; along the face's normal they would differ by the square of the lean.
 */
export function seatOf(
  { job, fence: onFence, placing, frame, faces, slide }: Pushed,
  columns: Columns,
  touching: (placing: Placing, contact: Contact) => ContactColumns,
): Seat {
  const key = placingKey(placing.faceUp);
  const felt = bevelFelt(onFence.band, placing.faceUp);
  const thick = columns.of({ kind: 'thickness' });
  const fence = edgeInFrame(placing.base.edge, frame.blankAlongSign, frame.lengthMm, columns);
  const aOf = (contact: Contact): number =>
    frame.alongSign * (contact.at[frame.along] - frame.origin[frame.along]);
  const fenceContacts = placing.contacts.filter((contact) => contact.face === 'fence');
  fenceContacts.sort((one, other) => aOf(one) - aOf(other));
  const [f1, f2] = [fenceContacts[0]!, fenceContacts[1]!];
  const [p1, p2] = [aOf(f1), aOf(f2)];
  const [at1, at2] = [touching(placing, f1), touching(placing, f2)];
  const rock = f1.kind === 'arm-end' ? columns.of({ kind: 'rock', placing: key }) : null;
  // A button falls into a hollow spot; an arm rests on the edge beside it.
  const floor = f1.kind === 'arm-end' ? 0 : -Infinity;
  const give = columns.of({ kind: 'give', placing: key, face: 'fence' });
  const { cornerA } = frame;
  const dragSide =
    placing.sideStop === null
      ? null
      : columns.of({ kind: 'clamp-drag', placing: key, from: 'side' });
  const dragFence = columns.of({ kind: 'clamp-drag', placing: key, from: 'fence' });

  return (draws, i, shape, pose) => {
    const feltFence = felt(draws[fence.bevel + i]!, job.blank.thickMm + draws[thick + i]!);
    slide.load(draws, i, shape);

    // The blank's edge as a line of the blank, in seat-frame directions.
    const k = -shape[fence.at + 1]! * fence.sign;
    const f0 = -(shape[fence.at]! + shape[fence.at + 1]! * fence.from);
    const curve = shape[fence.at + 2]!;
    const span = shape[fence.at + 3]!;

    // The contacts on the real face.
    const step = 1 / Math.sqrt(1 + faces.fenceSlope * faces.fenceSlope);
    const p1a = cornerA + (p1 - cornerA) * step;
    const p2a = cornerA + (p2 - cornerA) * step;
    const p1b = faces.fence + faces.fenceSlope * p1a - draws[give + i]!;
    const p2b = faces.fence + faces.fenceSlope * p2a - draws[give + i]!;
    const da = p2a - p1a;
    const db = p2b - p1b;
    const big = da + k * db;
    const small = k * da - db;
    const square = big * big + small * small;
    const e1 = Math.max(floor, draws[at1.bump + i]! + draws[at1.gap + i]!);
    const e2 = Math.max(floor, draws[at2.bump + i]! + draws[at2.gap + i]!);

    let cos = 1;
    let sin = 0;
    let backA = 0;
    let backB = 0;
    for (let pass = 0; pass < PASSES; pass++) {
      // How far the edge stands out at the two contacts.
      const a1 = cos * p1a + sin * p1b - backA;
      const a2 = cos * p2a + sin * p2b - backA;
      const t1 = fence.from + fence.sign * a1;
      const t2 = fence.from + fence.sign * a2;
      let o1 = curve * t1 * (span - t1) + e1;
      let o2 = curve * t2 * (span - t2) + e2;
      if (rock !== null && curve > 0) {
        // A bulging edge rests on the arm between the tangents from its two (raised) ends and rocks.
        const from = a1 + Math.sqrt(e1 / curve);
        const to = a2 - Math.sqrt(e2 / curve);
        if (from < to) {
          const rest = from + draws[rock + i]! * (to - from);
          const t = fence.from + fence.sign * rest;
          const slope = fence.sign * curve * (span - 2 * t);
          const out = curve * t * (span - t);
          o1 = out + slope * (a1 - rest);
          o2 = out + slope * (a2 - rest);
        }
      }
      // Turn: the edge's line through both contacts.
      const g = o2 - o1;
      const root = Math.sqrt(square - g * g);
      sin = (big * g - small * root) / square;
      cos = (small * g + big * root) / square;
      const c = cos * p1b - sin * p1a - k * (cos * p1a + sin * p1b) - f0 + o1 + feltFence;
      const nextA = slide.along(cos, sin, c, k, backB);
      const nextB = c + k * nextA;
      const change = Math.abs(nextA - backA) + Math.abs(nextB - backB);
      backA = nextA;
      backB = nextB;
      if (change < SETTLED_MM) break;
    }
    const fromSide = dragSide === null ? 0 : draws[dragSide + i]!;
    pose.spareMm = slide.spareMm();
    pose.cos = cos;
    pose.sin = sin;
    pose.backA = backA + (cos * fromSide + sin * draws[dragFence + i]!);
    pose.backB = backB + (cos * draws[dragFence + i]! - sin * fromSide);
  };
}
