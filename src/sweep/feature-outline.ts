import type { Feature } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { moved, turned } from '../plane/move.ts';
import { flattened } from '../plane/path-measure.ts';
import { circleOutline, rectangleOutline, slotOutline, type Outline } from '../plane/outline.ts';

/** The outline that a feature draws on its face, nominal, blank frame, chords within `chordMm`. */
export function outlineOf(feature: Feature, chordMm: number): Outline<'blank'> {
  return moved(turned(upright(feature, chordMm), feature.turnedRad), feature.at);
}

function upright({ shape }: Feature, chordMm: number): Outline<'blank'> {
  switch (shape.kind) {
    case 'circle':
      return circleOutline(shape.diameterMm / 2, chordMm);
    case 'rectangle':
      return rectangleOutline(shape.widthMm, shape.heightMm, shape.cornerRadiusMm, chordMm);
    case 'slot':
      return slotOutline(shape.lengthMm, shape.widthMm, chordMm);
    case 'polygon':
      return shape.vertices;
    case 'outline':
      return flattened(shape.path, chordMm);
    default:
      return unreachable(shape);
  }
}
