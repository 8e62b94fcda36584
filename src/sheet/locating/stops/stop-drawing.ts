import type { Contact, Placing, Side } from '../../../setup/placing.ts';
import type { Field } from '../../field.ts';
import { onPaper } from '../../field.ts';
import type { Html } from '../../html.ts';
import { markup, joined } from '../../html.ts';
import type { Box } from '../../label-room.ts';
import { boxAround } from '../../label-room.ts';
import type { SheetStop } from '../../sheet-input.ts';
import { isInUse } from './stop-use.ts';
import type { Spot } from '../../svg.ts';
import { ACCENT, INK, dot, pointsText } from '../../svg.ts';

/** Stops in use hatched, others dashed; screws as crossed circles. `hatch` names the pattern in this drawing. */
export function stopDrawing(
  stops: readonly SheetStop[],
  placing: Placing,
  field: Field,
  hatch: string,
): Html {
  return joined([
    hatchPattern(hatch),
    ...stops.map((stop) => oneStop(stop, placing, field, hatch)),
  ]);
}

/** A hatching of slanting lines that a black-and-white printer keeps. */
export function hatchPattern(id: string): Html {
  return markup`<defs><pattern id="${id}" width="1.6" height="1.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="1.6" height="1.6" fill="#ffffff"/><line x1="0.4" y1="0" x2="0.4" y2="1.6" stroke="${ACCENT}" stroke-width="0.5"/></pattern></defs>`;
}

function oneStop(stop: SheetStop, placing: Placing, field: Field, hatch: string): Html {
  const spots = pointsText(stop.body.outline.map((at) => onPaper(field, at)));
  const body = isInUse(stop, placing)
    ? markup`<polygon points="${spots}" fill="url(#${hatch})" stroke="${INK}" stroke-width="0.5"/>`
    : markup`<polygon points="${spots}" fill="none" stroke="${INK}" stroke-width="0.3" stroke-dasharray="0.8 0.8"/>`;
  return joined([
    body,
    ...stop.screws.map((screw) => screwDrawing(screw, field)),
    ...stop.pins.map((pin) => pinDrawing(pin, field)),
  ]);
}

const SCREW_RADIUS_MM = 1.6;

function screwDrawing(screw: SheetStop['screws'][number], field: Field): Html {
  const { x, y } = onPaper(field, screw.at);
  const arm = SCREW_RADIUS_MM * 0.65;
  return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${SCREW_RADIUS_MM}" fill="#ffffff" stroke="${INK}" stroke-width="0.4"/><path d="M${dot(x - arm)} ${dot(y)}h${dot(2 * arm)}M${dot(x)} ${dot(y - arm)}v${dot(2 * arm)}" stroke="${INK}" stroke-width="0.4"/>`;
}

/** A black dot in a ring. */
function pinDrawing(pin: SheetStop['pins'][number], field: Field): Html {
  const { x, y } = onPaper(field, pin.at);
  return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${SCREW_RADIUS_MM}" fill="#ffffff" stroke="${INK}" stroke-width="0.4"/><circle cx="${dot(x)}" cy="${dot(y)}" r="${SCREW_RADIUS_MM / 2}" fill="${INK}"/>`;
}

/** A black wedge whose tip is where the blank touches. */
export function contactDrawing(contact: Contact, placing: Placing, field: Field): Html {
  const tip = onPaper(field, contact.at);
  const side = contact.face === 'fence' ? placing.base.side : placing.end.side;
  const [out, across] = OUTWARD[side];
  const corners = [-1, 1].map((way) => ({
    x: tip.x + out.x * WEDGE_MM + way * across.x * WEDGE_MM * 0.55,
    y: tip.y + out.y * WEDGE_MM + way * across.y * WEDGE_MM * 0.55,
  }));
  return markup`<polygon points="${pointsText([tip, ...corners])}" fill="${INK}" stroke="#ffffff" stroke-width="0.3"/>`;
}

const WEDGE_MM = 3.2;

/** On paper, away from the blank, and along its edge. */
const OUTWARD: Record<Side, readonly [Spot, Spot]> = {
  near: [
    { x: 0, y: 1 },
    { x: 1, y: 0 },
  ],
  far: [
    { x: 0, y: -1 },
    { x: 1, y: 0 },
  ],
  left: [
    { x: -1, y: 0 },
    { x: 0, y: 1 },
  ],
  right: [
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ],
};

/** What screws and contacts cover, so that no label is put there. */
export function stopMarks(
  stops: readonly SheetStop[],
  placing: Placing,
  field: Field,
): readonly Box[] {
  const screws = stops.flatMap((stop) =>
    [...stop.screws, ...stop.pins].map(({ at }) => onPaper(field, at)),
  );
  const contacts = placing.contacts.map((contact) => onPaper(field, contact.at));
  return [
    ...screws.map((at) => boxAround(at.x, at.y, 2 * SCREW_RADIUS_MM, 2 * SCREW_RADIUS_MM)),
    ...contacts.map((at) => boxAround(at.x, at.y, WEDGE_MM, WEDGE_MM)),
  ];
}
