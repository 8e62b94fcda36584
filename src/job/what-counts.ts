import { unreachable } from '../num/invariant.ts';
import type { Feature, Need } from './job.ts';

interface Asked {
  readonly needs: readonly Need[];
  readonly features: readonly Feature[];
}

/**
 * Whether heights (bed, swarf, cup, touch-off in z) can change what any need is judged by: a depth, a
 * thickness that is left, or an outline that a V cutter draws wider as it goes deeper.
 */
export const depthCounts = (job: Asked): boolean =>
  job.needs.some((need) => {
    if (need.kind === 'web' || need.kind === 'depth') return true;
    const names = outlinesIn(need);
    return job.features.some(({ name, cutter }) => cutter.kind === 'vee' && names.includes(name));
  });

/** Features whose outlines, and so the size and push-off of their cutters, some need is judged by. */
export const outlinesThatCount = ({ needs, features }: Asked): readonly Feature[] => {
  const names = new Set(needs.flatMap(outlinesIn));
  return features.filter(({ name }) => names.has(name));
};

function outlinesIn(need: Need): readonly string[] {
  switch (need.kind) {
    case 'lip':
    case 'meets':
      return need.features;
    case 'wall':
    case 'size':
      return [need.feature];
    case 'concentric':
    case 'misalignment':
    case 'web':
    case 'depth':
    case 'parallel':
    case 'goes-on':
      return [];
    default:
      return unreachable(need);
  }
}
