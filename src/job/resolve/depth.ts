import { tangentOf } from '../../num/elementary.ts';
import { isChamfer } from '../cutting.ts';
import type { Cut, Cutter, Feature } from '../job.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm } from './lengths.ts';

/** How a feature is cut: a width of chamfer says it too. */
export const cutOf = (raw: RawFeature): Cut =>
  raw.cut ?? (raw.chamfer === undefined ? 'pocket' : 'chamfer');

/** How deep a feature is cut; null, with its fault, when it does not say. */
export function depthOf(
  context: Context,
  raw: RawFeature,
  cutter: Cutter,
  thickMm: number,
): Pick<Feature, 'depthMm' | 'through'> | null {
  if (raw.chamfer !== undefined && !isChamfer(cutOf(raw))) {
    fault(
      context,
      [raw, 'chamfer'],
      `chamfer says how wide a chamfer is, and ${raw.name} is cut: ${cutOf(raw)}`,
      'take it out, or write cut: chamfer',
    );
    return null;
  }
  if (raw.chamfer !== undefined && raw.depth !== undefined) {
    fault(
      context,
      [raw, 'depth'],
      `${raw.name} has both a depth and a width of chamfer`,
      'write one; the other follows from the angle of the cutter',
    );
    return null;
  }
  if (raw.chamfer !== undefined)
    return { depthMm: chamferDepth(mm(raw.chamfer), cutter), through: false };
  if (raw.depth === 'through') return { depthMm: thickMm, through: true };
  if (raw.depth !== undefined) return { depthMm: mm(raw.depth), through: false };
  if (!context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      `the feature ${raw.name} does not say how deep it is`,
      raw.cut !== undefined && isChamfer(raw.cut)
        ? 'write chamfer: 3, its width, or depth: 3'
        : 'write depth: 6, or through',
    );
  return null;
}

/** A V cutter goes as deep as its half angle makes the wanted width; one without an angle is a fault elsewhere. */
const chamferDepth = (widthMm: number, { vee }: Cutter): number =>
  vee === null ? widthMm : widthMm / tangentOf(vee.includedRad / 2);
