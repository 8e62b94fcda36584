import type { Job, Zero, ZeroXy, ZeroZ } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { isInside } from '../plane/distance.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { cutsOf } from './cut-steps.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Located } from './locating/way.ts';
import { isUnder, machineWords, onBedWords, programWords, zeroWords } from './place-words.ts';
import { inLayout } from './places.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { unitText } from './words.ts';

/** A touch on the part of the bed that the blank will cover: it cannot be made later. */
export function zBeforeLaying(
  job: Job,
  placing: Placing,
  located: Located,
  { xy, z }: Zero,
): Step[] {
  const at = coveredAt(job, placing, located, z);
  if (at === null) return [];
  const cutters = cutterNames(job, placing);
  // The drill that comes between takes the first cutter out.
  const next = located.drilling.length > 0 ? cutters : cutters.slice(1);
  const { name } = pieceOf(job, placing);
  return [
    step(
      markup`<b>Z zero now, before the ${name} is laid:</b> with ${firstCutter(job, placing)} and ${z.tool.name}, spindle still, touch the ${located.floor} ${bedPlace(job, placing, xy, at, z.at !== null)}. The ${name} will cover this place. Take off what the tool adds. Z zero is the <b>${located.floor}</b>.`,
    ),
    ...forNextCutters(job, located, next, `the ${located.floor} is covered by then`),
  ];
}

/** Z zero that is touched with the blank in its place, or what remains to do for it. */
export function zAfterLaying(job: Job, placing: Placing, located: Located, z: ZeroZ): Step[] {
  const { name } = pieceOf(job, placing);
  if (coveredAt(job, placing, located, z) !== null)
    return [step(markup`Z zero: touched already. Do not set it on the ${name}'s top face.`)];
  const place = z.at ? laidPlace(job, placing, z.at) : markup``;
  const where =
    z.on === 'top'
      ? markup`the <b>top</b> of the ${name}${place}`
      : markup`the <b>${located.floor}</b>${z.at ? place : markup` close beside the ${name}`}`;
  const touch = markup`<b>Z zero:</b> with ${firstCutter(job, placing)} and ${z.tool.name}, spindle still, touch ${where}. Take off what the tool adds.`;
  if (staysInReach(job, placing, located, z)) {
    const again =
      cutterNames(job, placing).length < 2
        ? markup``
        : markup` Touch the same place again after each change of cutter.`;
    return [step(markup`${touch}${again}`)];
  }
  return [
    step(touch),
    ...forNextCutters(
      job,
      located,
      cutterNames(job, placing).slice(1),
      'the place above is cut away by then',
    ),
  ];
}

/** Whether the place can be touched again when the cuts of this placing are made. */
export function staysInReach(job: Job, placing: Placing, located: Located, z: ZeroZ): boolean {
  if (coveredAt(job, placing, located, z) !== null) return false;
  if (z.on === 'bed' || z.at === null) return true;
  const at = z.at;
  return job.features
    .filter((feature) => feature.face === placing.faceUp)
    .every((feature) => {
      const outline = outlineOf(feature, CHORD_MM).map((p) => inLayout(job, placing, p));
      return !isInside(at, outline);
    });
}

/** Far finer than where a hand touches, mm. */
const CHORD_MM = 0.1;

function forNextCutters(job: Job, located: Located, next: readonly string[], why: string): Step[] {
  if (next.length === 0) return [];
  return [
    step(
      markup`With the same cutter touch ${located.landmark.words} and write down its height over Z zero. Set the next cutter (${next.join(', ')}) to this height there: ${why}.`,
      { label: located.landmark.short, unit: unitText(job.shop.units) },
    ),
  ];
}

/** With the blank in its place X and Y zero are known, so the machine can jog there. */
function laidPlace(job: Job, placing: Placing, at: Point<'layout'>): Html {
  return markup` at the cross <b>touch Z</b> of the picture, ${machineWords(job, placing, at, 'as it lies')}: jog to <b>${programWords(job, placing, at)}</b>`;
}

/** Without a blank to measure from, the bed's place counts from the zero, or from the bed's own corner. */
function bedPlace(
  job: Job,
  placing: Placing,
  xy: ZeroXy,
  at: Point<'layout'>,
  isDrawn: boolean,
): Html {
  const cross = isDrawn ? markup`the cross <b>touch Z</b> of the picture, ` : markup``;
  const picture = markup`(${cross}${machineWords(job, placing, at, 'as it will lie')})`;
  return isKnownBeforeLaying(xy)
    ? markup`at <b>${programWords(job, placing, at)}</b> from the zero of this placing, ${zeroWords(job, placing)} ${picture}`
    : markup`at <b>${onBedWords(job, at)}</b> from the near-left corner of the bed ${picture}`;
}

function isKnownBeforeLaying(xy: ZeroXy): boolean {
  switch (xy.kind) {
    case 'stops':
    case 'milled-stops':
    case 'dowels':
    case 'nest':
    case 'kept':
      return true;
    case 'edges':
    case 'middle':
    case 'hole':
      return false;
    default:
      return unreachable(xy);
  }
}

/** The place of the floor to touch that will be covered; null when it can be touched with the piece in its place. */
function coveredAt(job: Job, placing: Placing, located: Located, z: ZeroZ): Point<'layout'> | null {
  if (z.on !== 'bed') return null;
  const piece = pieceOf(job, placing);
  const { lowX, lowY, highX, highY } = piece.box;
  const middle = { x: (lowX + highX) / 2, y: (lowY + highY) / 2 };
  const at = z.at ?? (located.hidesFloor ? middle : null);
  return at !== null && isUnder(piece, at) ? at : null;
}

function firstCutter(job: Job, placing: Placing): string {
  return cutterNames(job, placing)[0] ?? 'the cutter';
}

function cutterNames(job: Job, placing: Placing): string[] {
  return [...new Set(cutsOf(job, placing.faceUp).map(({ feature }) => feature.cutter.name))];
}
