import { isCutFromOutside } from '../cutting.ts';
import { DEFAULTS } from '../defaults.ts';
import type { Cutter, Face, Feature, Shape } from '../job.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import type { Drawer } from './cutters.ts';
import { cutterNamed } from './cutters.ts';
import { cutOf, depthOf } from './depth.ts';
import { mm, pointMm, radians } from './lengths.ts';
import { outlineOf } from './outline.ts';
import { assumed } from './spread.ts';

/** A feature, and the mapping it was written in. */
export interface KnownFeature {
  readonly feature: Feature;
  readonly raw: RawFeature;
}

/** The features of one face that could be made out; a through cut is `thickMm` deep. */
export function featuresOf(
  context: Context,
  raws: readonly RawFeature[],
  face: Face,
  thickMm: number,
  drawer: Drawer,
): readonly KnownFeature[] {
  return raws.flatMap((raw) => {
    const known = cutterNamed(context, drawer, [raw, 'cutter'], raw.cutter);
    const cutter = known ?? noCutter(raw.cutter);
    const shape = shapeOf(context, raw, cutter);
    const at = placeOf(context, raw);
    const depth = depthOf(context, raw, cutter, thickMm);
    if (shape === null || at === null || depth === null) return [];
    const feature: Feature = {
      name: raw.name,
      face,
      shape,
      at,
      turnedRad: radians(raw.turned),
      cut: cutOf(raw),
      ...depth,
      cutter,
    };
    return [{ feature, raw }];
  });
}

/**
 * Stands in for a cutter that is not known, which is a fault already, so that the rest of the feature is
 * still looked at. Without a width it is never too wide.
 */
const noCutter = (name: string): Cutter => ({
  name,
  kind: 'flat',
  diameterMm: 0,
  radiusError: assumed(DEFAULTS.cutterRadius),
  vee: null,
  pushOff: assumed(DEFAULTS.pushOff),
  fluteMm: null,
  stepMm: null,
  stickOutMm: null,
  speedPerMin: null,
  feedMmPerMin: null,
});

const SHAPES = ['circle', 'rectangle', 'slot', 'polygon', 'outline'] as const;

function shapeOf(context: Context, raw: RawFeature, cutter: Cutter): Shape | null {
  const given = SHAPES.filter((key) => raw[key] !== undefined);
  if (given.length !== 1) {
    if (given.length > 0 || !context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        given.length === 0
          ? `the feature ${raw.name} has no shape`
          : `the feature ${raw.name} has ${given.length} shapes: ${given.join(', ')}`,
        'write one of circle, rectangle, slot, polygon or outline',
      );
    return null;
  }
  if (raw['corner-radius'] !== undefined && raw.rectangle === undefined)
    fault(
      context,
      [raw, 'corner-radius'],
      `corner-radius is for a rectangle, and ${raw.name} is a ${given[0]!}`,
      'take it out',
    );
  if (raw.circle !== undefined) return { kind: 'circle', diameterMm: mm(raw.circle) };
  if (raw.slot !== undefined)
    return { kind: 'slot', lengthMm: mm(raw.slot[0]), widthMm: mm(raw.slot[1]) };
  if (raw.polygon !== undefined) return polygonOf(raw.polygon);
  if (raw.outline !== undefined) return outlineOf(context, raw.outline);
  if (raw.rectangle === undefined) return null;
  const [width, height] = raw.rectangle;
  return {
    kind: 'rectangle',
    widthMm: mm(width),
    heightMm: mm(height),
    cornerRadiusMm: cornerRadius(raw, cutter),
  };
}

/**
 * Left out, the corners of what is cut from inside are the cutter's, those of a chamfer what a V leaves
 * at the face, its width, and those of an outside are sharp.
 */
function cornerRadius(raw: RawFeature, cutter: Cutter): number {
  if (raw['corner-radius'] !== undefined) return mm(raw['corner-radius']);
  if (isCutFromOutside(cutOf(raw))) return 0;
  if (raw.chamfer !== undefined) return mm(raw.chamfer);
  return cutter.diameterMm / 2;
}

/** Corners counter-clockwise: which way round a person writes them says nothing. */
function polygonOf(raw: NonNullable<RawFeature['polygon']>): Shape {
  const vertices = raw.map(pointMm);
  const twiceArea = vertices.reduce((sum, a, index) => {
    const b = vertices[(index + 1) % vertices.length]!;
    return sum + (a.x * b.y - b.x * a.y);
  }, 0);
  return { kind: 'polygon', vertices: twiceArea < 0 ? vertices.reverse() : vertices };
}

function placeOf(context: Context, raw: RawFeature): Feature['at'] | null {
  if (raw.at !== undefined) return pointMm(raw.at);
  const hasOrigin = raw.polygon !== undefined || raw.outline !== undefined;
  if (hasOrigin && !context.touched.has(raw)) return { x: 0, y: 0 };
  if (!context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      `the feature ${raw.name} does not say where it is`,
      'write at: [140, 90], its centre seen from the front',
    );
  return null;
}
