import type { Blank, Feature, Need } from '../../job.ts';
import type { Context } from '../../resolve/context.ts';
import { fault } from '../../resolve/context.ts';
import type { RawNeed } from '../../schema/raw-job.ts';
import { extentOf } from '../extent.ts';
import { checkNominal } from './limits.ts';

type Of<K extends Need['kind']> = Extract<Need, { kind: K }>;

/** A depth is of a floor, so not of a cut that goes through. */
export function checkDepth(
  context: Context,
  need: Of<'depth'>,
  raw: RawNeed,
  feature: Feature,
): void {
  if (feature.through)
    fault(
      context,
      [raw, 'depth'],
      `${feature.name} is cut through, so it has no floor whose depth could be off`,
      'name a feature with a depth',
    );
  else checkNominal(context, need, raw, [feature.depthMm, feature.depthMm]);
}

export function checkSize(
  context: Context,
  need: Of<'size'>,
  raw: RawNeed,
  feature: Feature,
): void {
  const [low, high] = extentOf(feature)[need.along];
  checkNominal(context, need, raw, [high - low, high - low]);
}

/** To the edge that is named, or to the nearest. */
export function checkWall(
  context: Context,
  blank: Blank | null,
  need: Of<'wall'>,
  raw: RawNeed,
  feature: Feature,
): void {
  if (blank === null) return;
  const { x, y } = extentOf(feature);
  const walls = {
    left: x[0],
    right: blank.widthMm - x[1],
    lower: y[0],
    upper: blank.heightMm - y[1],
  };
  const leastMm = need.to === null ? Math.min(...Object.values(walls)) : walls[need.to];
  checkNominal(context, need, raw, [leastMm, leastMm]);
}
