import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { Pusher } from '../hold/pusher.ts';
import type { StrapPlace } from '../hold/strap-place.ts';
import type { Job } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import { pieceOf } from '../sweep/piece.ts';
import { blankDrawing } from './blank-drawing.ts';
import { onPaper, type Field } from './field.ts';
import { shoeDrawing, sweptDrawing } from './hold-paths.ts';
import type { Html } from './html.ts';
import { joined, markup } from './html.ts';
import { inLayout } from './places.ts';
import { FAINT, INK, arrow, dot, drawing, pointsText, textAt } from './svg.ts';

const PAPER_MM = 186;
const MARGIN_MM = 6;
const MOST_HIGH_MM = 120;
const STRUCK = '#b3261e';

/** One placing's plan from above: what is swept, clamps and screws, pieces that come free, clashes, the worst pull. */
export function holdDrawing(job: Job, plan: PlacingPlan): Html {
  const field = fieldOf(job, plan);
  return drawing(
    `holding down, ${plan.placing.faceUp} up, from above`,
    PAPER_MM,
    field.box.height,
    joined([
      markup`<rect x="0" y="0" width="${PAPER_MM}" height="${dot(field.box.height)}" fill="#f1f0ec"/>`,
      blankDrawing(job, plan.placing, field),
      ...freed(job, plan, field),
      ...sweptDrawing(job, plan, field),
      ...plan.standing.map(({ outline }) => polygon(outline, field, '#c9c5bb', INK, 0.3)),
      ...(plan.layout?.straps ?? []).map((strap) => strapDrawing(job, strap, field)),
      ...plan.pushers.placed.map((one) => pusherDrawing(one, field)),
      ...plan.clashes.map(({ at }) => cross(onPaper(field, at))),
      ...shoeDrawing(job, plan, field),
      worstPull(plan, field),
    ]),
  );
}

/** What is to be seen on it, and its scale. */
export const holdCaption = (job: Job, plan: PlacingPlan): string =>
  `From above, 1 : ${fieldOf(job, plan).reduction}. Tinted: where cutter, nut and spindle come; dotted: the dust shoe; dashed in red: a piece that nothing holds; crosses: clashes; arrows in blocks: pushers; other arrow: where and how the cutter pulls worst. Figures at bolts: their place from the near-left corner of the bed.`;

function fieldOf(job: Job, { placing, standing, layout, pushers }: PlacingPlan): Field {
  const bodies = [
    ...standing,
    ...pushers.placed.map(({ body }) => body),
    ...(layout?.straps ?? []).flatMap((strap) => strap.bodies),
  ];
  const box = boundsOf([
    ...pieceOf(job, placing).outline,
    ...bodies.flatMap(({ outline }) => outline),
  ]);
  const room = PAPER_MM - 2 * MARGIN_MM;
  const wide = (box.highX - box.lowX) / room;
  const high = (box.highY - box.lowY) / MOST_HIGH_MM;
  // Halves are scales that a rule can be laid on.
  const reduction = Math.max(0.5, Math.ceil(Math.max(wide, high) * 2) / 2);
  const height = (box.highY - box.lowY) / reduction + 2 * MARGIN_MM;
  const left = (PAPER_MM - (box.highX - box.lowX) / reduction) / 2;
  return {
    reduction,
    origin: { x: left - box.lowX / reduction, y: MARGIN_MM + box.highY / reduction },
    box: { x: 0, y: 0, width: PAPER_MM, height },
  };
}

function polygon(
  outline: Outline<'layout'>,
  field: Field,
  fill: string,
  stroke: string,
  width: number,
): Html {
  const spots = outline.map((p) => onPaper(field, p));
  return markup`<polygon points="${pointsText(spots)}" fill="${fill}" stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round"/>`;
}

function freed(job: Job, { pieces, placing }: PlacingPlan, field: Field): Html[] {
  return pieces
    .filter(({ piece, isHeld }) => piece.side === 'inside' || !isHeld)
    .map(({ piece, isHeld }) => {
      const loops = piece.region.outlines.map((outline) => {
        const spots = outline.map((p) => onPaper(field, inLayout(job, placing, p)));
        return `M ${pointsText(spots)} Z`;
      });
      const colour = isHeld ? FAINT : STRUCK;
      return markup`<path d="${loops.join(' ')}" fill="${colour}" fill-opacity="0.15" fill-rule="evenodd" stroke="${colour}" stroke-width="0.5" stroke-dasharray="2 1"/>`;
    });
}

function strapDrawing(
  job: Job,
  { bodies, pad, bolt, padAt, side }: StrapPlace,
  field: Field,
): Html {
  const [bar, head] = bodies;
  const at = onPaper(field, bolt.at);
  const middle = onPaper(field, padAt);
  return joined([
    polygon(bar!.outline, field, '#ffffff', INK, 0.6),
    polygon(pad, field, '#8fa3ad', INK, 0.3),
    polygon(head!.outline, field, '#d9d9d9', INK, 0.4),
    markup`<circle cx="${dot(at.x)}" cy="${dot(at.y)}" r="0.6" fill="${INK}"/>`,
    textAt({ x: middle.x, y: middle.y + 1.2 }, '↓', { sizeMm: 3.5, weight: 700, anchor: 'middle' }),
    side === 'near' || side === 'far'
      ? textAt({ x: at.x + 5.5, y: at.y + 1 }, boltText(job, bolt), { sizeMm: 3 })
      : textAt({ x: at.x, y: at.y + 7.2 }, boltText(job, bolt), { sizeMm: 3, anchor: 'middle' }),
  ]);
}

/** Its body, and an arrow the way it pushes. */
function pusherDrawing({ body, at, normal: [nx, ny] }: Pusher, field: Field): Html {
  const tip = onPaper(field, at);
  return joined([
    polygon(body.outline, field, '#ece6d2', INK, 0.4),
    arrow({ x: tip.x - 8 * nx, y: tip.y + 8 * ny }, tip, 0.5, INK),
  ]);
}

const boltText = ({ shop }: Job, { onBed }: StrapPlace['bolt']): string =>
  [onBed.x, onBed.y]
    .map((mm) => (shop.units === 'inch' ? (mm / 25.4).toFixed(2) : `${Math.round(mm)}`))
    .join(', ');

function cross({ x, y }: { readonly x: number; readonly y: number }): Html {
  return markup`<g stroke="${STRUCK}" stroke-width="1"><line x1="${dot(x - 2.5)}" y1="${dot(y - 2.5)}" x2="${dot(x + 2.5)}" y2="${dot(y + 2.5)}"/><line x1="${dot(x - 2.5)}" y1="${dot(y + 2.5)}" x2="${dot(x + 2.5)}" y2="${dot(y - 2.5)}"/></g>`;
}

function worstPull({ verdict }: PlacingPlan, field: Field): Html {
  if (verdict === null) return markup``;
  const from = onPaper(field, verdict.worst.at);
  const to = {
    x: from.x + 12 * Math.cos(verdict.worst.pullsRad),
    y: from.y - 12 * Math.sin(verdict.worst.pullsRad),
  };
  return arrow(from, to, 0.7, verdict.isHeld ? INK : STRUCK);
}
