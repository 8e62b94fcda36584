import type { Job, Nest } from '../../../job/job.ts';
import type { Outline } from '../../../plane/outline.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Field } from '../../field.ts';
import { onPaper } from '../../field.ts';
import type { Html } from '../../html.ts';
import { joined, markup } from '../../html.ts';
import { ACCENT, INK, dot, pointsText } from '../../svg.ts';
import { hatchPattern } from '../stops/stop-drawing.ts';
import type { Plan } from '../way.ts';
import { nestShape } from '../../../jig/nest/nest-shape.ts';

/** Width of wall that is drawn, mm on the bed. */
const DRAWN_MM = 12;

/** Places that the drawing must take in: the wall all round. */
export function nestReach(job: Job, nest: Nest, placing: Placing): Outline<'layout'> {
  const { lowX, lowY, highX, highY } = nestShape(job, nest, placing).box;
  return [
    { x: lowX - DRAWN_MM, y: lowY - DRAWN_MM },
    { x: highX + DRAWN_MM, y: highY + DRAWN_MM },
  ];
}

/** The wall hatched; the recess in it drawn, with its relieved corners, before the piece covers it. */
export function nestDrawing(
  job: Job,
  nest: Nest,
  placing: Placing,
  field: Field,
  hatch: string,
): Html {
  const shape = nestShape(job, nest, placing);
  const [low, high] = nestReach(job, nest, placing).map((at) => onPaper(field, at));
  const recess = pointsText(shape.outline.map((at) => onPaper(field, at)));
  const radius = nest.cutter.diameterMm / 2 / field.reduction;
  const relief = shape.reliefs.map((at) => {
    const { x, y } = onPaper(field, at);
    return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${dot(radius)}" fill="#f1f0ec" stroke="${INK}" stroke-width="0.3"/>`;
  });
  return joined([
    hatchPattern(hatch),
    markup`<rect x="${dot(low!.x)}" y="${dot(high!.y)}" width="${dot(high!.x - low!.x)}" height="${dot(low!.y - high!.y)}" fill="url(#${hatch})" stroke="${INK}" stroke-width="0.3"/>`,
    ...relief,
    markup`<polygon points="${recess}" fill="#f1f0ec" stroke="${INK}" stroke-width="0.5"/>`,
  ]);
}

/** A thick line round the small plan. */
export function nestSketch({ box }: Plan): Html {
  const out = 1.2;
  return markup`<rect x="${dot(box.x - out)}" y="${dot(box.y - out)}" width="${dot(box.width + 2 * out)}" height="${dot(box.height + 2 * out)}" fill="none" stroke="${ACCENT}" stroke-width="1.2"/>`;
}
