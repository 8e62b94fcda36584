import { describe, expect, it } from 'vitest';
import { plateRows } from '../../src/measure/plate.ts';
import { shimPlan, type Shim } from '../../src/measure/shims.ts';
import { shimLaws } from './shim-laws.ts';
import { places } from './shop-beds.ts';

const PAPER: Shim = { name: 'paper', thickMm: 0.1, sdMm: 0.003, count: null };
const CORNERS = [
  { x: 0, y: 0 },
  { x: 600, y: 0 },
  { x: 0, y: 400 },
  { x: 600, y: 400 },
];
const leaning = (perMm: number) => places(4, 3).map((at) => ({ at, heightMm: -perMm * at.x }));

describe('a plate on its screws', () => {
  it('goes through its screws, and tips as a plane when they are lifted as one', () => {
    const at = [...CORNERS, { x: 150, y: 130 }];
    const rows = plateRows(CORNERS, at)!;
    CORNERS.forEach((_, i) => {
      rows[i]!.forEach((share, j) => {
        expect(share).toBeCloseTo(i === j ? 1 : 0, 10);
      });
    });
    const tipped = CORNERS.map(({ x, y }) => 0.2 + 0.001 * x - 0.002 * y);
    const inside = rows[4]!.reduce((sum, share, j) => sum + share * tipped[j]!, 0);
    expect(inside).toBeCloseTo(0.2 + 0.001 * 150 - 0.002 * 130, 10);
  });

  it('cannot be said for two screws, or three in line', () => {
    expect(plateRows(CORNERS.slice(0, 2), CORNERS)).toBeNull();
    expect(
      plateRows(
        [0, 100, 300].map((x) => ({ x, y: 5 })),
        CORNERS,
      ),
    ).toBeNull();
  });
});

describe('a shim plan', () => {
  it('lifts the low side of a leaning bed by what is at hand, and nothing else', () => {
    const answer = shimPlan(leaning(0.4 / 600), CORNERS, [PAPER], 0.005);
    if (answer.kind !== 'plan') throw new Error(answer.kind);
    const lifts = answer.plan.at.map(({ stack }) => stack.pieces.length);
    expect([lifts[0], lifts[2]]).toEqual([0, 0]);
    expect(lifts[1]).toBeGreaterThan(0);
    expect(answer.plan.expected.rangeMm).toBeLessThan(0.12);
    // Two of paper, 0.003 each, under the screw itself.
    expect(Math.max(...answer.plan.sdsMm)).toBeGreaterThan(0.005);
  });

  it('leaves a parallel bed alone, and says when there is nothing to lift with or on', () => {
    expect(shimPlan(leaning(0), CORNERS, [PAPER], 0.005).kind).toBe('leave alone');
    expect(shimPlan(leaning(0.02 / 600), CORNERS, [PAPER], 0.005).kind).toBe('leave alone');
    expect(shimPlan(leaning(0.001), CORNERS, [], 0.005).kind).toBe('no stock');
    expect(shimPlan(leaning(0.001), CORNERS.slice(0, 2), [PAPER], 0.005).kind).toBe('no hold');
  });

  it('never bends a flat bed by more than the readings can tell, however much it leans', () => {
    const heights = places(4, 3).map((at) => ({
      at,
      heightMm: -0.0006 * at.x - 0.0007 * at.y,
    }));
    for (const thickMm of [0.1, 0.17, 0.25]) {
      const answer = shimPlan(heights, CORNERS, [{ ...PAPER, thickMm }], 0.005);
      if (answer.kind !== 'plan') throw new Error(answer.kind);
      expect(answer.plan.expected.flatnessMm).toBeLessThan(2 * 0.005 + 1e-9);
      expect(answer.plan.expected.rangeMm).toBeLessThan(answer.plan.before.rangeMm);
    }
  });

  it('takes no more pieces than there are', () => {
    const answer = shimPlan(leaning(0.001), CORNERS, [{ ...PAPER, count: 2 }], 0.005);
    const used =
      answer.kind === 'plan'
        ? answer.plan.at.reduce((sum, { stack }) => sum + stack.pieces.length, 0)
        : 0;
    expect(used).toBe(2);
  });

  it('is as good as trying every choice on small beds, never worse than none, and no piece is idle', () => {
    for (let seed = 1; seed <= 3; seed++) expect(shimLaws(seed, 3)).toBeLessThan(1e-9);
    expect(shimLaws(7, 4)).toBeLessThan(1e-9);
  });
});
