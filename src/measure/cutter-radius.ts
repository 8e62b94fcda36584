import { meanOf, sdOf } from '../num/spread-of.ts';
import type { Spread } from '../job/job.ts';
import type { Estimate } from './estimate.ts';

/**
 * The radius error of a cutter from how much its slots have grown. A slot grows by the cutter's radius
 * error less what pushed it off the wall, and a prediction takes a push-off off again in every cut: so
 * the mean of it is put back here. What differs from cut to cut is in the slots' own scatter; a push-off
 * that stays is not, and makes the radius less sure.
 */
export function radiusFrom(growth: Estimate, pushOff: Spread): Estimate {
  const { distribution, recurs } = pushOff;
  const varies = recurs === 'feature' || recurs === 'placing' || recurs === 'part';
  const sd = varies ? growth.sd : Math.hypot(growth.sd, sdOf(distribution));
  return {
    value: growth.value + meanOf(distribution),
    sd,
    // Welch-Satterthwaite, the limits of the push-off being known (JCGM 100:2008, G.4.1).
    dof: growth.sd === 0 ? Infinity : growth.dof * (sd / growth.sd) ** 4,
  };
}
