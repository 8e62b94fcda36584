import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import { boxAround } from './label-room.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Way } from './locating/way.ts';
import { inOrder, markCorner } from './places.ts';
import type { Placings } from '../sweep/clearances.ts';
import type { Spot } from './svg.ts';
import { ACCENT, INK, arrow, dot, drawing, textAt } from './svg.ts';
import { turningBoard } from './turning-board.ts';
import { markSign } from './zero-drawing.ts';

const WIDTH_MM = 186;
const PLAN_MM = 46;
/** Room for the turning board, whatever the blank's shape. */
const LEAST_MM = 38;

/** The blank before, while and after it is turned over, seen by the operator; not to scale. */
export function turnDrawing(job: Job, placings: Placings, way: Way): Html {
  const [first, second] = inOrder(job, placings);
  const left = PLAN_MM / 2 + 4;
  const right = WIDTH_MM - left;
  const tall = Math.max(LEAST_MM, sketchSize(job.blank.widthMm, job.blank.heightMm)[1]);
  const middle = 9 + tall / 2;
  const foot = 9 + tall + 6;
  return drawing(
    'how the blank is turned over',
    WIDTH_MM,
    foot + 2,
    joined([
      plan(job, way, first, { x: left, y: middle }, 'FIRST PLACING', foot),
      turningBoard(job, { x: WIDTH_MM / 2, y: middle }, foot),
      plan(job, way, second, { x: right, y: middle }, 'SECOND PLACING', foot),
      arrow({ x: left + 27, y: middle }, { x: left + 37, y: middle }, 1.4, ACCENT),
      arrow({ x: right - 37, y: middle }, { x: right - 27, y: middle }, 1.4, ACCENT),
    ]),
  );
}

/** A small plan: which face, where the M is, which edge is at the fence. */
function plan(job: Job, way: Way, placing: Placing, at: Spot, title: string, footMm: number): Html {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  const [w, h] = sketchSize(highX - lowX, highY - lowY);
  const [x, y] = [at.x - w / 2, at.y - h / 2];
  const spot = (p: Point<'layout'>): Spot => ({
    x: x + ((p.x - lowX) / (highX - lowX)) * w,
    y: y + h - ((p.y - lowY) / (highY - lowY)) * h,
  });
  const corner = markCorner(job, placing);
  const markX = corner.endsWith('left') ? x + 4.4 : x + w - 4.4;
  const markY = corner.startsWith('far') ? y + 4.4 : y + h - 4.4;
  return joined([
    textAt({ x: at.x, y: 5 }, title, { sizeMm: 3.8, weight: 700, anchor: 'middle' }),
    markup`<rect x="${dot(x)}" y="${dot(y)}" width="${dot(w)}" height="${dot(h)}" fill="#ffffff" stroke="${INK}" stroke-width="0.6"/>`,
    way.in(placing).sketch({ box: { x, y, width: w, height: h }, spot }),
    markSign(boxAround(markX, markY, 6, 6)),
    textAt({ x: at.x, y: at.y + 1.6 }, placing.faceUp.toUpperCase(), {
      sizeMm: 4.6,
      weight: 700,
      anchor: 'middle',
    }),
    textAt({ x: at.x, y: footMm }, `M at the ${corner}`, {
      sizeMm: 3.8,
      weight: 700,
      anchor: 'middle',
    }),
  ]);
}

/** Drawn no longer than 46 mm, no narrower than 23 mm. */
function sketchSize(widthMm: number, heightMm: number): [number, number] {
  const share = Math.min(2, Math.max(0.5, widthMm / heightMm));
  return share > 1 ? [PLAN_MM, PLAN_MM / share] : [PLAN_MM * share, PLAN_MM];
}
