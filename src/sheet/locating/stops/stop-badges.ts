import { isInside, toEdgeMm } from '../../../plane/distance.ts';
import { boundsOf } from '../../../plane/measure.ts';
import { SIZE_MM, badge } from '../../badges.ts';
import type { Field } from '../../field.ts';
import { onPaper } from '../../field.ts';
import type { Html } from '../../html.ts';
import { joined } from '../../html.ts';
import type { Box, Candidate } from '../../label-room.ts';
import { boxAround, roomFor } from '../../label-room.ts';
import type { SheetStop } from '../../sheet-input.ts';
import type { Drawn } from '../../svg.ts';

/** The letter of each stop, deep inside it, where it covers no other label. */
export function stopBadges(
  stops: readonly SheetStop[],
  field: Field,
  taken: readonly Box[],
): Drawn {
  const boxes = [...taken];
  const drawn: Html[] = [];
  for (const [i, stop] of stops.entries()) {
    const { box } = roomFor(insideStop(stop, field), boxes, field.box);
    boxes.push(box);
    drawn.push(badge(stopLetter(i), box, 'square'));
  }
  return { html: joined(drawn), taken: boxes };
}

export function stopLetter(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : `A${index - 25}`;
}

/** As deep inside the stop as may be. */
function insideStop(stop: SheetStop, field: Field): Candidate[] {
  const outline = stop.body.outline;
  const { lowX, lowY, highX, highY } = boundsOf(outline);
  const steps = Array.from({ length: 33 }, (_, i) => i / 32);
  const grid = steps.flatMap((u) =>
    steps.map((v) => ({ x: lowX + u * (highX - lowX), y: lowY + v * (highY - lowY) })),
  );
  const centre = { x: (lowX + highX) / 2, y: (lowY + highY) / 2 };
  return [...grid.filter((at) => isInside(at, outline)), outline[0]!].map((at) => {
    const spot = onPaper(field, at);
    const depth = Math.min(SIZE_MM / 2 + 0.6, toEdgeMm(at, outline) / field.reduction);
    const aside = Math.hypot(at.x - centre.x, at.y - centre.y) / field.reduction;
    return { box: boxAround(spot.x, spot.y, SIZE_MM, SIZE_MM), cost: aside - 1000 * depth };
  });
}
