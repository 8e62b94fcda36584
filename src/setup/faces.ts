import type { Cutter, Job, Made } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { localError } from './local-error.ts';
import { cornerAt, frontUpCorner } from './place.ts';
import type { SeatFrame } from './seat-frame.ts';

/**
 * The real faces of fence and side stop in the seat frame of one placing:
 * the fence is `b = fence + fenceSlope * a`, the side stop `a = side + sideSlope * b`.
 */
export interface Faces {
  fence: number;
  fenceSlope: number;
  side: number;
  sideSlope: number;
}

export type LoadFaces = (draws: Float64Array, i: number, faces: Faces) => void;

/**
 * How the faces stand in one placing. They belong to the stops, so both placings read the same
 * draws; the second side stop is worked out in the frame of the first and then seen from its own.
 */
export function facesOf(job: Job, made: Made, frame: SeatFrame, columns: Columns): LoadFaces {
  const load =
    made.kind === 'milled-in-place'
      ? milled(job, made.cutter, frame, columns)
      : set(frame, columns);
  if (!frame.onSecondStop) return load;
  return (draws, i, faces) => {
    load(draws, i, faces);
    faces.fence += faces.fenceSlope * frame.lengthMm;
    faces.fenceSlope = -faces.fenceSlope;
    faces.side = frame.lengthMm - faces.side;
    faces.sideSlope = -faces.sideSlope;
  };
}

/** Handedness of the frame that starts at the first side stop. */
function stopsHand(frame: SeatFrame): number {
  return frame.onSecondStop ? -frame.hand : frame.hand;
}

/**
 * Set by hand, or standing on pins: the fence is turned by `fence-angle` (counter-clockwise on the
 * machine) about the front-up corner; each side stop leans over the blank by its own `stop-square`;
 * the second stands `spacing` too far along the fence. Where the corner itself stands has no effect:
 * every zero is found from the stops or from the blank.
 */
function set(frame: SeatFrame, columns: Columns): LoadFaces {
  const which = frame.onSecondStop ? 'second' : 'first';
  const angle = columns.of({ kind: 'fence-angle' });
  const square = columns.of({ kind: 'stop-square', which });
  const spacing = frame.onSecondStop ? columns.of({ kind: 'spacing' }) : null;
  const hand = stopsHand(frame);
  const lean = frame.onSecondStop ? -1 : 1;
  return (draws, i, faces) => {
    const slope = hand * draws[angle + i]!;
    const psi = lean * draws[square + i]!;
    const alongMm = spacing === null ? 0 : frame.lengthMm + draws[spacing + i]!;
    const cornerA = alongMm / Math.sqrt(1 + slope * slope);
    const cornerB = slope * cornerA;
    faces.fence = 0;
    faces.fenceSlope = slope;
    faces.sideSlope = (psi - slope) / (1 + psi * slope);
    faces.side = cornerA - faces.sideSlope * cornerB;
  };
}

/**
 * Milled in place: faces along the machine's own axes from the zero of milling, each deeper by the
 * effective radius error of the cutter that milled it, with its own repeatability along its normal.
 * Machine X is the reference direction; only a face along Y leans.
 */
function milled(job: Job, cutter: Cutter, frame: SeatFrame, columns: Columns): LoadFaces {
  const hand = stopsHand(frame);
  const loadFence = milledFence(cutter, frame, hand, columns);
  const radius = columns.of({ kind: 'cutter-radius', cutter: cutter.name });
  const lean = columns.of({ kind: 'machine-lean' });
  const scale = columns.of({ kind: 'scale', axis: frame.along });
  const scaleY = columns.of({ kind: 'scale', axis: 'y' });
  const noise = columns.of({
    kind: 'milled-face',
    face: frame.onSecondStop ? 'side-second' : 'side-first',
  });
  const sideAlongY = frame.along === 'x';
  // The second side stop is milled at another place of the travel than the first.
  const from = cornerAt(job, frontUpCorner(job))[frame.along];
  const away = -frame.alongSign;
  const to = from + (frame.onSecondStop ? away * frame.lengthMm : 0);
  const local = localError(job, frame.along, to, from, columns);
  return (draws, i, faces) => {
    loadFence(draws, i, faces);
    const leans = sideAlongY ? draws[lean + i]! / (1 + draws[scaleY + i]!) : 0;
    const deeper = (draws[radius + i]! + draws[noise + i]!) * Math.sqrt(1 + leans * leans);
    const placed = frame.onSecondStop
      ? frame.lengthMm + draws[scale + i]! * frame.lengthMm + away * local(draws, i)
      : 0;
    faces.sideSlope = hand * leans;
    faces.side = frame.onSecondStop ? placed + deeper : placed - deeper;
  };
}

/** The same for a fence that has no side stop; `side` and `sideSlope` stay as they are. */
export function fenceFaceOf(made: Made, frame: SeatFrame, columns: Columns): LoadFaces {
  const load =
    made.kind === 'milled-in-place'
      ? milledFence(made.cutter, frame, frame.hand, columns)
      : setFence(frame, columns);
  return (draws, i, faces) => {
    load(draws, i, faces);
    faces.fence -= faces.fenceSlope * frame.cornerA;
  };
}

function setFence(frame: SeatFrame, columns: Columns): LoadFaces {
  const angle = columns.of({ kind: 'fence-angle' });
  return (draws, i, faces) => {
    faces.fence = 0;
    faces.fenceSlope = frame.hand * draws[angle + i]!;
  };
}

/** Leaning right is clockwise, so a fence along Y turns against the hand of the stops. */
function milledFence(cutter: Cutter, frame: SeatFrame, hand: number, columns: Columns): LoadFaces {
  const radius = columns.of({ kind: 'cutter-radius', cutter: cutter.name });
  const noise = columns.of({ kind: 'milled-face', face: 'fence' });
  const alongX = frame.along === 'x';
  const lean = alongX ? null : columns.of({ kind: 'machine-lean' });
  const scaleY = alongX ? null : columns.of({ kind: 'scale', axis: 'y' });
  return (draws, i, faces) => {
    const leans =
      lean === null || scaleY === null ? 0 : draws[lean + i]! / (1 + draws[scaleY + i]!);
    faces.fenceSlope = -hand * leans;
    faces.fence = -(draws[radius + i]! + draws[noise + i]!) * Math.sqrt(1 + leans * leans);
  };
}
