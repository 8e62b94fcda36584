import { invariant } from '../num/invariant.ts';
import type { Face, Job, ZeroXy } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { edgeShapes } from './edges.ts';
import { facesOf, type Faces, type LoadFaces } from './faces.ts';
import { blankInLayout, placingsOf } from './place.ts';
import type { Placing } from './placing.ts';
import { newPose, type Pose } from './pose.ts';
import { seatOf, type Seat } from './seat.ts';
import { seatFrameOf, type SeatFrame } from './seat-frame.ts';
import { contactColumns } from './touching.ts';
import { holeFinder } from './zero-hole.ts';
import { zeroFinder, type ZeroFinder, type ZeroFound } from './zero.ts';

/**
 * One blank turned over: seats both placings in trial `i`, then tells where cuts land.
 * This is the model of registration.md, written once; plain arithmetic only, so that every
 * JavaScript engine gives the same bits.
 */
export interface TurnOver {
  /** Seats and zeroes both placings with the draws of trial `i`. */
  readonly lay: (draws: Float64Array, i: number) => void;
  /**
   * How far a cut commanded at a nominal blank place lands from it, in the blank frame as cut in
   * the first placing, mm; of the trial laid last. Written to `x`, `y`.
   */
  readonly landing: (cut: string, face: Face, at: Point<'blank'>) => Landing;
}

export interface Landing {
  readonly x: () => number;
  readonly y: () => number;
  readonly locate: (draws: Float64Array, i: number) => void;
}

interface Laid {
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly seat: Seat;
  readonly loadFaces: LoadFaces;
  readonly zero: ZeroFinder;
  readonly pose: Pose;
  readonly faces: Faces;
  readonly found: ZeroFound;
}

export function turnOverOf(job: Job, columns: Columns): TurnOver {
  const { frontUp, backUp } = placingsOf(job);
  const touching = contactColumns([frontUp, backUp], columns);
  const [one, two] = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  const edges = edgeShapes(job, columns);
  const zeros = { front: job.zero.frontUp.xy, back: job.zero.backUp.xy };
  const strainX = columns.of({ kind: 'movement', axis: 'x' });
  const strainY = columns.of({ kind: 'movement', axis: 'y' });

  const prepare = (placing: Placing, before: Laid | null): Laid => {
    const frame = seatFrameOf(job, placing);
    const xy = zeros[placing.faceUp];
    invariant(
      (xy.kind !== 'kept' && xy.kind !== 'hole') || before !== null,
      'the first placing has no zero to keep and no hole to find',
    );
    return {
      placing,
      frame,
      seat: seatOf(job, placing, frame, columns, touching),
      loadFaces: facesOf(job, frame, columns),
      zero:
        xy.kind === 'kept'
          ? before!.zero
          : xy.kind === 'hole'
            ? inHole(placing, frame, before!, xy)
            : zeroFinder(job, placing, frame, xy, columns),
      pose: newPose(),
      faces: { fence: 0, fenceSlope: 0, side: 0, sideSlope: 0 },
      found: { dx: 0, dy: 0 },
    };
  };
  /** The hole lies where the first placing really cut it, in wood that has moved since. */
  const inHole = (
    placing: Placing,
    frame: SeatFrame,
    before: Laid,
    xy: Extract<ZeroXy, { kind: 'hole' }>,
  ): ZeroFinder => {
    const feature = job.features.find(({ name }) => name === xy.feature);
    invariant(feature !== undefined, `no feature ${xy.feature}`);
    const cut = landingOn(job, before, null, `feature ${feature.name}`, feature.at, columns);
    return holeFinder(job, placing, frame, { cut, at: feature.at, strainX, strainY }, columns);
  };

  const first = prepare(one, null);
  const second = prepare(two, first);
  const secondXy = zeros[two.faceUp];
  const kept = secondXy.kind === 'kept';
  const returns =
    secondXy.kind === 'kept' && secondXy.how !== 'held'
      ? {
          x: columns.of({ kind: 'zero-return', axis: 'x' }),
          y: columns.of({ kind: 'zero-return', axis: 'y' }),
        }
      : null;

  const lay = (draws: Float64Array, i: number): void => {
    edges.load(draws, i);
    settle(first, draws, i, edges.shape);
    first.zero.find(draws, i, edges.shape, first.faces, first.pose, first.found);
    edges.swell(draws, i, draws[strainX + i]!, draws[strainY + i]!);
    settle(second, draws, i, edges.shape);
    if (kept) {
      second.found.dx = first.found.dx + (returns === null ? 0 : draws[returns.x + i]!);
      second.found.dy = first.found.dy + (returns === null ? 0 : draws[returns.y + i]!);
    } else {
      second.zero.find(draws, i, edges.shape, second.faces, second.pose, second.found);
    }
  };

  const landing = (cut: string, face: Face, at: Point<'blank'>): Landing => {
    const laid = first.placing.faceUp === face ? first : second;
    const strains = laid === second ? { x: strainX, y: strainY } : null;
    return landingOn(job, laid, strains, cut, at, columns);
  };
  return { lay, landing };
}

function settle(laid: Laid, draws: Float64Array, i: number, shape: Float64Array): void {
  laid.loadFaces(draws, i, laid.faces);
  laid.seat(draws, i, shape, laid.faces, laid.pose);
}

/** Source: registration.md section 1, "a cut commanded at (u, v)", and rules 2, 6, 16, 17. */
function landingOn(
  job: Job,
  laid: Laid,
  strains: { readonly x: number; readonly y: number } | null,
  cut: string,
  at: Point<'blank'>,
  columns: Columns,
): Landing {
  const { frame, pose, found } = laid;
  const { anchor } = laid.zero;
  const place = blankInLayout(job, laid.placing.mirror, at);
  const lean = columns.of({ kind: 'machine-lean' });
  const scaleX = columns.of({ kind: 'scale', axis: 'x' });
  const scaleY = columns.of({ kind: 'scale', axis: 'y' });
  const cutterX = columns.of({ kind: 'cutter-lean', axis: 'x' });
  const cutterY = columns.of({ kind: 'cutter-lean', axis: 'y' });
  const thick = columns.of({ kind: 'thickness' });
  const noise = (axis: Axis): [number, number] => [
    columns.of({ kind: 'repeatability', cut, axis }),
    columns.of({ kind: 'lost-motion', cut, axis }),
  ];
  const [repeatX, lostX] = noise('x');
  const [repeatY, lostY] = noise('y');
  const fromX = place.x - anchor.x;
  const fromXAtY = place.y - anchor.xAtY;
  const fromY = place.y - anchor.y;
  const across: Axis = frame.along === 'x' ? 'y' : 'x';
  const nominalA = frame.alongSign * (place[frame.along] - frame.origin[frame.along]);
  const nominalB = frame.inwardSign * (place[across] - frame.origin[across]);
  let x = 0;
  let y = 0;
  return {
    x: () => x,
    y: () => y,
    locate: (draws, i) => {
      const above = job.blank.thickMm + draws[thick + i]! - anchor.heightMm;
      const dx =
        found.dx +
        draws[scaleX + i]! * fromX +
        draws[lean + i]! * fromXAtY +
        draws[repeatX + i]! +
        draws[lostX + i]! +
        draws[cutterX + i]! * above;
      const dy =
        found.dy +
        draws[scaleY + i]! * fromY +
        draws[repeatY + i]! +
        draws[lostY + i]! +
        draws[cutterY + i]! * above;
      const da = frame.alongSign * (frame.along === 'x' ? dx : dy);
      const db = frame.inwardSign * (frame.along === 'x' ? dy : dx);
      // cos - 1 without losing its digits.
      const less = -(pose.sin * pose.sin) / (1 + pose.cos);
      const a = less * nominalA + pose.sin * nominalB + pose.cos * da + pose.sin * db - pose.backA;
      const b = less * nominalB - pose.sin * nominalA + pose.cos * db - pose.sin * da - pose.backB;
      const inBlankA = frame.blankAlongSign * a;
      const inBlankB = frame.blankInwardSign * b;
      x = frame.along === 'x' ? inBlankA : inBlankB;
      y = frame.along === 'x' ? inBlankB : inBlankA;
      if (strains !== null) {
        const growX = draws[strains.x + i]!;
        const growY = draws[strains.y + i]!;
        x = (x - growX * at.x) / (1 + growX);
        y = (y - growY * at.y) / (1 + growY);
      }
    },
  };
}
