import type { Job, ZeroZ } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import { cutsOf } from './cut-steps.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { isUnderBlank, placeWords } from './place-words.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { unitText } from './words.ts';

/** A touch on the part of the bed that the blank will cover: it cannot be made later. */
export function zBeforeLaying(job: Job, placing: Placing, z: ZeroZ): Step[] {
  if (!isCovered(job, z)) return [];
  const cutters = cutterNames(job, placing);
  const unit = unitText(job.shop.units);
  const touch = step(
    markup`<b>Z zero now, before the blank is laid:</b> with ${cutters[0] ?? 'the first cutter'} and ${z.tool.name}, touch the bed at ${placeWords(job, z.at!)}. The blank will cover this place. Take off what the tool adds. Z zero is the <b>bed</b>.`,
  );
  if (cutters.length < 2) return [touch];
  return [
    touch,
    step(
      markup`With the same cutter touch the top of a stop and write down its height over Z zero: the next cutter (${cutters.slice(1).join(', ')}) is set to it there, as the bed is then covered.`,
      { label: 'top of the stop', unit },
    ),
  ];
}

/** Z zero that is touched with the blank in its place, or what remains to do for it. */
export function zAfterLaying(job: Job, placing: Placing, z: ZeroZ): Step[] {
  if (isCovered(job, z))
    return [step(markup`Z zero: touched already. Do not touch the top of the blank.`)];
  const where =
    z.on === 'top'
      ? markup`the <b>top</b> of the blank${z.at ? markup`, at ${placeWords(job, z.at)}` : markup``}`
      : markup`the
          <b>bed</b>${z.at ? markup`, at ${placeWords(job, z.at)}` : markup` close beside the blank`}`;
  return [
    step(
      markup`<b>Z zero:</b> with the first cutter and ${z.tool.name}, touch ${where}. Take off what the tool adds.${again(job, placing)}`,
    ),
  ];
}

function isCovered(job: Job, z: ZeroZ): boolean {
  return z.on === 'bed' && z.at !== null && isUnderBlank(job, z.at);
}

function again(job: Job, placing: Placing): Html {
  return cutterNames(job, placing).length < 2
    ? markup``
    : markup` Touch the same place again after each change of cutter.`;
}

function cutterNames(job: Job, placing: Placing): string[] {
  return [...new Set(cutsOf(job, placing.faceUp).map(({ feature }) => feature.cutter.name))];
}
