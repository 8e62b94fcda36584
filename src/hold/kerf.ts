import type { Feature } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import { differenceOf, grown } from '../plane/clip.ts';
import { moved } from '../plane/move.ts';
import { circleOutline, type Outline } from '../plane/outline.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { insetSlackMm } from '../sweep/numbers.ts';

/** Chords of cuts stray no further than this, mm. */
export const kerfChordMm = 0.02;

/** What a feature's cutter removes in plan, blank frame, at its full depth; holes clockwise. */
export function kerfOf(feature: Feature): readonly Outline<'blank'>[] {
  const radius = feature.cutter.diameterMm / 2;
  const outline = outlineOf(feature, kerfChordMm);
  const by = (outlines: readonly Outline<'blank'>[], mm: number): readonly Outline<'blank'>[] =>
    grown(outlines, mm, kerfChordMm);
  /** What a round cutter reaches of the inside. */
  const reached = (): readonly Outline<'blank'>[] => {
    const axis = by([outline], -(radius - insetSlackMm));
    return axis.length === 0 ? [outline] : by(axis, radius - insetSlackMm);
  };
  switch (feature.cut) {
    case 'pocket':
      return reached();
    case 'profile-inside':
      return differenceOf(reached(), by([outline], -2 * radius));
    case 'profile-outside':
      return differenceOf(by([outline], 2 * radius), [outline]);
    case 'drill':
      return [moved<'blank'>(circleOutline<'blank'>(radius, kerfChordMm), feature.at)];
    case 'chamfer':
    case 'chamfer-outside':
      return [];
    default:
      return unreachable(feature.cut);
  }
}
