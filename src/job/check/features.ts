import type { Blank } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { KnownFeature } from '../resolve/features.ts';
import { said } from '../text/said.ts';
import { checkCut } from './cut.ts';
import { extentOf } from './extent.ts';
import type { Known } from './job.ts';
import { checkShape } from './shape.ts';

/** Every feature must have a name of its own, be a shape its cutter can cut, and lie in the blank. */
export function checkFeatures(context: Context, { blank, features }: Known): void {
  const seen = new Set<string>();
  for (const { feature, raw } of features) {
    if (seen.has(feature.name))
      fault(
        context,
        [raw, 'name'],
        `a second feature is called ${feature.name}`,
        'give each its own name',
      );
    seen.add(feature.name);
    if (context.spoilt.has(raw)) continue;
    const isSound = checkShape(context, feature, raw);
    if (isSound) checkCut(context, feature, raw, blank?.thickMm ?? Infinity);
    if (isSound && blank !== null) checkPlace(context, blank, { feature, raw });
    if (blank !== null && feature.depthMm > blank.thickMm)
      fault(
        context,
        [raw, 'depth'],
        `${feature.name} is ${said(feature.depthMm)} mm deep, and the blank is ${said(blank.thickMm)} mm thick`,
        `write at most ${said(blank.thickMm)}, or through`,
      );
  }
}

function checkPlace(context: Context, blank: Blank, { feature, raw }: KnownFeature): void {
  const extent = extentOf(feature);
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  for (const axis of ['x', 'y'] as const) {
    const [low, high] = extent[axis];
    // Rounding of the outline's arcs: some ulps of the size.
    const slack = 64 * Number.EPSILON * sizes[axis];
    const out = low < -slack ? low : high > sizes[axis] + slack ? high : null;
    if (out === null) continue;
    const index = axis === 'x' ? 0 : 1;
    fault(
      context,
      raw.at === undefined ? [raw, feature.shape.kind] : [raw.at, index],
      `${feature.name} reaches ${axis} = ${said(out)} mm, and the blank spans 0 to ${said(sizes[axis])} mm`,
      'move it, or make it smaller',
    );
  }
}
