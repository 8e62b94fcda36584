import type { Job } from '../job/job.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Spot } from './svg.ts';
import { ACCENT, INK, arrow, dot, pointsText, textAt } from './svg.ts';

/** A board standing on its turning line, the path of its free edge, and the words for it; `at` is the middle. */
export function turningBoard(job: Job, at: Spot, footMm: number): Html {
  const board = job.turn === 'about-y' ? ABOUT_Y : ABOUT_X;
  const base = { x: at.x, y: at.y + 9 };
  const spot = (p: Spatial): Spot => oblique(p, base);
  const corners = (angle: number): Spot[] =>
    [board.edge(angle, -1), board.edge(angle, 1), board.axis(1), board.axis(-1)].map(spot);
  const path = Array.from({ length: 41 }, (_, i) =>
    spot(board.edge(Math.PI * (0.95 - (0.9 * i) / 40), board.nearEnd)),
  );
  const axis = [board.axis(-1.7), board.axis(1.7)].map(spot);
  const dashed = { 'stroke-dasharray': '1.6 1.1' };
  return joined([
    markup`<polygon points="${pointsText(corners(Math.PI))}" fill="#ffffff" stroke="${INK}" stroke-width="0.5"/>`,
    markup`<polygon points="${pointsText(corners(0))}" fill="none" stroke="${INK}" stroke-width="0.35" stroke-dasharray="${dashed['stroke-dasharray']}"/>`,
    markup`<polygon points="${pointsText(corners(board.liftedRad))}" fill="#000000" fill-opacity="0.1" stroke="${INK}" stroke-width="0.7"/>`,
    markup`<polyline points="${pointsText(axis)}" fill="none" stroke="${INK}" stroke-width="0.6" stroke-dasharray="4 1 0.8 1"/>`,
    markup`<polyline points="${pointsText(path.slice(0, -2))}" fill="none" stroke="${ACCENT}" stroke-width="0.9"/>`,
    arrow(path.at(-3)!, path.at(-1)!, 0.9, ACCENT),
    textAt({ x: dot(at.x), y: 5 }, board.words, {
      sizeMm: 3.8,
      weight: 700,
      anchor: 'middle',
      fill: ACCENT,
    }),
    textAt({ x: dot(at.x), y: footMm }, board.change, {
      sizeMm: 3.8,
      weight: 700,
      anchor: 'middle',
    }),
  ]);
}

/** Right, away from the operator, up. */
interface Spatial {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function oblique({ x, y, z }: Spatial, base: Spot): Spot {
  return { x: base.x + x + 0.5 * y, y: base.y - z - 0.42 * y };
}

const FREE_MM = 19;
const HALF_AXIS_MM = 13;

/** Turning line from near to far: the left edge goes over to the right. */
const ABOUT_Y = {
  words: 'lift the left edge over to the right',
  change: 'LEFT and RIGHT change places',
  liftedRad: Math.PI * 0.66,
  nearEnd: -1,
  axis: (end: number): Spatial => ({ x: 0, y: end * HALF_AXIS_MM, z: 0 }),
  edge: (angle: number, end: number): Spatial => ({
    x: FREE_MM * Math.cos(angle),
    y: end * HALF_AXIS_MM,
    z: FREE_MM * Math.sin(angle),
  }),
};

/** Turning line from left to right: the near edge goes over to the far side. */
const ABOUT_X = {
  words: 'lift the near edge over to the far side',
  change: 'NEAR and FAR change places',
  liftedRad: Math.PI * 0.62,
  nearEnd: 1,
  axis: (end: number): Spatial => ({ x: end * HALF_AXIS_MM * 1.2, y: 0, z: 0 }),
  edge: (angle: number, end: number): Spatial => ({
    x: end * HALF_AXIS_MM * 1.2,
    y: FREE_MM * 1.2 * Math.cos(angle),
    z: FREE_MM * Math.sin(angle),
  }),
};
