import { pathBounds } from '../../plane/path-measure.ts';
import { featurePath } from '../feature-path.ts';
import type { Feature } from '../job.ts';

/** The rectangle around a feature's outline, blank frame, mm. */
export interface Extent {
  readonly x: readonly [low: number, high: number];
  readonly y: readonly [low: number, high: number];
}

export function extentOf(feature: Feature): Extent {
  const { lowX, lowY, highX, highY } = pathBounds(featurePath(feature));
  return { x: [lowX, highX], y: [lowY, highY] };
}
