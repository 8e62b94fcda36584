import type { Context } from '../resolve/context.ts';
import { note } from '../resolve/context.ts';
import type { Known } from './job.ts';
import { overlapInPlan } from './overlap.ts';

/**
 * Says which cuts from the two faces meet and leave nothing between them, in case that is not meant;
 * a need that names both shows that it is.
 */
export function noteMeeting(context: Context, { blank, features, needs }: Known): void {
  if (blank === null) return;
  const on = (face: 'front' | 'back'): typeof features =>
    features.filter(({ feature }) => feature.face === face && !feature.through);
  for (const back of on('back'))
    for (const front of on('front')) {
      const left = blank.thickMm - front.feature.depthMm - back.feature.depthMm;
      const names = [front.feature.name, back.feature.name];
      const meant = needs.some(
        ({ need }) => 'features' in need && need.features.every((name) => names.includes(name)),
      );
      if (meant || left > 0 || !overlapInPlan(front.feature, back.feature)) continue;
      note(
        context,
        [back.raw, 'depth'],
        `${back.feature.name} meets ${front.feature.name} from the other face: nothing is left between them`,
      );
    }
}
