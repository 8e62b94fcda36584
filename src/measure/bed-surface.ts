import type { BedHeights } from '../job/shop.ts';
import { logLikelihood, type Sounding } from '../num/surface.ts';
import type { Height } from './bed-plane.ts';

/** More readings than this tell the law no better, and take long to work with. */
const MOST = 60;
/** How far the bed's own unevenness is tried, mm, and over what part of the readings' spacing it changes. */
const UNEVEN_MM = [0.001, 0.002, 0.004, 0.008, 0.016, 0.032, 0.064, 0.128, 0.256, 0.512];
const REACHES = [0.3, 1, 3, 10];

/**
 * The heights of a bed as a prediction takes them: place by place, with how uneven the bed is between
 * them. Every law is weighed by how likely it makes the readings; few readings leave many likely, and
 * then a larger unevenness counts. `told` says where they are from.
 */
export function bedHeightsOf(
  heights: readonly Height[],
  gaugeSdMm: number,
  told: Pick<BedHeights, 'measured' | 'because'>,
): BedHeights {
  const readings = heights.map(({ at, heightMm }) => ({ x: at.x, y: at.y, value: heightMm }));
  const every = Math.ceil(readings.length / MOST);
  const some = readings.filter((_, k) => k % every === 0);
  const apart = spacingOf(some);
  const laws = REACHES.flatMap((times) =>
    UNEVEN_MM.map((unevenSd) => {
      // A gauge is never perfect; without an error of its own a pair at one place could not be.
      const law = { gaugeSd: Math.max(gaugeSdMm, 1e-3), unevenSd, reach: times * apart };
      return { law, log: logLikelihood(some, law) };
    }),
  );
  const top = Math.max(...laws.map(({ log }) => log));
  const weighed = laws.map(({ law, log }) => ({ law, weight: Math.exp(log - top) }));
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0);
  const reach = Math.exp(
    weighed.reduce((sum, { law, weight }) => sum + (weight / total) * Math.log(law.reach), 0),
  );
  // Variances over reaches: how fast the bed changes, which is what counts between readings.
  const rate =
    weighed.reduce((sum, { law, weight }) => sum + (weight * law.unevenSd ** 2) / law.reach, 0) /
    total;
  return {
    points: heights.map(({ at, heightMm }) => ({ at, heightMm })),
    gaugeSdMm,
    unevenSdMm: Math.sqrt(rate * reach),
    reachMm: reach,
    ...told,
  };
}

/** Mean distance of a reading from the one next to it. */
function spacingOf(readings: readonly Sounding[]): number {
  const next = readings.map((one, k) =>
    readings.reduce((least, other, j) => {
      const far = Math.hypot(other.x - one.x, other.y - one.y);
      return j === k || far < 1 ? least : Math.min(least, far);
    }, Infinity),
  );
  const known = next.filter(Number.isFinite);
  return known.length === 0 ? 100 : known.reduce((sum, far) => sum + far, 0) / known.length;
}
