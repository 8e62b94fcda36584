import type { Cutter } from '../../job/job.ts';
import { cannot, made, type Step } from '../answer.ts';
import type { ProgramCutter } from './program.ts';

/** How a cutter is driven: feeds in mm a minute, `stepMm` the depth of one pass. */
export interface Feeds {
  readonly cutter: ProgramCutter;
  readonly radiusMm: number;
  readonly alongMmPerMin: number;
  readonly downMmPerMin: number;
  readonly stepMm: number;
}

/** Common practice, no source: straight down at a third of the feed. */
const DOWN_SHARE = 1 / 3;
/** Common practice, no source: a pass half as deep as the cutter is wide when nobody says. */
const STEP_PER_DIAMETER = 0.5;

/** What the shop file says about driving a cutter; a program without speed or feed is not made up. */
export function feedsOf(cutter: Cutter): Step<Feeds> {
  const { name, diameterMm, speedPerMin, feedMmPerMin, stepMm } = cutter;
  if (speedPerMin === null || feedMmPerMin === null)
    return cannot(
      `the shop file does not say how ${name} is driven, and a program must`,
      `speed: 18000 and feed: 1800 (its maker's figures) at cutter ${name}`,
    );
  return made({
    cutter: { name, diameterMm, speedPerMin },
    radiusMm: diameterMm / 2,
    alongMmPerMin: feedMmPerMin,
    downMmPerMin: feedMmPerMin * DOWN_SHARE,
    stepMm: stepMm ?? diameterMm * STEP_PER_DIAMETER,
  });
}

/** Depths from `topMm` (not counted) down to `bottomMm` in equal steps, none deeper than `stepMm`. */
export function depthsTo(topMm: number, bottomMm: number, stepMm: number): readonly number[] {
  // A whole number of steps must not become one more by rounding.
  const count = Math.max(1, Math.ceil((topMm - bottomMm) / stepMm - 1e-9));
  return Array.from({ length: count }, (_, i) =>
    i + 1 === count ? bottomMm : topMm - ((topMm - bottomMm) * (i + 1)) / count,
  );
}
