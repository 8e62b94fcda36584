import type { Job, Need } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { limitsText, per100 } from './verdict-line.ts';
import { intervalText, lengthText, unitText } from './words.ts';

/** What to measure on the finished part, between which limits. */
export function checkSteps(job: Job, prediction: Prediction): Step[] {
  const unit = unitText(job.shop.units);
  return job.needs.map((need) => {
    const boxes = labelsOf(need).map((label) => ({ label, unit }));
    const predicted = prediction.needs.find((other) => other.name === need.name);
    return step(
      markup`<b>${need.name}:</b> ${howTo(job, need)} ${expected(job, predicted)}`,
      ...boxes,
    );
  });
}

function labelsOf({ kind }: Need): readonly string[] {
  if (kind === 'concentric' || kind === 'misalignment')
    return ['off along X', 'off along Y', 'both together'];
  return kind === 'lip' ? ['smallest', 'largest'] : ['measured'];
}

function howTo(job: Job, need: Need): Html {
  const units = job.shop.units;
  switch (need.kind) {
    case 'concentric':
      return centresApart(job, need.features);
    case 'misalignment':
      return markup`at the place ${lengthText(need.at.x, units)} from the left and ${lengthText(need.at.y, units)} from the lower edge, seen from the front, measure how far what was cut from the back stands off what was cut from the front.`;
    case 'lip':
      return markup`measure what is left between the outlines of ${need.features[0]} and ${need.features[1]} all the way round: where it is smallest and where it is largest.`;
    case 'web':
      return markup`measure the thickness that is left between ${need.features[0]} and ${need.features[1]} where both overlap, in several places; the smallest counts.`;
    case 'wall':
      return need.to === null
        ? markup`measure from the outline of ${need.feature} to the nearest edge of the blank.`
        : markup`measure from the outline of ${need.feature} to the ${need.to} edge, where it is nearest.`;
    case 'depth':
      return markup`measure how deep ${need.feature} is below the face round it.`;
    case 'meets':
      return markup`feel along the line where ${need.features[0]} and ${need.features[1]} meet and measure the largest step.`;
    case 'parallel':
      return markup`measure how far ${need.features[1]} is turned against ${need.features[0]}, over 100 mm.`;
    case 'size':
      return markup`measure ${need.feature} along ${need.along.toUpperCase()}.`;
    case 'goes-on':
      return markup`feel how much play is left on each side, and write down if it had to be forced.`;
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
  const what = predicted.shape === 'radial' ? 'Both together' : 'It';
  return markup`${what} must be <b>${limitsText(predicted, units)}</b>; to be expected: ${intervalText(predicted.interval95, units)}${per100(predicted)}.`;
}
