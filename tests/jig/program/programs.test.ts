import { describe, expect, it } from 'vitest';
import { programClash, wayOf } from '../../../src/jig/program/check.ts';
import { boringCutter } from '../../../src/jig/program/bore-holes.ts';
import { depthsTo, feedsOf } from '../../../src/jig/program/feeds.ts';
import { millStops } from '../../../src/jig/program/mill-stops.ts';
import { skim } from '../../../src/jig/program/skim.ts';
import { bodiesOf } from '../../../src/jig/stops.ts';
import { toSegmentMm } from '../../../src/plane/distance.ts';
import { aJob, flat6, long6 } from '../a-job.ts';
import { boring, madeOf, milledJob, milling, partsOf, pecking, skimming } from './some-programs.ts';

const parts = partsOf(milledJob);
const bodies = parts.flatMap(bodiesOf);

describe('the program that mills the stops', () => {
  it('has room for itself, on the bed of the job', () => {
    expect(programClash(milledJob, milling, long6, bodies)).toBeNull();
  });

  // Lands at 30 and 250 on the fence, one in the middle of each side stop; cutter 6, so its axis
  // stands 3 off the final faces, at the foot of the band, 12 less 2 above the bed.
  it('ends with the cutter on the final faces, all along every land', () => {
    const way = wayOf(milling);
    const legs = way.slice(1).map((to, i) => [way[i]!, to] as const);
    const passes = (from: { x: number; y: number }, to: { x: number; y: number }): number =>
      legs.filter(
        ([a, b]) =>
          a.z === 10 &&
          b.z === 10 &&
          toSegmentMm(from, a, b) < 1e-9 &&
          toSegmentMm(to, a, b) < 1e-9,
      ).length;
    expect(passes({ x: 25, y: 3 }, { x: 35, y: 3 })).toBe(2);
    expect(passes({ x: 245, y: 3 }, { x: 255, y: 3 })).toBe(2);
    expect(passes({ x: 3, y: 85 }, { x: 3, y: 95 })).toBe(2);
    expect(passes({ x: 277, y: 85 }, { x: 277, y: 95 })).toBe(2);
    // 4 high in passes of 3: two of them, 0.3 off the final one.
    expect(passes({ x: 25, y: 3.3 }, { x: 35, y: 3.3 })).toBe(1);
  });

  it('never cuts further than the final faces', () => {
    for (const p of wayOf(milling).filter(({ z }) => z < 14)) {
      expect(p.x).toBeGreaterThanOrEqual(3);
      expect(p.x).toBeLessThanOrEqual(277);
      expect(p.y).toBeGreaterThanOrEqual(3);
    }
  });

  it('is refused where the cutter would leave the travel, with what to write instead', () => {
    const far = { ...milledJob, onBed: { ...milledJob.onBed, value: { x: 330, y: 50 } } };
    expect(programClash(far, milling, long6, [])).toEqual({
      kind: 'cannot',
      because: 'mill the stops: the cutter would go 7 mm beyond the travel of X',
      wouldFit: 'on-bed: further from that end',
    });
    const shop = {
      ...milledJob.shop,
      machine: { ...milledJob.shop.machine, travelMm: { x: 600, y: 400, z: 10 } },
    };
    expect(programClash({ ...milledJob, shop }, milling, long6, [])).toMatchObject({
      because: 'mill the stops: goes from 21 mm down to 10 mm, more than the 10 mm that Z travels',
    });
  });

  it('is refused where cutter or nut would strike something', () => {
    const post = (highMm: number, x: number): Parameters<typeof programClash>[3] => [
      {
        name: 'post',
        outline: [
          { x, y: 9 },
          { x: x + 4, y: 9 },
          { x: x + 4, y: 13 },
          { x, y: 13 },
        ],
        lowMm: 0,
        highMm,
      },
    ];
    // The cutter passes at y = 3 and is 3 wide to that side: it swings out to 3 + 1.5 + 2 between passes.
    expect(programClash(milledJob, milling, long6, post(30, 28))).toMatchObject({
      because: expect.stringMatching(
        /^mill the stops: the cutter would strike the post, /,
      ) as string,
    });
    expect(programClash(milledJob, milling, long6, post(9, 28))).toBeNull();
    // 60 from the tip up hangs nothing: with the nut 30 above the tip a post of 45 beside the way is too high.
    const short = { ...long6, stickOutMm: 20 };
    expect(programClash(milledJob, milling, short, post(45, 45))).toMatchObject({
      because: expect.stringMatching(/the collet nut would strike the post/) as string,
    });
  });

  it('is refused when nobody says how the cutter is driven', () => {
    expect(millStops(milledJob, parts, { ...long6, feedMmPerMin: null })).toEqual({
      kind: 'cannot',
      because: 'the shop file does not say how flat 6 is driven, and a program must',
      wouldFit: "speed: 18000 and feed: 1800 (its maker's figures) at cutter flat 6",
    });
  });
});

describe('holes', () => {
  it('are pecked straight down where the cutter fills them, never deeper at once than it is wide', () => {
    const down = wayOf(pecking).filter(({ x, z }) => x === 0 + 10 && z <= 1);
    expect(Math.min(...down.map(({ z }) => z))).toBe(-12);
    let deepest = 0;
    for (const { z } of down) {
      expect(deepest - z).toBeLessThanOrEqual(3 + 1e-9);
      deepest = Math.min(deepest, z);
    }
    // Four pecks of 3, and out of the hole before each and after the last.
    expect(down.filter(({ z }) => z === 1)).toHaveLength(5);
  });

  it('are bored to their diameter by a thinner cutter, to the bottom all round', () => {
    const bottom = wayOf(boring).filter(({ x, z }) => z === -12 && x < 100);
    expect(bottom.length).toBeGreaterThan(8);
    const round = bottom.filter((p) => Math.hypot(p.x - 10, p.y + 5) > 1e-9);
    for (const p of round) expect(Math.hypot(p.x - 10, p.y + 5) + 3).toBeCloseTo(4, 9);
    const turned = round.map((p) => Math.atan2(p.y + 5, p.x - 10));
    expect(Math.max(...turned) - Math.min(...turned)).toBeGreaterThan(5);
  });

  it('take the widest cutter that goes in, or tell which would', () => {
    const hole = { at: { x: 0, y: 0 }, diameterMm: 6, topMm: 0, bottomMm: -12 };
    const thin = { ...flat6, name: 'flat 3', diameterMm: 3 };
    expect(madeOf(boringCutter([thin, flat6], [hole])).name).toBe('flat 6');
    expect(madeOf(boringCutter([thin, flat6], [{ ...hole, diameterMm: 5 }])).name).toBe('flat 3');
    expect(boringCutter([flat6], [{ ...hole, diameterMm: 5 }])).toMatchObject({
      wouldFit: 'a flat cutter of diameter 5 or less that sticks out 12 or more',
    });
  });
});

describe('skimming', () => {
  it('passes over the whole spoilboard', () => {
    const way = wayOf(skimming).map((p) => ({ x: p.x - 50, y: p.y - 50, z: p.z }));
    const lanes = way.slice(1).map((to, i) => [way[i]!, to] as const);
    const low = lanes.filter(([a, b]) => a.z === -0.3 && b.z === -0.3 && a.y === b.y);
    // Every lane runs from the right end to the left, and the next lies within the cutter's width.
    const ys = low.map(([a]) => a.y + 50).sort((a, b) => a - b);
    expect(ys[0]).toBe(0);
    expect(ys.at(-1)).toBe(400);
    for (let i = 1; i < ys.length; i++) expect(ys[i]! - ys[i - 1]!).toBeLessThanOrEqual(4 + 1e-9);
    for (const [a, b] of low) expect([a.x + 50, b.x + 50]).toEqual([600, 0]);
  });

  it.each([
    [{ depthMm: 0.3, laneMm: 7 }, 'lane: 3.6 or so'],
    [{ depthMm: 10, laneMm: 4 }, 'depth: 1 or less'],
    [{ depthMm: 4, laneMm: 4 }, 'depth: 3 or less, and skim again'],
  ])('is refused for %o, with what would fit', (wish, wouldFit) => {
    expect(skim(aJob(), flat6, wish)).toMatchObject({ kind: 'cannot', wouldFit });
  });
});

describe('depths of passes', () => {
  it('end at the bottom in equal steps, none deeper than allowed', () => {
    expect(depthsTo(0, -12, 3)).toEqual([-3, -6, -9, -12]);
    expect(depthsTo(14, 10, 3)).toEqual([12, 10]);
    expect(depthsTo(0, -0.1, 3)).toEqual([-0.1]);
  });

  it('are half the cutter deep when the shop file does not say', () => {
    expect(madeOf(feedsOf({ ...flat6, stepMm: null })).stepMm).toBe(3);
  });
});
