import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { blankInLayout } from './place.ts';
import type { Placing } from './placing.ts';
import type { Pose } from './pose.ts';
import type { SeatFrame } from './seat-frame.ts';
import { strikeOf } from './strike.ts';
import type { ZeroAnchor, ZeroFound } from './zero.ts';
import type { Strains } from './wood-moves.ts';

/** How far a cut lands from its nominal blank place, mm, blank frame as cut in the first placing. */
export interface Landing {
  readonly x: () => number;
  readonly y: () => number;
  readonly locate: (draws: Float64Array, i: number) => void;
}

/** One placing of one blank, with where it lies and where its zero was found in the trial at hand. */
export interface Laid {
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly anchor: ZeroAnchor;
  readonly pose: Pose;
  readonly found: ZeroFound;
}

/** A cut, the height at which its place is taken, and the strains of the wood since the first placing. */
export interface CutAt {
  readonly cut: string;
  readonly at: Point<'blank'>;
  /** At the face that is cut, or, of a hole that a dowel fills, at half the thickness. */
  readonly height: 'face' | 'half';
  readonly strains: Strains | null;
}

/** Where a cut lands in the blank, through the machine's error, the zero and the pose of its placing. */
export function landingOn(
  job: Job,
  { placing, frame, anchor, pose, found }: Laid,
  { cut, at, height, strains }: CutAt,
  columns: Columns,
): Landing {
  const place = blankInLayout(job, placing.mirror, at);
  const strike = strikeOf(job, { anchor, found, cut }, place, columns);
  const thick = columns.of({ kind: 'thickness' });
  const part = height === 'face' ? 1 : 0.5;
  const across: Axis = frame.along === 'x' ? 'y' : 'x';
  const nominalA = frame.alongSign * (place[frame.along] - frame.origin[frame.along]);
  const nominalB = frame.inwardSign * (place[across] - frame.origin[across]);
  let x = 0;
  let y = 0;
  return {
    x: () => x,
    y: () => y,
    locate: (draws, i) => {
      strike.load(draws, i, part * (job.blank.thickMm + draws[thick + i]!) - anchor.heightMm);
      const dx = strike.x();
      const dy = strike.y();
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
        const growX = strains.x;
        const growY = strains.y;
        x = (x - growX * at.x) / (1 + growX);
        y = (y - growY * at.y) / (1 + growY);
      }
    },
  };
}
