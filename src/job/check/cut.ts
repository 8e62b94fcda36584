import { isChamfer, isCutFromOutside } from '../cutting.ts';
import type { Feature, Shape } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import { checkChamfer } from './chamfer.ts';
import { checkFits } from './fits.ts';
import { narrowest } from './narrowest.ts';

/** Whether this cutter can cut this feature: its size, its corners, its reach. */
export function checkCut(
  context: Context,
  feature: Feature,
  raw: RawFeature,
  thickMm: number,
): void {
  const { cutter, cut, shape, depthMm } = feature;
  // Stands in for one that is not known, which is told already.
  if (cutter.diameterMm === 0) return;
  if (isChamfer(cut)) {
    checkChamfer(context, feature, raw);
    if (depthMm <= thickMm) checkReach(context, feature, raw);
    return;
  }
  if (cutter.kind === 'vee') {
    fault(
      context,
      [raw, 'cutter'],
      `${cutter.name} is a vee cutter, which leaves no upright wall, and ${feature.name} is cut: ${cut}`,
      'write cut: chamfer, or name a flat cutter',
    );
    return;
  }
  if (cut === 'drill') checkDrilled(context, feature, raw);
  else if (!isCutFromOutside(cut)) checkInside(context, feature, raw, shape);
  if (depthMm <= thickMm) checkReach(context, feature, raw);
}

function checkReach(context: Context, { name, cutter, depthMm }: Feature, raw: RawFeature): void {
  const reaches = [
    ['flute', cutter.fluteMm],
    ['stick-out', cutter.stickOutMm],
  ] as const;
  const short = reaches.find(([, reachMm]) => reachMm !== null && reachMm < depthMm);
  if (short === undefined || depthMm === Infinity) return;
  const [what, reachMm] = [short[0], said(short[1] ?? 0)];
  fault(
    context,
    [raw, 'depth'],
    `${name} is ${said(depthMm)} mm deep, and ${cutter.name} has a ${what} of ${reachMm} mm`,
    `write at most ${reachMm}, or name a longer cutter`,
  );
}

function checkDrilled(context: Context, feature: Feature, raw: RawFeature): void {
  const { name, cutter, shape } = feature;
  if (shape.kind !== 'circle')
    fault(
      context,
      [raw, 'cut'],
      `${name} is drilled, and is no circle`,
      'write circle: and the diameter of the cutter',
    );
  else if (said(shape.diameterMm) !== said(cutter.diameterMm))
    fault(
      context,
      [raw, 'circle'],
      `${name} is drilled ${said(shape.diameterMm)} mm wide, and ${cutter.name} is ${said(cutter.diameterMm)} mm`,
      `write ${said(cutter.diameterMm)}, or cut: pocket`,
    );
}

/**
 * A cutter leaves inside corners of its own radius: a 1/4 in cutter, 1/8 in (common practice, no source).
 * A polygon's corners are drawn sharp and come out round by as much.
 */
function checkInside(context: Context, feature: Feature, raw: RawFeature, shape: Shape): void {
  const { name, cutter } = feature;
  const narrowestMm = narrowest(shape);
  const key = (['circle', 'rectangle', 'slot'] as const).find((one) => one === shape.kind);
  if (narrowestMm !== null && key !== undefined && narrowestMm < cutter.diameterMm) {
    fault(
      context,
      [raw, key],
      `${name} is ${said(narrowestMm)} mm at its narrowest, and ${cutter.name} cuts ${said(cutter.diameterMm)} mm wide`,
      `write at least ${said(cutter.diameterMm)}, or name a smaller cutter`,
    );
    return;
  }
  if (narrowestMm === null) {
    checkFits(context, feature, raw, 'name a smaller cutter, or make the outline wider');
    return;
  }
  const radiusMm = cutter.diameterMm / 2;
  if (shape.kind === 'rectangle' && shape.cornerRadiusMm < radiusMm)
    fault(
      context,
      [raw, 'corner-radius'],
      `corner-radius ${said(shape.cornerRadiusMm)} mm is sharper than ${cutter.name} can cut, which leaves ${said(radiusMm)} mm`,
      `write at least ${said(radiusMm)}, or name a smaller cutter`,
    );
}
