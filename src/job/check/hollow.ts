import { isConvex } from '../../plane/convex.ts';
import { flattened } from '../../plane/path-measure.ts';
import { featurePath } from '../feature-path.ts';
import type { Feature } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';

/** Chords stray from arcs by this much, and so much may a bulging outline seem hollow, mm. */
const CHORD_MM = 1e-4;

/**
 * Lips and meeting profiles are predicted for outlines that bulge everywhere; one with a hollow would
 * be judged by a rubber band round it, which is not it.
 */
export function checkHollow(
  context: Context,
  written: object,
  kind: 'lip' | 'meets',
  features: readonly Feature[],
): void {
  features.forEach((feature, index) => {
    const { kind: shape } = feature.shape;
    if (shape !== 'polygon' && shape !== 'outline') return;
    if (isConvex(flattened(featurePath(feature), CHORD_MM), CHORD_MM)) return;
    fault(
      context,
      [written, index],
      `${feature.name} has a hollow outline, and ${kind} is not predicted for one in this version`,
      'name an outline without hollows, or use wall, size or misalignment',
    );
  });
}
