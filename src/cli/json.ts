import type { DialledIn } from '../job/job.ts';
import type { Prediction } from '../stackup/prediction.ts';

/** The prediction as published JSON; the cloud of single trials is for pictures only. */
export function predictionJson(prediction: Prediction, dialled: DialledIn | null = null): string {
  const needs = prediction.needs.map((need) => ({
    ...need,
    mean: need.moments === 'no mean' ? null : need.mean,
    sd: need.moments === 'known' ? need.sd : null,
    cloud: undefined,
  }));
  return JSON.stringify(
    { ...prediction, needs, ...(dialled === null ? {} : { dialled }) },
    null,
    2,
  );
}
