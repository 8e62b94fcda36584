import { tangentOf } from '../../num/elementary.ts';
import { cutterAtFaceMm, isCutFromOutside } from '../cutting.ts';
import type { Feature } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';
import { checkFits } from './fits.ts';
import { narrowest } from './narrowest.ts';
import { ROUNDING_MM } from './need/limits.ts';

/** A chamfer needs a V cutter that is wide enough for it, and of a hole an outline that it fits into. */
export function checkChamfer(context: Context, feature: Feature, raw: RawFeature): void {
  const { name, cutter, shape } = feature;
  if (cutter.kind !== 'vee') {
    fault(
      context,
      [raw, 'cutter'],
      `${cutter.name} is a ${cutter.kind} cutter, and a chamfer is cut with a vee`,
      'name a vee cutter',
    );
    return;
  }
  if (cutter.vee === null) {
    fault(
      context,
      [raw, 'cutter'],
      `the vee cutter ${cutter.name} does not say its angle`,
      'write angle: 90 deg, the whole angle between its edges, with it in the shop file',
    );
    return;
  }
  if (raw.depth === 'through') {
    fault(
      context,
      [raw, 'depth'],
      `${name} is a chamfer, which has a depth or a width`,
      'write chamfer: 3, its width, or depth: 3',
    );
    return;
  }
  const key = raw.chamfer === undefined ? 'depth' : 'chamfer';
  const widthMm = cutterAtFaceMm(feature) - ROUNDING_MM;
  if (widthMm > cutter.diameterMm / 2)
    fault(
      context,
      [raw, key],
      `${name} is ${said(widthMm)} mm wide, and ${cutter.name} reaches ${said(cutter.diameterMm / 2)} mm from its tip`,
      `write at most ${said(mostOf(key, cutter.diameterMm / 2, cutter.vee.includedRad))}, or name a larger cutter`,
    );
  if (isCutFromOutside(feature.cut)) return;
  checkFits(context, feature, raw, 'write a narrower chamfer, or make the outline wider');
  const narrowestMm = narrowest(shape);
  if (narrowestMm !== null && 2 * widthMm > narrowestMm)
    fault(
      context,
      [raw, key],
      `${name} is ${said(widthMm)} mm wide from both sides, and its outline is ${said(narrowestMm)} mm at its narrowest`,
      'write less; the outline is where the chamfer meets the face',
    );
  else if (shape.kind === 'rectangle' && shape.cornerRadiusMm < widthMm)
    fault(
      context,
      [raw, 'corner-radius'],
      `corner-radius ${said(shape.cornerRadiusMm)} mm is sharper than a chamfer ${said(widthMm)} mm wide leaves at the face`,
      `write at least ${said(widthMm)}`,
    );
}

/** The most that can be written for this key. */
const mostOf = (key: 'depth' | 'chamfer', widthMm: number, includedRad: number): number =>
  key === 'chamfer' ? widthMm : widthMm / tangentOf(includedRad / 2);
