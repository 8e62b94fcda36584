import { depthsTo, type Feeds } from './feeds.ts';
import type { Move } from './program.ts';

type At = { readonly x: number; readonly y: number };

/** Bridges that are left standing along a way round, spread evenly; `wideMm` along the cutter's centre. */
export interface Tabs {
  readonly count: number;
  readonly wideMm: number;
  /** From the lower side of the sheet, z = 0. */
  readonly highMm: number;
}

/** Over the surface, where it goes on slowly, mm. */
const OVER_MM = 1;

/** Round a closed way of the cutter's centre at each depth, over the bridges where it would be lower. */
export function cutRound(
  loop: readonly At[],
  { topMm, bottomMm }: { readonly topMm: number; readonly bottomMm: number },
  tabs: Tabs,
  feeds: Feeds,
): readonly Move[] {
  const [first] = loop;
  if (first === undefined) return [];
  const way = withTabs(loop, tabs);
  const cut = (p: At, z: number, feedMmPerMin: number): Move => ({
    kind: 'cut',
    to: { x: p.x, y: p.y, z },
    feedMmPerMin,
  });
  return [
    { kind: 'over', x: first.x, y: first.y },
    cut(first, topMm + OVER_MM, feeds.alongMmPerMin),
    ...depthsTo(topMm, bottomMm, feeds.stepMm).flatMap((z) => {
      const low = (isTab: boolean): number => (isTab ? Math.max(z, tabs.highMm) : z);
      const moves: Move[] = [];
      let here = first;
      let height = Infinity;
      for (const { to, isTab } of way) {
        const level = low(isTab);
        if (level !== height)
          moves.push(cut(here, level, level > height ? feeds.alongMmPerMin : feeds.downMmPerMin));
        moves.push(cut(to, level, feeds.alongMmPerMin));
        [here, height] = [to, level];
      }
      return moves;
    }),
    { kind: 'up' },
  ];
}

/** The way in pieces, each all bridge or none of it. */
function withTabs(
  loop: readonly At[],
  { count, wideMm }: Tabs,
): readonly { readonly to: At; readonly isTab: boolean }[] {
  const legs = loop.map((from, i) => ({ from, to: loop[(i + 1) % loop.length]! }));
  const longMm = (leg: { readonly from: At; readonly to: At }): number =>
    Math.hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y);
  const wholeMm = legs.reduce((sum, leg) => sum + longMm(leg), 0);
  const ends = Array.from({ length: count }, (_, i) => ((i + 0.5) * wholeMm) / count).flatMap(
    (middle) => [middle - wideMm / 2, middle + wideMm / 2],
  );
  const isTab = (atMm: number): boolean =>
    ends.some((end, i) => i % 2 === 0 && atMm > end && atMm < ends[i + 1]!);
  let passed = 0;
  return legs.flatMap((leg) => {
    const long = longMm(leg);
    const from = passed;
    passed += long;
    const cuts = [...ends.filter((end) => end > from && end < passed), passed];
    let before = from;
    return cuts.map((end) => {
      const share = long === 0 ? 1 : (end - from) / long;
      const middle = (before + end) / 2;
      before = end;
      return {
        to: {
          x: leg.from.x + share * (leg.to.x - leg.from.x),
          y: leg.from.y + share * (leg.to.y - leg.from.y),
        },
        isTab: isTab(middle),
      };
    });
  });
}
