import { isSoundProgram, placedOf } from '../hold/checked-program.ts';
import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { Job } from '../job/job.ts';
import { sweptByBox, unionOf } from '../plane/clip.ts';
import type { Outline } from '../plane/outline.ts';
import { axisWays } from '../sweep/axis.ts';
import { overheadOf } from '../sweep/overhead.ts';
import { onPaper, type Field } from './field.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { ACCENT, dot, pointsText, type Spot } from './svg.ts';

/** Where cutter, nut and spindle come: the way of the axis, drawn as wide as each of them; the features' or the program's own. */
export function sweptDrawing(job: Job, plan: PlacingPlan, field: Field): readonly Html[] {
  if (isSoundProgram(plan.program)) return programDrawing(job, plan, field);
  return axisWays(job, plan.placing).flatMap((way) =>
    overheadOf(job, way.feature.cutter).flatMap(({ plan: round, what }) => {
      if (round.kind !== 'disc') return [];
      const width = dot((2 * round.radiusMm) / field.reduction);
      const opacity = what === 'cutter' ? 0.28 : 0.06;
      return way.outlines.map((outline) => {
        const spots = outline.map((p) => onPaper(field, p));
        const fill = way.kind === 'all-over' ? ACCENT : 'none';
        return markup`<g opacity="${opacity}"><polygon points="${pointsText(spots)}" fill="${fill}" stroke="${ACCENT}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"/></g>`;
      });
    }),
  );
}

/** The dust shoe's zone as a dotted line; nothing when there is no shoe, or a program says where it goes. */
export function shoeDrawing(job: Job, plan: PlacingPlan, field: Field): readonly Html[] {
  const shoe = job.shop.machine.aboveTip.dustShoe;
  if (shoe === null) return [];
  const under: readonly Outline<'layout'>[] = isSoundProgram(plan.program)
    ? boxesOf(placesOf(job, plan), shoe)
    : axisWays(job, plan.placing).flatMap(({ outlines }) =>
        outlines.flatMap((outline) => sweptByBox(outline, shoe.xMm, shoe.yMm)),
      );
  return unionOf([...under]).map((outline) => {
    const spots = outline.map((p) => onPaper(field, p));
    return markup`<polygon points="${pointsText(spots)}" fill="none" stroke="${ACCENT}" stroke-width="0.5" stroke-dasharray="0.6 1.4" stroke-linecap="round"/>`;
  });
}

/** So many places of a program are drawn at most: more are closer together than a line is wide. */
const MOST_PLACES = 3000;
/** The shoe's zone of a program is put together from so many of its places. */
const MOST_BOXES = 250;

interface Stroke {
  readonly kind: 'rapid' | 'feed';
  readonly spots: readonly { readonly x: number; readonly y: number }[];
}

/** Strokes of one kind in a row as one line, thinned evenly. */
function strokesOf(job: Job, { placing, program }: PlacingPlan): readonly Stroke[] {
  const moves = placedOf(job, placing, program!);
  const count = moves.reduce((sum, { places }) => sum + places.length, 0);
  const every = Math.max(1, Math.ceil(count / MOST_PLACES));
  const strokes: { kind: Stroke['kind']; spots: { x: number; y: number }[] }[] = [];
  let k = 0;
  for (const { kind, places } of moves) {
    let last = strokes.at(-1);
    if (last?.kind !== kind) {
      last = { kind, spots: [] };
      strokes.push(last);
    }
    for (const { x, y } of places) if (k++ % every === 0 || every === 1) last.spots.push({ x, y });
  }
  return strokes.filter(({ spots }) => spots.length > 1);
}

function programDrawing(job: Job, plan: PlacingPlan, field: Field): readonly Html[] {
  const { cutter } = plan.program!.file;
  const strokes = strokesOf(job, plan).map(({ kind, spots }) => ({
    kind,
    points: pointsText(spots.map((p): Spot => onPaper(field, p))),
  }));
  const wide = overheadOf(job, cutter).flatMap(({ plan: round, what }) =>
    round.kind === 'disc'
      ? [
          {
            width: dot((2 * round.radiusMm) / field.reduction),
            opacity: what === 'cutter' ? 0.28 : 0.06,
          },
        ]
      : [],
  );
  return [
    ...wide.flatMap(({ width, opacity }) => [
      markup`<g opacity="${opacity}">${strokes
        .filter(({ kind }) => kind === 'feed')
        .map(
          ({ points }) =>
            markup`<polyline points="${points}" fill="none" stroke="${ACCENT}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"/>`,
        )}</g>`,
    ]),
    ...strokes.map(
      ({ kind, points }) =>
        markup`<polyline points="${points}" fill="none" stroke="${ACCENT}" stroke-width="0.25"${kind === 'rapid' ? markup` stroke-dasharray="1 1"` : ''}/>`,
    ),
  ];
}

const placesOf = (
  job: Job,
  plan: PlacingPlan,
): readonly { readonly x: number; readonly y: number }[] =>
  strokesOf(job, plan)
    .filter(({ kind }) => kind === 'feed')
    .flatMap(({ spots }) => spots);

function boxesOf(
  places: readonly { readonly x: number; readonly y: number }[],
  { xMm, yMm }: { readonly xMm: number; readonly yMm: number },
): readonly Outline<'layout'>[] {
  const every = Math.max(1, Math.ceil(places.length / MOST_BOXES));
  return places
    .filter((_, k) => k % every === 0)
    .map(({ x, y }) => [
      { x: x - xMm / 2, y: y - yMm / 2 },
      { x: x + xMm / 2, y: y - yMm / 2 },
      { x: x + xMm / 2, y: y + yMm / 2 },
      { x: x - xMm / 2, y: y + yMm / 2 },
    ]);
}
