// Source of every row: tests/reference/geometry.md section 3. All computed independently (marked D there: no
// published numeric example of locator errors could be read), linear and by an exact solution.
import { describe, expect, it } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { comeTo } from './come-to.ts';
import { blankMoved } from './lands.ts';
import { misalign } from './misalign.ts';
import { FLAT6, PAPER, plainJob } from './plain-job.ts';

interface Stops {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly fenceMm: readonly [number, number];
  readonly sideMm: number;
}

/** A blank 16 thick against buttons 8 high, at these distances from the near-left corner. */
function jobOf({ widthMm, heightMm, fenceMm, sideMm }: Stops): StopsJob {
  const plain = plainJob();
  return {
    ...plain,
    blank: {
      ...plain.blank,
      widthMm,
      heightMm,
      thickMm: 16,
      widthAtYMm: heightMm / 2,
      heightAtXMm: widthMm / 2,
    },
    stops: {
      ...plain.stops,
      fenceTouch: { kind: 'buttons', atMm: fenceMm },
      sideTouch: { kind: 'buttons', atMm: [sideMm] },
    },
  };
}

/** Half a unit of the last digit that is printed. */
const PRINTED_MM = 0.51e-7;

describe('two stops and one stop', () => {
  // Bottom stops at x1 and x2 off by d1 and d2, left stop at y3 off by d3.
  describe.each([
    [20, 180, 30, 0.05, -0.03, 0.02, [0, 0], [0.005, 0.06], [0.00503, 0.0599975]],
    [20, 180, 30, 0.05, -0.03, 0.02, [200, 100], [0.055, -0.04], [0.055005, -0.040015]],
    [10, 190, 50, 0, 0.1, 0, [0, 0], [0.0277778, -0.0055556], [0.0277809, -0.0055401]],
    [10, 190, 50, 0, 0.1, 0, [200, 100], [-0.0277778, 0.1055556], [-0.0278056, 0.1055555]],
  ] as const)(
    'at %d, %d and %d off by %d, %d and %d: the point %j moves by',
    (x1, x2, y3, d1, d2, d3, [x, y], linear, exact) => {
      const job = jobOf({ widthMm: 200, heightMm: 100, fenceMm: [x1, x2], sideMm: y3 });
      const slope = (d2 - d1) / (x2 - x1);

      it('what the exact solution gives, with the faces of the stops off', () => {
        // One straight fence through (x1, d1) and (x2, d2); the side stop stays square to the machine.
        const [moved] = blankMoved(
          job,
          {
            'fence-angle': slope,
            'give/front-up/fence': slope * x1 - d1,
            'stop-square/first': slope,
            'give/front-up/side': -d3,
          },
          [{ x, y }],
        );
        expect(Math.abs(moved!.x - exact[0])).toBeLessThan(PRINTED_MM);
        expect(Math.abs(moved!.y - exact[1])).toBeLessThan(PRINTED_MM);
      });

      it('the same with something of that thickness at each stop', () => {
        // What lies at a contact is taken along the blank's axis: off by the square of the turn.
        const bound = PRINTED_MM + Math.max(d1, d2, d3) * slope ** 2;
        const gaps = {
          'seat-gap/front-up/fence-1': d1,
          'seat-gap/front-up/fence-2': d2,
          'seat-gap/front-up/side-1': d3,
        };
        const [moved] = blankMoved(job, gaps, [{ x, y }]);
        expect(Math.abs(moved!.x - exact[0])).toBeLessThan(bound);
        expect(Math.abs(moved!.y - exact[1])).toBeLessThan(bound);
      });

      it('the linear figures in the limit of small errors', () => {
        const share = 1e-6;
        const gaps = {
          'seat-gap/front-up/fence-1': share * d1,
          'seat-gap/front-up/fence-2': share * d2,
          'seat-gap/front-up/side-1': share * d3,
        };
        const [moved] = blankMoved(job, gaps, [{ x, y }]);
        expect(Math.abs(moved!.x / share - linear[0])).toBeLessThan(PRINTED_MM);
        expect(Math.abs(moved!.y / share - linear[1])).toBeLessThan(PRINTED_MM);
      });
    },
  );
});

describe('six locators', () => {
  // z-stops under (20,20), (180,20), (100,130) off by .02, -.01, .03; y-stops at (20, 0, 8), (180, 0, 8) by .05,
  // -.03; x-stop at (0, 75, 8) by .02. Solution dq = (-.019, .06181818, .01920455, 2.2727e-4, 1.875e-4, -5e-4).
  const [rx, ry] = [2.5e-3 / 11, 1.875e-4];
  const heightAt0 = 0.0192045455;
  // The bed of our model is a plane through the three z-stops: it rises by -ry along X and rx along Y.
  const bed = { 'bed-lean/x': -ry, 'bed-lean/y': rx };
  const gaps = {
    'seat-gap/front-up/fence-1': 0.05,
    'seat-gap/front-up/fence-2': -0.03,
    'seat-gap/front-up/side-1': 0.02,
  };
  const job = jobOf({ widthMm: 200, heightMm: 150, fenceMm: [20, 180], sideMm: 75 });

  it('stand on a bed whose plane passes through the three z-stops', () => {
    for (const [x, y, z] of [
      [20, 20, 0.02],
      [180, 20, -0.01],
      [100, 130, 0.03],
    ] as const)
      expect(heightAt0 - ry * x + rx * y).toBeCloseTo(z, 9);
  });

  describe.each([
    [
      [200, 150],
      [0.059, -0.04181818, 0.01579545],
    ],
    [
      [200, 0],
      [-0.016, -0.04181818, -0.01829545],
    ],
    [
      [100, 75],
      [0.0215, 0.00818182, 0.0175],
    ],
  ] as const)('and the point %j on the upper face moves by %j', ([x, y], [dx, dy, dz]) => {
    it('in height: where z was touched on the bed at the corner, a cut is deeper by what the bed is higher', () => {
      // Our blank has no height of its own above the machine: only heights against the place of the touch count.
      const touched: StopsJob = {
        ...job,
        features: [
          {
            name: 'cut',
            face: 'front',
            shape: { kind: 'circle', diameterMm: 2 },
            at: { x, y },
            turnedRad: 0,
            cut: 'drill',
            depthMm: 6,
            through: false,
            cutter: FLAT6,
          },
        ],
        zero: {
          ...job.zero,
          frontUp: { ...job.zero.frontUp, z: { on: 'bed', at: { x: 0, y: 0 }, tool: PAPER } },
        },
      };
      const [depth] = comeTo(
        touched,
        { kind: 'depth', name: 'depth', feature: 'cut', limits: { lowMm: 1, highMm: null } },
        bed,
      );
      expect(depth! - 6).toBeCloseTo(dz - heightAt0, 7);
    });

    it('in plan: by the three stops at their height, and by the tilt from there up to the face', () => {
      // A blank tilted by the bed under an upright cutter is, to first order, an upright blank under a cutter that
      // leans the other way; our model has the lean (its bed tilts heights only). Stops touch at 8 of 16 mm.
      const lean = { 'cutter-lean/x': -ry, 'cutter-lean/y': rx };
      const [moved] = blankMoved(job, { ...gaps, ...lean }, [{ x, y }]);
      // Linear figures: left out is half the square of the turn over 250 mm, and the tilt times the turn over 8 mm.
      const second = 0.5 * 5e-4 ** 2 * 250 + 5e-4 * 2 * ry * 8 + 1e-8;
      expect(Math.abs(moved!.x - dx)).toBeLessThan(second);
      expect(Math.abs(moved!.y - dy)).toBeLessThan(second);
    });
  });

  it('of which the rows at the underside have no counterpart: cuts are made at a face', () => {
    const [moved] = blankMoved(job, gaps, [{ x: 0, y: 0 }]);
    // At the height of the stops the blank's corner moves as the point (0, 0, 0) plus the tilt over 8 mm.
    expect(moved!.x).toBeCloseTo(-0.019 + 8 * ry, 4);
    expect(moved!.y).toBeCloseTo(0.0618181818 - 8 * rx, 4);
  });
});

describe('turning over about Y on one fence, the other side edge on the stop', () => {
  // mismatch_x = dW - 2 (gamma + alpha) y, mismatch_y = -alpha (W - 2 x): gamma the lean of the machine's Y axis,
  // alpha the angle of the fence, dW how much too wide the blank is. Full simulations at P = (50, 150), W = 200.
  const job = jobOf({ widthMm: 200, heightMm: 200, fenceMm: [20, 180], sideMm: 60 });
  const at = { x: 50, y: 150 };

  it.each([
    [0.5e-3, 0, 0, [-0.15, 0]],
    [0, 0.5e-3, 0, [-0.149975, -0.05]],
    [0, 0, 0.1, [0.1, 0]],
    [0.5e-3, -0.2e-3, 0.05, [-0.039996, 0.02]],
  ] as const)('machine %d, fence %d, width %d: (x, y) = %j', (gamma, alpha, dW, simulated) => {
    const off = { 'machine-lean': gamma, 'fence-angle': alpha, width: dW };
    const [x, y] = misalign(job, off, at);
    // Half a unit of the last digit that is printed.
    expect(Math.abs(x - simulated[0])).toBeLessThan(0.51e-6);
    expect(Math.abs(y - simulated[1])).toBeLessThan(0.51e-6);
  });

  it('as the formula in the limit of small errors, anywhere on the blank', () => {
    const [gamma, alpha, dW] = [5e-6, -2e-6, 5e-4];
    const off = { 'machine-lean': gamma, 'fence-angle': alpha, width: dW };
    for (const point of [at, { x: 0, y: 0 }, { x: 163, y: 21 }]) {
      const [x, y] = misalign(job, off, point);
      expect(Math.abs(x - (dW - 2 * (gamma + alpha) * point.y))).toBeLessThan(1e-8);
      expect(Math.abs(y + alpha * (200 - 2 * point.x))).toBeLessThan(1e-8);
    }
  });
});
