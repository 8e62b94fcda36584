import type { StopsJob, Zero, ZeroXy, ZeroZ } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { isInside } from '../plane/distance.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { cutsOf } from './cut-steps.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { isUnderBlank, machineWords, onBedWords, programWords, zeroWords } from './place-words.ts';
import { inLayout } from './places.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { unitText } from './words.ts';

/** A touch on the part of the bed that the blank will cover: it cannot be made later. */
export function zBeforeLaying(job: StopsJob, placing: Placing, { xy, z }: Zero): Step[] {
  if (z.at === null || !isCovered(job, z)) return [];
  return [
    step(
      markup`<b>Z zero now, before the blank is laid:</b> with ${firstCutter(job, placing)} and ${z.tool.name}, spindle still, touch the bed ${bedPlace(job, placing, xy, z.at)}. The blank will cover this place. Take off what the tool adds. Z zero is the <b>bed</b>.`,
    ),
    ...forNextCutters(job, placing, 'the bed is covered by then'),
  ];
}

/** Z zero that is touched with the blank in its place, or what remains to do for it. */
export function zAfterLaying(job: StopsJob, placing: Placing, z: ZeroZ): Step[] {
  if (isCovered(job, z))
    return [step(markup`Z zero: touched already. Do not set it on the blank's top face.`)];
  const place = z.at ? laidPlace(job, placing, z.at) : markup``;
  const where =
    z.on === 'top'
      ? markup`the <b>top</b> of the blank${place}`
      : markup`the <b>bed</b>${z.at ? place : markup` close beside the blank`}`;
  const touch = markup`<b>Z zero:</b> with ${firstCutter(job, placing)} and ${z.tool.name}, spindle still, touch ${where}. Take off what the tool adds.`;
  if (staysInReach(job, placing, z)) {
    const again =
      cutterNames(job, placing).length < 2
        ? markup``
        : markup` Touch the same place again after each change of cutter.`;
    return [step(markup`${touch}${again}`)];
  }
  return [step(touch), ...forNextCutters(job, placing, 'the place above is cut away by then')];
}

/** Whether the place can be touched again when the cuts of this placing are made. */
export function staysInReach(job: StopsJob, placing: Placing, z: ZeroZ): boolean {
  if (isCovered(job, z)) return false;
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

function forNextCutters(job: StopsJob, placing: Placing, why: string): Step[] {
  const [, ...next] = cutterNames(job, placing);
  if (next.length === 0) return [];
  return [
    step(
      markup`With the same cutter touch the top of a stop and write down its height over Z zero. Set the next cutter (${next.join(', ')}) to this height there: ${why}.`,
      { label: 'top of the stop', unit: unitText(job.shop.units) },
    ),
  ];
}

/** With the blank in its place X and Y zero are known, so the machine can jog there. */
function laidPlace(job: StopsJob, placing: Placing, at: Point<'layout'>): Html {
  return markup` at the cross <b>touch Z</b> of the picture, ${machineWords(job, at, 'as it lies')}: jog to <b>${programWords(job, placing, at)}</b>`;
}

/** Without a blank to measure from, the bed's place counts from the zero, or from the bed's own corner. */
function bedPlace(job: StopsJob, placing: Placing, xy: ZeroXy, at: Point<'layout'>): Html {
  const picture = markup`(the cross <b>touch Z</b> of the picture, ${machineWords(job, at, 'as it will lie')})`;
  return isKnownBeforeLaying(xy)
    ? markup`at <b>${programWords(job, placing, at)}</b> from the zero of this placing, ${zeroWords(job, placing.zero)} ${picture}`
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

function isCovered(job: StopsJob, z: ZeroZ): boolean {
  return z.on === 'bed' && z.at !== null && isUnderBlank(job, z.at);
}

function firstCutter(job: StopsJob, placing: Placing): string {
  return cutterNames(job, placing)[0] ?? 'the cutter';
}

function cutterNames(job: StopsJob, placing: Placing): string[] {
  return [...new Set(cutsOf(job, placing.faceUp).map(({ feature }) => feature.cutter.name))];
}
