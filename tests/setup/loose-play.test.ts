import { describe, expect, it } from 'vitest';
import { onDowels } from './loose-job.ts';
import { compared } from './loose-play/agreement.ts';
import { CASES } from './loose-play/cases.ts';
import { cubePoint } from './loose-play/numbers.ts';
import { onLayout } from './loose-play/on-layout.ts';
import { lainBy } from './loose-play/trials.ts';
import { leastBeyond } from './loose-play/true-sets.ts';

// Where a loose blank lies: uniform over all poses that the clearances allow (registration.md rule 7), against
// rejection sampling from that set, written without the model. Every case: loose-play.deep.ts.
const QUICK = [
  'two dowels, one looser',
  'three dowels whose best fit is outside the set',
  'the blank in a nest',
  'a polygon in a nest',
];

const FEW_WALLS = Object.keys(CASES).filter((name) => !/slot|round/.test(name));

const TRUE_MM = 1e-7;

describe('taken up anywhere', () => {
  it.each(QUICK)('every pose is as likely as another: %s', (name) => {
    const { kept, apart } = compared(CASES[name]!(), 800, 30_000, 0.003);
    expect(kept).toBeGreaterThan(600);
    expect(apart).toEqual([]);
  });

  it.each(Object.keys(CASES))('no pose is outside the set: %s', (name) => {
    const { job, off, beyond, lineMm } = CASES[name]!();
    const poses = lainBy(job, off, 60, cubePoint).map((lain) => onLayout(lain, lineMm));
    const most = Math.max(...poses.map(beyond));
    expect(most).toBeLessThan(TRUE_MM + arcSlackMm(name));
    // And some are near its edge.
    expect(most).toBeGreaterThan(-0.02);
  });

  it.each(FEW_WALLS)('draws at their ends give the outermost turns: %s', (name) => {
    const { job, off, beyond, box, lineMm } = CASES[name]!();
    const poseAt = (turn: number) =>
      onLayout(lainBy(job, off, 1, () => [turn, 0.5, 0.5])[0]!, lineMm);
    const [low, high] = [poseAt(0).sine, poseAt(1).sine];
    expect(low).toBeLessThan(high);
    const slackMm = arcSlackMm(name);
    const [start, end] = [leastBeyond(beyond, low, box), leastBeyond(beyond, high, box)];
    expect(Math.max(start, end)).toBeLessThan(TRUE_MM + slackMm);
    // A ten-thousandth further, with what tangents leave of arcs, nothing is left.
    const on = 1e-4 * (high - low) + slackMm / 20;
    expect(leastBeyond(beyond, low - on, box)).toBeGreaterThan(0);
    expect(leastBeyond(beyond, high + on, box)).toBeGreaterThan(0);
  });
});

/** Tangents of arcs stand at every 15 degrees: the place between two is this much further at a gap of 0.2 mm. */
function arcSlackMm(name: string): number {
  return /slot|round/.test(name) ? 0.2 * (1 / Math.cos(Math.PI / 24) - 1) : 0;
}

describe('what binds', () => {
  it('lies at the best fit on two dowels that are too far apart: middle on middle, line on line', () => {
    // Off along the line by 0.03 each way from the middle: 0.12 too far in all, and the clearances leave 0.1.
    const off = {
      'clearance/1': 0.1,
      'clearance/2': 0.1,
      'hole-place/1/y': -0.06,
      'hole-place/2/y': 0.06,
    };
    const job = onDowels({ drilled: 'separately' });
    for (const [lain] of [0, 0.4, 1].map((u) => lainBy(job, off, 1, () => [u, u, u]))) {
      expect(Math.abs(lain!.sine)).toBeLessThan(1e-14);
      expect(Math.hypot(...lain!.at(100, 50))).toBeLessThan(1e-12);
    }
  });
});
