import { cutterAtFaceMm, isCutFromOutside } from '../cutting.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { featureOfCopy } from '../resolve/repeat.ts';
import { said } from '../text/said.ts';
import { extentOf } from './extent.ts';
import type { Known } from './job.ts';

/** Copies must keep out of each other and stay in the blank, and be judged by what each of them has. */
export function checkRepeat(context: Context, known: Known): void {
  const { raw, blank, features, needs, copies } = known;
  if (raw.repeat === undefined || copies.length === 1 || blank === null) return;
  const last = copies.at(-1)!;
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  for (const [index, axis] of (['x', 'y'] as const).entries()) {
    const across = features.map(({ feature }) => {
      const [low, high] = extentOf(feature)[axis];
      const groove = isCutFromOutside(feature.cut) ? 2 * cutterAtFaceMm(feature) : 0;
      return { feature, high, takesMm: high - low + groove };
    });
    const widest = across.toSorted((a, b) => b.takesMm - a.takesMm)[0];
    const pitchMm = last.by[axis] / Math.max(1, (raw.repeat.count[index] ?? 1) - 1);
    if (widest !== undefined && last.by[axis] > 0 && pitchMm < widest.takesMm)
      fault(
        context,
        [raw.repeat.pitch, index],
        `${widest.feature.name} takes ${said(widest.takesMm)} mm along ${axis.toUpperCase()}, and the pitch is ${said(pitchMm)} mm, so its copies run into each other`,
        `write at least ${said(widest.takesMm)}`,
      );
    const outermost = across.toSorted((a, b) => b.high - a.high)[0];
    if (outermost === undefined || outermost.high > sizes[axis]) continue;
    const reachMm = extentOf(featureOfCopy(outermost.feature, last))[axis][1];
    if (reachMm > sizes[axis])
      fault(
        context,
        [raw.repeat.count, index],
        `the last copy of ${outermost.feature.name} reaches ${axis} = ${said(reachMm)} mm, and the blank spans 0 to ${said(sizes[axis])} mm`,
        'write fewer, or a smaller pitch',
      );
  }
  for (const { need, raw: written } of needs)
    if (need.kind === 'wall')
      fault(
        context,
        [written, 'wall'],
        `${need.name} is about an edge of the blank, which is not an edge of each copy`,
        "write lip: with the part's own outline instead",
      );
}
