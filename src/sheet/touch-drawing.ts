import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Field } from './field.ts';
import { onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box } from './label-room.ts';
import { boxAround, boxesBeside, roomFor } from './label-room.ts';
import type { Drawn, Spot } from './svg.ts';
import { ACCENT, dot, textAt } from './svg.ts';
import { touchPlaces } from './touch-places.ts';

/** Half a cross on paper, mm. */
const ARM_MM = 1.7;

/** What the crosses cover, so that no label is put there. */
export function touchMarks(job: Job, placing: Placing, field: Field): readonly Box[] {
  return touchPlaces(job, placing).map(({ at }) => {
    const { x, y } = onPaper(field, at);
    return boxAround(x, y, 2 * ARM_MM + 0.6, 2 * ARM_MM + 0.6);
  });
}

/** A slanting cross where a zero is touched, with its word where it covers no other label. */
export function touchDrawing(
  job: Job,
  placing: Placing,
  field: Field,
  taken: readonly Box[],
): Drawn {
  const boxes = [...taken];
  const drawn = touchPlaces(job, placing).map(({ axis, at }) => {
    const spot = onPaper(field, at);
    const { box } = roomFor(boxesBeside(spot, 14, 5), boxes, field.box);
    boxes.push(box);
    const foot = { x: box.x + box.width / 2, y: box.y + box.height / 2 + 1.3 };
    const look = {
      sizeMm: 3.6,
      weight: 700,
      anchor: 'middle',
      fill: ACCENT,
      rim: 'white',
    } as const;
    return joined([cross(spot), textAt(foot, `touch ${axis}`, look)]);
  });
  return { html: joined(drawn), taken: boxes };
}

function cross({ x, y }: Spot): Html {
  const a = ARM_MM;
  const path = `M${dot(x - a)} ${dot(y - a)}l${2 * a} ${2 * a}m0 ${-2 * a}l${-2 * a} ${2 * a}`;
  return markup`<path d="${path}" fill="none" stroke="#ffffff" stroke-width="1.6"/><path d="${path}" fill="none" stroke="${ACCENT}" stroke-width="0.8"/>`;
}
