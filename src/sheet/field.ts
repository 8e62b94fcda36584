import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import type { Box } from './label-room.ts';
import { pieceOf, type Piece } from '../sweep/piece.ts';
import type { Spot } from './svg.ts';
import { touchPlaces } from './touch-places.ts';

/** How the layout frame lies on the drawing paper. */
export interface Field {
  /** `2.5` for a drawing of 1 : 2.5. */
  readonly reduction: number;
  /** Where the near-left corner of the rectangle is drawn. */
  readonly origin: Spot;
  /** All that is drawn of the bed. */
  readonly box: Box;
}

/** Arrows of the zero reach this far on paper, mm. */
export const ARROW_MM = 13;
const ARROW_AND_LETTER_MM = ARROW_MM + 6;
const MARGIN_MM = 4;
/** Side labels beside a low field need this much height. */
const LEAST_HEIGHT_MM = 30;
const REDUCTIONS = [
  0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 10, 12, 15,
  20, 25, 30, 40,
];

/** The largest of the usual scales at which the blank, what locates it and the zero fit on `widthMm` x `heightMm` at `corner`. */
export function fieldFor(
  job: Job,
  placing: Placing,
  located: readonly Point<'layout'>[],
  corner: Spot,
  room: { readonly widthMm: number; readonly heightMm: number },
): Field {
  const touched = touchPlaces(job, placing).map(({ at }) => at);
  const world = reach(pieceOf(job, placing), [...located, ...touched]);
  const fits = REDUCTIONS.map((reduction) => paperReach(world, placing, reduction));
  const chosen =
    fits.find((r) => r.right - r.left <= room.widthMm && r.far - r.near <= room.heightMm) ??
    fits.at(-1)!;
  const slackX = Math.max(0, room.widthMm - (chosen.right - chosen.left)) / 2;
  const slackY = Math.max(0, LEAST_HEIGHT_MM - (chosen.far - chosen.near)) / 2;
  return {
    reduction: chosen.reduction,
    origin: { x: corner.x + slackX - chosen.left, y: corner.y + slackY + chosen.far },
    box: {
      x: corner.x,
      y: corner.y,
      width: room.widthMm,
      height: chosen.far - chosen.near + 2 * slackY,
    },
  };
}

export function onPaper(field: Field, at: Point<'layout'>): Spot {
  return {
    x: field.origin.x + at.x / field.reduction,
    y: field.origin.y - at.y / field.reduction,
  };
}

interface Reach {
  readonly left: number;
  readonly right: number;
  readonly near: number;
  readonly far: number;
}

function reach({ box }: Piece, points: readonly Point<'layout'>[]): Reach {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return {
    left: Math.min(box.lowX, ...xs),
    right: Math.max(box.highX, ...xs),
    near: Math.min(box.lowY, ...ys),
    far: Math.max(box.highY, ...ys),
  };
}

function paperReach(
  world: Reach,
  placing: Placing,
  reduction: number,
): Reach & { readonly reduction: number } {
  const { x, y } = placing.zero;
  return {
    reduction,
    left: Math.min(world.left, x) / reduction - MARGIN_MM,
    right: Math.max(world.right / reduction, x / reduction + ARROW_AND_LETTER_MM) + MARGIN_MM,
    near: Math.min(world.near, y) / reduction - MARGIN_MM,
    far: Math.max(world.far / reduction, y / reduction + ARROW_AND_LETTER_MM) + MARGIN_MM,
  };
}
