import type { Holding } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { limitsOf } from '../num/spread-of.ts';
import { intersectionOf } from '../plane/clip.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Placing } from '../setup/placing.ts';
import type { PlannedForce } from './force.ts';
import { kerfOf } from './kerf.ts';
import { strengthsOf } from './wood.ts';

/** Wood that is left thin over a pocket of the first placing when the second cuts above it, with nothing under it. */
export interface ThinWeb {
  readonly cut: string;
  readonly over: string;
  readonly thickMm: number;
  /** How many times the planned push it bears before it breaks. An estimate. */
  readonly factor: number;
}

/** Bears less than this many times the push: told. */
const ENOUGH = 2.5;
const POISSON = 0.3;

/**
 * Thin webs that the cutter may break through, as plates held all round and pushed in the middle by a disc of the cutter's
 * radius r: s = 3 F (1 + nu) ln(a / r) / (2 pi t^2), against the tension that the wood bears across its grain. Source:
 * Roark's Formulas for Stress and Strain, circular plates (from memory); push and strength are estimates. The push is taken as
 * large as the sideways force. Empty when a filler lies there.
 */
export function thinWebs(
  job: Job,
  holding: Holding,
  placing: Placing,
  force: PlannedForce,
): readonly ThinWeb[] {
  if (placing.order === 'first' || holding.hasFiller) return [];
  const { thickMm, thickSpread, material } = job.blank;
  const thinnestMm = thickMm + Math.min(0, limitsOf(thickSpread.distribution)[0]);
  const { tensionAcross } = strengthsOf(material);
  const here = job.features.filter(({ face }) => face === placing.faceUp);
  const under = job.features.filter(({ face }) => face !== placing.faceUp);
  return here.flatMap((cut) =>
    under.flatMap((other): ThinWeb[] => {
      const leftMm = thinnestMm - cut.depthMm - other.depthMm;
      if (leftMm <= 0) return [];
      const both = intersectionOf(kerfOf(cut), kerfOf(other));
      if (both.length === 0) return [];
      const widest = both.reduce((most, outline) => {
        const { lowX, lowY, highX, highY } = boundsOf(outline);
        return Math.max(most, Math.min(highX - lowX, highY - lowY) / 2);
      }, 0);
      const spreadOver = Math.log(Math.max(1, widest / (cut.cutter.diameterMm / 2)));
      const stress =
        (3 * force.sidewaysN * (1 + POISSON) * spreadOver) / (2 * Math.PI * leftMm ** 2);
      const factor = stress === 0 ? Infinity : tensionAcross / stress;
      return factor >= ENOUGH ? [] : [{ cut: cut.name, over: other.name, thickMm: leftMm, factor }];
    }),
  );
}
