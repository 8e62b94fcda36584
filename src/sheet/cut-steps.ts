import type { Cut, Face, Feature, Job } from '../job/job.ts';
import { featureNumber } from './badges.ts';
import { freesPiece } from './freed.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { lengthText, unitText } from './words.ts';

/** A feature with the number it has in the drawings. */
export interface Numbered {
  readonly feature: Feature;
  readonly number: string;
}

/** The cuts of one face in working order: holes and insides first, then outlines, chamfers last. */
export function cutsOf(job: Job, face: Face): Numbered[] {
  return job.features
    .map((feature, i) => ({ feature, number: featureNumber(i) }))
    .filter(({ feature }) => feature.face === face)
    .toSorted((a, b) => RANK[a.feature.cut] - RANK[b.feature.cut]);
}

const RANK: Readonly<Record<Cut, number>> = {
  drill: 0,
  pocket: 1,
  'profile-inside': 2,
  'profile-outside': 3,
  chamfer: 4,
  'chamfer-outside': 5,
};

/** One step a cut, with a box for the depth that came out. */
export function cutSteps(job: Job, face: Face): Step[] {
  const unit = unitText(job.shop.units);
  return cutsOf(job, face).map((cut, i) => {
    const boxes = cut.feature.through
      ? []
      : ['depth, one end', 'other end'].map((label) => ({ label, unit }));
    return step(markup`${cutWords(job, cut)}${i === 0 ? FIRST_PASS : markup``}`, ...boxes);
  });
}

const FIRST_PASS = markup` After the first pass stop, let the spindle stand still, and try every clamp by hand.`;

function cutWords(job: Job, { feature, number }: Numbered): Html {
  const depth = lengthText(feature.depthMm, job.shop.units);
  const how = feature.through ? `right through, ${depth}` : `${depth} deep`;
  const free = freesPiece(job, feature)
    ? markup` <b>This cut sets a piece free:</b> hold the piece before it comes loose, and touch nothing until the spindle stands still.`
    : markup``;
  return markup`Cut <b class="number">${number}</b> <b>${feature.name}</b> with ${feature.cutter.name}, ${how}.${free}`;
}
