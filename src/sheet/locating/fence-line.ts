import type { Side } from '../../setup/placing.ts';
import type { Html } from '../html.ts';
import { markup } from '../html.ts';
import type { Box } from '../label-room.ts';
import type { Spot } from '../svg.ts';
import { ACCENT, INK, dot, pointsText } from '../svg.ts';

/** A row of slanting strokes along the side where the fence stands. */
export function fenceLine(side: Side, { x, y, width: w, height: h }: Box): Html {
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
