import type { Job } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Placing } from '../setup/placing.ts';
import { featureOnPaper } from './blank-drawing.ts';
import type { Field } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box, Candidate } from './label-room.ts';
import { boxAround, roomFor } from './label-room.ts';
import type { Spot } from './svg.ts';
import { INK, dot, textAt } from './svg.ts';

/** The number of each feature, where it covers no other label. */
export function badges(job: Job, placing: Placing, field: Field, taken: readonly Box[]): Html {
  const boxes = [...taken];
  const drawn: Html[] = [];
  for (const [i, feature] of job.features.entries()) {
    const outline = featureOnPaper(feature, job, placing, field);
    const { box, spot } = roomFor(alongOutline(outline), boxes, field.box);
    boxes.push(box);
    drawn.push(leader(spot, box), badge(featureNumber(i), box, 'circle'));
  }
  return joined(drawn);
}

export function featureNumber(index: number): string {
  return String(index + 1);
}

/** Of a badge on paper, mm. */
export const SIZE_MM = 5.4;

interface OnLine extends Candidate {
  /** Where on the outline it belongs. */
  readonly spot: Spot;
}

/** On the line itself, or beside it with a leader: the reader sees which line it belongs to. */
function alongOutline(outline: readonly Spot[]): OnLine[] {
  const centre = middleOf(outline);
  const spots = Array.from({ length: 24 }, (_, i) => outline[((i * outline.length) / 24) | 0]!);
  return spots.flatMap((spot) => {
    const away = Math.hypot(spot.x - centre.x, spot.y - centre.y) || 1;
    // A badge on the line of a small hole would hide the hole.
    const wished = away < SIZE_MM ? SIZE_MM - 0.5 : 0;
    // Up and to the right is where a reader looks first.
    const slant = Math.abs(spot.x - centre.x - (centre.y - spot.y)) / away;
    return [wished, 0, 3, 6, -4, 10, 15, 22, 30].map((out) => {
      const x = spot.x + ((spot.x - centre.x) / away) * out;
      const y = spot.y + ((spot.y - centre.y) / away) * out;
      return { box: boxAround(x, y, SIZE_MM, SIZE_MM), cost: Math.abs(out - wished) + slant, spot };
    });
  });
}

function leader(spot: Spot, box: Box): Html {
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  return markup`<line x1="${dot(spot.x)}" y1="${dot(spot.y)}" x2="${dot(x)}" y2="${dot(y)}" stroke="${INK}" stroke-width="0.3"/>`;
}

function middleOf(spots: readonly Spot[]): Spot {
  const { lowX, lowY, highX, highY } = boundsOf(spots);
  return { x: (lowX + highX) / 2, y: (lowY + highY) / 2 };
}

export function badge(name: string, box: Box, shape: 'circle' | 'square'): Html {
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
