import { isWithin } from './stretch-inside.ts';
import { signedAreaMm2 } from './measure.ts';
import type { Outline } from './outline.ts';
import type { Frame } from './point.ts';

/** One connected stretch of plane: its outer line counter-clockwise, then its holes clockwise. */
export interface Region<F extends Frame> {
  readonly outlines: readonly Outline<F>[];
  readonly areaMm2: number;
}

/** The connected stretches that outlines enclose of which those that run clockwise are holes; largest first. */
export function regionsOf<F extends Frame>(outlines: readonly Outline<F>[]): readonly Region<F>[] {
  const sized = outlines.map((outline) => ({ outline, area: signedAreaMm2(outline) }));
  const outers = sized.filter(({ area }) => area > 0).toSorted((a, b) => a.area - b.area);
  const made = outers.map(({ outline, area }) => ({ outlines: [outline], areaMm2: area }));
  for (const { outline, area } of sized) {
    if (area >= 0) continue;
    // The smallest outer line around a hole is its own.
    const own = made.find((region) => isWithin(outline[0]!, [region.outlines[0]!]));
    if (own === undefined) continue;
    own.outlines.push(outline);
    own.areaMm2 += area;
  }
  return made.toSorted((a, b) => b.areaMm2 - a.areaMm2);
}
