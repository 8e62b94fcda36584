import type { Job, Need } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { limitsText } from './verdict-line.ts';
import { intervalText, lengthText, unitText } from './words.ts';

/** What to measure on the finished part, between which limits. */
export function checkSteps(job: Job, prediction: Prediction): Step[] {
  const unit = unitText(job.shop.units);
  const boxes = ['off along X', 'off along Y', 'both together'].map((label) => ({ label, unit }));
  return job.needs.map((need) => {
    const predicted = prediction.needs.find((other) => other.name === need.name);
    return step(
      markup`<b>${need.name}:</b> ${howTo(job, need)} ${expected(job, predicted)}`,
      ...boxes,
    );
  });
}

function howTo(job: Job, need: Need): Html {
  const units = job.shop.units;
  switch (need.kind) {
    case 'concentric':
      return centresApart(job, need.features);
    case 'misalignment':
      return markup`at the place ${lengthText(need.at.x, units)} from the left and ${lengthText(need.at.y, units)} from the lower edge, seen from the front, measure how far what was cut from the back stands off what was cut from the front.`;
    default:
      return unreachable(need);
  }
}

/** Where both outlines can be seen at once, their gaps are measured; else each from the same edges. */
function centresApart(job: Job, [one, other]: readonly [string, string]): Html {
  const pair = job.features.filter(({ name }) => name === one || name === other);
  const depthMm = pair.reduce((sum, feature) => sum + feature.depthMm, 0);
  const meet = new Set(pair.map(({ face }) => face)).size < 2 || depthMm >= job.blank.thickMm;
  return meet
    ? markup`measure the gap between the outlines of ${one} and ${other} at the left, right, lower and upper side. Off along X is (left − right) / 2, off along Y is (lower − upper) / 2; both together is the root of the sum of their squares.`
    : markup`measure from the left and from the lower edge to the middle of ${one} and of ${other}, each time from the same edges. Off along X and Y are the differences; both together is the root of the sum of their squares.`;
}

function expected(job: Job, predicted: NeedPrediction | undefined): Html {
  if (!predicted) return markup``;
  const units = job.shop.units;
  return markup`Both together must be <b>${limitsText(predicted, units)}</b>; to be expected: ${intervalText(predicted.interval95, units)}.`;
}
