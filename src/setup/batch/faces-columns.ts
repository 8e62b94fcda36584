import type { Cutter, Job, Made } from '../../job/job.ts';
import { BATCH } from '../../num/batch.ts';
import type { Columns } from '../columns.ts';
import { localPartsOf } from '../local-error.ts';
import { cornerAt, frontUpCorner } from '../place.ts';
import type { SeatFrame } from '../seat-frame.ts';

/** The real faces of the stops in one placing as in `Faces`, a column each of the four numbers. */
export interface FacesColumns {
  readonly fence: Float64Array;
  readonly fenceSlope: Float64Array;
  readonly side: Float64Array;
  readonly sideSlope: Float64Array;
  readonly load: (draws: Float64Array, count: number) => void;
}

type Faces = Omit<FacesColumns, 'load'>;
type FillFaces = (draws: Float64Array, count: number, faces: Faces) => void;

/** The same as `facesOf`, over columns. */
export function facesColumns(
  job: Job,
  made: Made,
  frame: SeatFrame,
  columns: Columns,
): FacesColumns {
  const faces: Faces = {
    fence: new Float64Array(BATCH),
    fenceSlope: new Float64Array(BATCH),
    side: new Float64Array(BATCH),
    sideSlope: new Float64Array(BATCH),
  };
  const fill =
    made.kind === 'milled-in-place'
      ? milled(job, made.cutter, frame, columns)
      : set(frame, columns);
  return {
    ...faces,
    load: (draws, count) => {
      fill(draws, count, faces);
      if (frame.onSecondStop) fromSecond(faces, frame.lengthMm, count);
    },
  };
}

function fromSecond(
  { fence, fenceSlope, side, sideSlope }: Faces,
  lengthMm: number,
  count: number,
): void {
  for (let i = 0; i < count; i++) {
    fence[i] = fence[i]! + fenceSlope[i]! * lengthMm;
    fenceSlope[i] = -fenceSlope[i]!;
    side[i] = lengthMm - side[i]!;
    sideSlope[i] = -sideSlope[i]!;
  }
}

const stopsHand = ({ onSecondStop, hand }: SeatFrame): number => (onSecondStop ? -hand : hand);

function set(frame: SeatFrame, columns: Columns): FillFaces {
  const { onSecondStop, lengthMm } = frame;
  const angle = columns.of({ kind: 'fence-angle' });
  const square = columns.of({ kind: 'stop-square', which: onSecondStop ? 'second' : 'first' });
  const spacing = onSecondStop ? columns.of({ kind: 'spacing' }) : 0;
  const hand = stopsHand(frame);
  const lean = onSecondStop ? -1 : 1;
  return (draws, count, { fence, fenceSlope, side, sideSlope }) => {
    for (let i = 0; i < count; i++) {
      const slope = hand * draws[angle + i]!;
      const psi = lean * draws[square + i]!;
      const alongMm = onSecondStop ? lengthMm + draws[spacing + i]! : 0;
      const cornerA = alongMm / Math.sqrt(1 + slope * slope);
      const cornerB = slope * cornerA;
      const turned = (psi - slope) / (1 + psi * slope);
      fence[i] = 0;
      fenceSlope[i] = slope;
      sideSlope[i] = turned;
      side[i] = cornerA - turned * cornerB;
    }
  };
}

function milled(job: Job, cutter: Cutter, frame: SeatFrame, columns: Columns): FillFaces {
  const { onSecondStop, lengthMm } = frame;
  const hand = stopsHand(frame);
  const radius = columns.of({ kind: 'cutter-radius', cutter: cutter.name });
  const fenceNoise = columns.of({ kind: 'milled-face', face: 'fence' });
  const lean = columns.of({ kind: 'machine-lean' });
  const scaleY = columns.of({ kind: 'scale', axis: 'y' });
  const scale = columns.of({ kind: 'scale', axis: frame.along });
  const noise = columns.of({
    kind: 'milled-face',
    face: onSecondStop ? 'side-second' : 'side-first',
  });
  const fenceAlongX = frame.along === 'x';
  const from = cornerAt(job, frontUpCorner(job))[frame.along];
  const away = -frame.alongSign;
  const to = from + (onSecondStop ? away * lengthMm : 0);
  const local = localPartsOf(job, frame.along, to, from, columns);
  return (draws, count, { fence, fenceSlope, side, sideSlope }) => {
    for (let i = 0; i < count; i++) {
      const leans = draws[lean + i]! / (1 + draws[scaleY + i]!);
      const long = Math.sqrt(1 + leans * leans);
      const bare = draws[radius + i]!;
      const [ofFence, ofSide] = [fenceAlongX ? 0 : leans, fenceAlongX ? leans : 0];
      fenceSlope[i] = -hand * ofFence;
      fence[i] = -(bare + draws[fenceNoise + i]!) * (fenceAlongX ? 1 : long);
      const deeper = (bare + draws[noise + i]!) * (fenceAlongX ? long : 1);
      sideSlope[i] = hand * ofSide;
      if (!onSecondStop) {
        side[i] = 0 - deeper;
        continue;
      }
      const off =
        local === null
          ? 0
          : local.low * draws[local.atLow + i]! +
            local.high * draws[local.atHigh + i]! -
            (local.fromLow * draws[local.atFromLow + i]! +
              local.fromHigh * draws[local.atFromHigh + i]!);
      side[i] = lengthMm + draws[scale + i]! * lengthMm + away * off + deeper;
    }
  };
}
