import type { Job } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import { BATCH } from '../../num/batch.ts';
import type { Columns } from '../columns.ts';
import type { Axis } from '../deviation.ts';
import { localPartsOf, type LocalParts } from '../local-error.ts';
import { blankInLayout } from '../place.ts';
import type { Placing } from '../placing.ts';
import type { SeatFrame } from '../seat-frame.ts';
import type { ZeroAnchor } from '../zero.ts';
import type { StrainColumns } from './edge-columns.ts';
import type { PoseColumns } from './seat-parts.ts';
import type { FoundColumns } from './zero-columns.ts';

/** One placing with a column each of its pose and of where its zero was found. */
export interface LaidColumns {
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly anchor: ZeroAnchor;
  readonly pose: PoseColumns;
  readonly found: FoundColumns;
}

/** How far a cut lands from its nominal blank place in each trial, as in `Landing`. */
export interface LandingColumns {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly load: (draws: Float64Array, count: number) => void;
}

/** The same as `landingOn` of a cut at the face that is cut, over columns. */
export function landingColumns(
  job: Job,
  { placing, frame, anchor, pose, found }: LaidColumns,
  { cut, at, strains }: { cut: string; at: Point<'blank'>; strains: StrainColumns | null },
  columns: Columns,
): LandingColumns {
  const place = blankInLayout(job, placing.mirror, at);
  const lean = columns.of({ kind: 'machine-lean' });
  const scaleX = columns.of({ kind: 'scale', axis: 'x' });
  const scaleY = columns.of({ kind: 'scale', axis: 'y' });
  const cutterX = columns.of({ kind: 'cutter-lean', axis: 'x' });
  const cutterY = columns.of({ kind: 'cutter-lean', axis: 'y' });
  const repeatX = columns.of({ kind: 'repeatability', cut, axis: 'x' });
  const lostX = columns.of({ kind: 'lost-motion', cut, axis: 'x' });
  const repeatY = columns.of({ kind: 'repeatability', cut, axis: 'y' });
  const lostY = columns.of({ kind: 'lost-motion', cut, axis: 'y' });
  const localX = localPartsOf(job, 'x', place.x, anchor.x, columns);
  const localY = localPartsOf(job, 'y', place.y, anchor.y, columns);
  const thick = columns.of({ kind: 'thickness' });
  const { thickMm } = job.blank;
  const fromX = place.x - anchor.x;
  const fromXAtY = place.y - anchor.xAtY;
  const fromY = place.y - anchor.y;
  const alongX = frame.along === 'x';
  const across: Axis = alongX ? 'y' : 'x';
  const { alongSign, inwardSign, blankAlongSign, blankInwardSign } = frame;
  const nominalA = alongSign * (place[frame.along] - frame.origin[frame.along]);
  const nominalB = inwardSign * (place[across] - frame.origin[across]);
  const x = new Float64Array(BATCH);
  const y = new Float64Array(BATCH);

  const from = {
    foundX: found.dx,
    foundY: found.dy,
    fromX,
    fromXAtY,
    fromY,
    lean,
    scaleX,
    scaleY,
    cutterX,
    cutterY,
    repeatX,
    lostX,
    repeatY,
    lostY,
    localX,
    localY,
    thick,
    thickMm,
    heightMm: anchor.heightMm,
  };
  const lies = {
    alongX,
    alongSign,
    inwardSign,
    blankAlongSign,
    blankInwardSign,
    nominalA,
    nominalB,
  };
  return {
    x,
    y,
    load: (draws, count) => {
      strike(from, draws, count, x, y);
      turnBack(lies, pose, count, x, y);
      if (strains === null) return;
      shrink(x, strains.x, at.x, count);
      shrink(y, strains.y, at.y, count);
    },
  };
}

/** What the machine, the zero and one cut are off by: columns of draws, and distances from where nothing is, mm. */
interface Strike {
  readonly foundX: Float64Array;
  readonly foundY: Float64Array;
  readonly fromX: number;
  readonly fromXAtY: number;
  readonly fromY: number;
  readonly lean: number;
  readonly scaleX: number;
  readonly scaleY: number;
  readonly cutterX: number;
  readonly cutterY: number;
  readonly repeatX: number;
  readonly lostX: number;
  readonly repeatY: number;
  readonly lostY: number;
  readonly localX: LocalParts | null;
  readonly localY: LocalParts | null;
  readonly thick: number;
  readonly thickMm: number;
  readonly heightMm: number;
}

/** How the seat frame lies, and where the cut is in it, mm. */
interface Lies {
  readonly alongX: boolean;
  readonly alongSign: number;
  readonly inwardSign: number;
  readonly blankAlongSign: number;
  readonly blankInwardSign: number;
  readonly nominalA: number;
  readonly nominalB: number;
}

/** Where each cut is off on the machine: as `strikeOf`. */
function strike(
  from: Strike,
  draws: Float64Array,
  count: number,
  x: Float64Array,
  y: Float64Array,
): void {
  const { foundX, foundY, fromX, fromXAtY, fromY, thick, thickMm, heightMm } = from;
  const { lean, scaleX, scaleY, cutterX, cutterY, localX, localY } = from;
  const { repeatX, lostX, repeatY, lostY } = from;
  for (let i = 0; i < count; i++) {
    const aboveMm = thickMm + draws[thick + i]! - heightMm;
    x[i] =
      foundX[i]! +
      draws[scaleX + i]! * fromX +
      draws[lean + i]! * fromXAtY +
      draws[repeatX + i]! +
      draws[lostX + i]! +
      (localX === null ? 0 : localOf(localX, draws, i)) +
      draws[cutterX + i]! * aboveMm;
    y[i] =
      foundY[i]! +
      draws[scaleY + i]! * fromY +
      draws[repeatY + i]! +
      draws[lostY + i]! +
      (localY === null ? 0 : localOf(localY, draws, i)) +
      draws[cutterY + i]! * aboveMm;
  }
}

/** The same as the blank sees it. */
function turnBack(
  lies: Lies,
  { cos: cosines, sin: sines, backA, backB }: PoseColumns,
  count: number,
  x: Float64Array,
  y: Float64Array,
): void {
  const { alongX, alongSign, inwardSign, blankAlongSign, blankInwardSign, nominalA, nominalB } =
    lies;
  for (let i = 0; i < count; i++) {
    const cos = cosines[i]!;
    const sin = sines[i]!;
    const dx = x[i]!;
    const dy = y[i]!;
    const da = alongSign * (alongX ? dx : dy);
    const db = inwardSign * (alongX ? dy : dx);
    // cos - 1 without losing its digits.
    const less = -(sin * sin) / (1 + cos);
    const a = less * nominalA + sin * nominalB + cos * da + sin * db - backA[i]!;
    const b = less * nominalB - sin * nominalA + cos * db - sin * da - backB[i]!;
    const inBlankA = blankAlongSign * a;
    const inBlankB = blankInwardSign * b;
    x[i] = alongX ? inBlankA : inBlankB;
    y[i] = alongX ? inBlankB : inBlankA;
  }
}

/** The wood as it was before it moved. */
function shrink(places: Float64Array, strains: Float64Array, at: number, count: number): void {
  for (let i = 0; i < count; i++) {
    const grow = strains[i]!;
    places[i] = (places[i]! - grow * at) / (1 + grow);
  }
}

function localOf(parts: LocalParts, draws: Float64Array, i: number): number {
  const { low, high, atLow, atHigh, fromLow, fromHigh, atFromLow, atFromHigh } = parts;
  return (
    low * draws[atLow + i]! +
    high * draws[atHigh + i]! -
    (fromLow * draws[atFromLow + i]! + fromHigh * draws[atFromHigh + i]!)
  );
}
