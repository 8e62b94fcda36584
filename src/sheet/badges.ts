import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import { featureOnPaper } from './blank-drawing.ts';
import type { Field } from './field.ts';
import { onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box, Candidate } from './label-room.ts';
import { boxAround, roomFor } from './label-room.ts';
import type { SheetStop } from './sheet-input.ts';
import { isInside } from './stop-use.ts';
import type { Spot } from './svg.ts';
import { INK, dot, textAt } from './svg.ts';

/** The number of each feature and the letter of each stop, where they cover no other label. */
export function badges(
  job: Job,
  placing: Placing,
  stops: readonly SheetStop[],
  field: Field,
  taken: readonly Box[],
): Html {
  const boxes = [...taken];
  const drawn: Html[] = [];
  const put = (
    name: string,
    candidates: readonly Candidate[],
    shape: 'circle' | 'square',
  ): void => {
    const box = roomFor(candidates, boxes, field.box);
    boxes.push(box);
    drawn.push(badge(name, box, shape));
  };
  for (const [i, stop] of stops.entries()) put(stopLetter(i), insideStop(stop, field), 'square');
  for (const [i, feature] of job.features.entries())
    put(featureNumber(i), alongOutline(featureOnPaper(feature, job, placing, field)), 'circle');
  return joined(drawn);
}

export function stopLetter(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : `A${index - 25}`;
}

export function featureNumber(index: number): string {
  return String(index + 1);
}

const SIZE_MM = 5.4;

/** On the line itself, or beside it: the reader sees which line it belongs to. */
function alongOutline(outline: readonly Spot[]): Candidate[] {
  const centre = middleOf(outline);
  const spots = Array.from({ length: 24 }, (_, i) => outline[((i * outline.length) / 24) | 0]!);
  return spots.flatMap((spot) =>
    [0, 3, 6, -4, 10, 15, 22].map((out) => {
      const away = Math.hypot(spot.x - centre.x, spot.y - centre.y) || 1;
      const x = spot.x + ((spot.x - centre.x) / away) * out;
      const y = spot.y + ((spot.y - centre.y) / away) * out;
      // Up and to the right is where a reader looks first.
      const slant = Math.abs(spot.x - centre.x - (centre.y - spot.y)) / away;
      return { box: boxAround(x, y, SIZE_MM, SIZE_MM), cost: Math.abs(out) + slant };
    }),
  );
}

function insideStop(stop: SheetStop, field: Field): Candidate[] {
  const outline = stop.body.outline;
  const spots = outline.map((at) => onPaper(field, at));
  const xs = outline.map((at) => at.x);
  const ys = outline.map((at) => at.y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const steps = Array.from({ length: 33 }, (_, i) => i / 32);
  const grid = steps.flatMap((u) =>
    steps.map((v) => ({ x: x0 + u * (x1 - x0), y: y0 + v * (y1 - y0) })),
  );
  const centre = middleOf(spots);
  return [...grid.filter((at) => isInside(outline, at)), outline[0]!].map((at) => {
    const spot = onPaper(field, at);
    const edge = Math.min(...spots.map((c) => Math.hypot(c.x - spot.x, c.y - spot.y)));
    const cost = Math.hypot(spot.x - centre.x, spot.y - centre.y) - Math.min(edge, SIZE_MM);
    return { box: boxAround(spot.x, spot.y, SIZE_MM, SIZE_MM), cost };
  });
}

function middleOf(spots: readonly Spot[]): Spot {
  const xs = spots.map((spot) => spot.x);
  const ys = spots.map((spot) => spot.y);
  return {
    x: (Math.min(...xs) + Math.max(...xs)) / 2,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
}

function badge(name: string, box: Box, shape: 'circle' | 'square'): Html {
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const frame =
    shape === 'circle'
      ? markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${SIZE_MM / 2}" fill="#ffffff" stroke="${INK}" stroke-width="0.4"/>`
      : markup`<rect x="${dot(box.x)}" y="${dot(box.y)}" width="${SIZE_MM}" height="${SIZE_MM}" fill="${INK}"/>`;
  const fill = shape === 'circle' ? INK : '#ffffff';
  return joined([
    frame,
    textAt({ x, y: y + 1.25 }, name, {
      sizeMm: name.length > 1 ? 3 : 3.5,
      weight: 700,
      anchor: 'middle',
      fill,
    }),
  ]);
}
