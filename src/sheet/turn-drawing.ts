import type { StopsJob } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import { boxAround } from './label-room.ts';
import { cornerAt, inLayout, markedCorner, placingOf } from './places.ts';
import type { Placings } from '../sweep/clearances.ts';
import type { Spot } from './svg.ts';
import { ACCENT, INK, arrow, dot, drawing, pointsText, textAt } from './svg.ts';
import { turningBoard } from './turning-board.ts';
import { markSign } from './zero-drawing.ts';

const WIDTH_MM = 186;
const PLAN_MM = 46;
/** Room for the turning board, whatever the blank's shape. */
const LEAST_MM = 38;

/** The blank before, while and after it is turned over, seen by the operator; not to scale. */
export function turnDrawing(job: StopsJob, placings: Placings): Html {
  const first = placingOf(placings, job.first);
  const second = placingOf(placings, job.first === 'front' ? 'back' : 'front');
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
      plan(job, first, { x: left, y: middle }, 'FIRST PLACING', foot),
      turningBoard(job, { x: WIDTH_MM / 2, y: middle }, foot),
      plan(job, second, { x: right, y: middle }, 'SECOND PLACING', foot),
      arrow({ x: left + 27, y: middle }, { x: left + 37, y: middle }, 1.4, ACCENT),
      arrow({ x: right - 37, y: middle }, { x: right - 27, y: middle }, 1.4, ACCENT),
    ]),
  );
}

/** A small plan: which face, where the M is, which edge is at the fence. */
function plan(job: StopsJob, placing: Placing, at: Spot, title: string, footMm: number): Html {
  const { widthMm, heightMm } = job.blank;
  const [w, h] = sketchSize(widthMm, heightMm);
  const [x, y] = [at.x - w / 2, at.y - h / 2];
  const corner = cornerAt(job, inLayout(job, placing, markedCorner(job)));
  const markX = corner.endsWith('left') ? x + 4.4 : x + w - 4.4;
  const markY = corner.startsWith('far') ? y + 4.4 : y + h - 4.4;
  return joined([
    textAt({ x: at.x, y: 5 }, title, { sizeMm: 3.8, weight: 700, anchor: 'middle' }),
    markup`<rect x="${dot(x)}" y="${dot(y)}" width="${dot(w)}" height="${dot(h)}" fill="#ffffff" stroke="${INK}" stroke-width="0.6"/>`,
    fenceLine(placing, x, y, w, h),
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

/** A row of slanting strokes along the side where the fence stands. */
function fenceLine(placing: Placing, x: number, y: number, w: number, h: number): Html {
  const side = placing.base.side;
  const level = side === 'near' || side === 'far';
  const length = level ? w : h;
  const strokes = Array.from({ length: Math.floor(length / 2.5) + 1 }, (_, i) => i * 2.5);
  const start: Spot = { x: side === 'right' ? x + w : x, y: side === 'near' ? y + h : y };
  const out = side === 'near' || side === 'right' ? 2.2 : -2.2;
  const path = strokes.map((t) =>
    level
      ? `M${dot(start.x + t)} ${dot(start.y)}l-1.2 ${out}`
      : `M${dot(start.x)} ${dot(start.y + t)}l${out} 1.2`,
  );
  const end = level ? { x: start.x + w, y: start.y } : { x: start.x, y: start.y + h };
  return markup`<path d="${path.join('')}" stroke="${ACCENT}" stroke-width="0.5" fill="none"/><polyline points="${pointsText([start, end])}" stroke="${INK}" stroke-width="1.1"/>`;
}
