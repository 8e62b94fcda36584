import type { Tabs } from '../job/holding.ts';
import { holdNumbers } from './numbers.ts';
import type { Strengths } from './wood.ts';

/**
 * What one tab bears in any direction, allowed, N: the weaker of tension across the grain and shear along
 * it, since nobody knows which way the grain runs at it.
 */
export const tabN = (
  { widthMm, thickMm }: Pick<Tabs, 'widthMm' | 'thickMm'>,
  { shear, tensionAcross }: Strengths,
): number => (Math.min(shear, tensionAcross) * widthMm * thickMm) / holdNumbers.tabSafety;

/** Fewest tabs of 6 mm that together bear a force with their own factor; at least 3, and higher ones rather than many. */
export function tabsFor(forceN: number, wood: Strengths, thickMm: number): Tabs {
  const widthMm = 6;
  const highest = Math.max(2, Math.min(6, Math.floor(thickMm / 2)));
  for (let high = 2; ; high++) {
    const count = Math.max(3, Math.ceil(forceN / tabN({ widthMm, thickMm: high }, wood)));
    if (count <= MANY_TABS || high >= highest) return { count, widthMm, thickMm: high };
  }
}

/** More are a nuisance to clean off. */
const MANY_TABS = 8;
