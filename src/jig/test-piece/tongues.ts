import type { Cutter, Job } from '../../job/job.ts';
import { betweenOutlinesMm } from '../../plane/distance.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';
import { blankInLayout } from '../../setup/place.ts';
import type { StopPart } from '../stop-part.ts';
import { bodiesOf } from '../stops.ts';
import { testNumbers, type Tongue } from './test-piece.ts';

/** Steps in which a free place is looked for along an edge, mm. */
const STEP_MM = 4;

/**
 * A tongue near each corner, on whichever of its two edges no stop is in the cutter's way, front up and
 * back up; a corner without a free place has none.
 */
export function tonguesOf(job: Job, stops: readonly StopPart[], cutter: Cutter): readonly Tongue[] {
  const { widthMm: w, heightMm: h, thickMm } = job.blank;
  const { rebateMm, rebateLongMm, webMm } = testNumbers;
  const tipMm = (thickMm + webMm) / 2;
  if (thickMm < 2 * webMm) return [];
  const bodies = stops.flatMap(bodiesOf).filter(({ highMm }) => highMm > tipMm);
  const reachMm = 2 * cutter.diameterMm + 2;
  const isFree = ({ low, high }: Tongue): boolean =>
    (['none', job.turn === 'about-y' ? 'x' : 'y'] as const).every((mirror) => {
      const corners = [
        { x: low.x - reachMm, y: low.y - reachMm },
        { x: high.x + reachMm, y: high.y + reachMm },
      ].map((p) => blankInLayout(job, mirror, p));
      const box = boxOf(corners[0]!, corners[1]!);
      return bodies.every(({ outline }) => betweenOutlinesMm(box, outline) > 0);
    });
  const corners = (['lower', 'upper'] as const).flatMap((level) =>
    (['left', 'right'] as const).map((hand) => ({ level, hand })),
  );
  return corners.flatMap(({ level, hand }) => {
    const name = `${level} ${hand}`;
    const onLevel = (inMm: number): Tongue => {
      const x = hand === 'left' ? inMm : w - inMm - rebateLongMm;
      const y = level === 'lower' ? 0 : h - rebateMm;
      return { name, low: { x, y }, high: { x: x + rebateLongMm, y: y + rebateMm } };
    };
    const onHand = (inMm: number): Tongue => {
      const x = hand === 'left' ? 0 : w - rebateMm;
      const y = level === 'lower' ? inMm : h - inMm - rebateLongMm;
      return { name, low: { x, y }, high: { x: x + rebateMm, y: y + rebateLongMm } };
    };
    const within = (longMm: number): readonly number[] =>
      Array.from(
        { length: Math.max(0, Math.floor((longMm / 2 - rebateLongMm) / STEP_MM)) },
        (_, i) => i * STEP_MM,
      );
    const found = [...within(w).map(onLevel), ...within(h).map(onHand)].find(isFree);
    return found === undefined ? [] : [found];
  });
}

const boxOf = (a: Point<'layout'>, b: Point<'layout'>): Outline<'layout'> => {
  const [x0, x1] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [y0, y1] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
};
