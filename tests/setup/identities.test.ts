// Source of every row: the first table of the registration model (section 2), whose rows were each
// checked against an exact model of its own. They are first order: a deviation of 1e-5 leaves
// second-order terms below 1e-5 of the row.
import { describe, expect, it } from 'vitest';
import type { StopsJob, Made, Touch, ZeroXy } from '../../src/job/job.ts';
import { misalign, type Off } from './misalign.ts';
import { FLAT6, NONE, PAPER, plainJob } from './plain-job.ts';

const W = 280;
const H = 180;
const T = 24;
const HS = 8;
const POINTS = [
  { x: 140, y: 90 },
  { x: 37, y: 161 },
  { x: 0, y: 0 },
];
const D = 1e-5;

type Row = (x: number, y: number) => readonly [number, number];

interface Set {
  readonly opposite?: boolean;
  readonly aboutX?: boolean;
  readonly fenceAlongY?: boolean;
  readonly milled?: boolean;
  readonly first?: ZeroXy;
  readonly second?: ZeroXy;
  readonly fence?: Touch;
  readonly side?: Touch;
  readonly narrowAt?: number;
  readonly widthAtY?: number;
}

const HAND: Made = { kind: 'set-by-hand', angle: NONE, square: NONE, spacing: NONE };
const MILLED: Made = { kind: 'milled-in-place', cutter: FLAT6 };
const HELD: ZeroXy = { kind: 'kept', how: 'held', extra: null };
const ON_STOPS: ZeroXy = { kind: 'stops', at: null, tool: PAPER };
const MIDDLE: ZeroXy = { kind: 'middle', at: null, tool: PAPER };
const FROM_MILLING: ZeroXy = { kind: 'milled-stops', at: null };
const stopsTouchedAt = (yt: number): ZeroXy => ({
  kind: 'stops',
  at: { x: 0, y: yt },
  tool: PAPER,
});
const button = (s: number): Touch => ({ kind: 'buttons', atMm: [s] });
const arm = (fromMm: number, toMm: number): Touch => ({ kind: 'arm', fromMm, toMm });

function jobOf(set: Set): StopsJob {
  const plain = plainJob();
  const backUp =
    set.opposite === true ? (set.fenceAlongY === true ? 'far-left' : 'near-right') : 'near-left';
  return {
    ...plain,
    turn: set.aboutX === true ? 'about-x' : 'about-y',
    blank: { ...plain.blank, widthAtYMm: set.widthAtY ?? H / 2 },
    stops: {
      ...plain.stops,
      corner: { frontUp: 'near-left', backUp },
      fence: set.fenceAlongY === true ? 'left' : 'lower',
      fenceTouch: set.fence ?? {
        kind: 'buttons',
        atMm: set.fenceAlongY === true ? [30, 150] : [30, 250],
      },
      sideTouch: set.side ?? button(90),
      band:
        set.narrowAt === undefined
          ? { kind: 'plain', heightMm: HS }
          : { kind: 'narrow', touchHeightMm: set.narrowAt },
      made: set.milled === true ? MILLED : HAND,
    },
    zero: {
      frontUp: { ...plain.zero.frontUp, xy: set.first ?? ON_STOPS },
      backUp: { ...plain.zero.backUp, xy: set.second ?? HELD },
    },
  };
}

/** Within 1e-4 of the row's size (of the deviation, where the row is nil). */
function expectRow(set: Set, off: Off, row: Row): void {
  const job = jobOf(set);
  const largestOff = Math.max(...Object.values(off).map(Math.abs));
  for (const at of POINTS) {
    const [x, y] = misalign(job, off, at);
    const [wantX, wantY] = row(at.x, at.y);
    const size = Math.max(Math.abs(wantX), Math.abs(wantY), largestOff);
    expect(Math.abs(x - wantX)).toBeLessThan(1e-4 * size);
    expect(Math.abs(y - wantY)).toBeLessThan(1e-4 * size);
  }
}

const opposite = { opposite: true };
const nothing: Row = () => [0, 0];

describe('a true set-up', () => {
  const milled = { milled: true, first: FROM_MILLING };
  it.each<[string, Set]>([
    ['same corner', {}],
    ['opposite corner', opposite],
    ['turned about X', { aboutX: true }],
    [
      'turned about X, fence along Y, opposite',
      { aboutX: true, fenceAlongY: true, opposite: true },
    ],
    ['milled', milled],
    ['milled, opposite', { ...milled, ...opposite }],
    ['middle', { first: MIDDLE, second: MIDDLE }],
    ['arms', { fence: arm(20, 120), side: arm(20, 120) }],
  ])('lands exactly: %s', (_name, set) => {
    for (const at of [...POINTS, { x: 0.1, y: 177.3 }]) {
      const [x, y] = misalign(jobOf(set), {}, at);
      expect(Math.abs(x)).toBe(0);
      expect(Math.abs(y)).toBe(0);
    }
  });
});

describe('size', () => {
  it('a blank too long by d moves the back by d at the same corner, by nothing at the opposite one', () => {
    expectRow({}, { width: D }, () => [D, 0]);
    expectRow(opposite, { width: D }, nothing);
  });
  it('a blank too high does not matter when turned about Y', () => {
    expectRow({}, { height: D }, nothing);
    expectRow(opposite, { height: D }, nothing);
  });
  it('turned about X, a blank too high by d moves the back by d', () => {
    expectRow({ aboutX: true }, { height: D }, () => [0, D]);
    expectRow({ aboutX: true, fenceAlongY: true, opposite: true }, { height: D }, nothing);
  });
  it('taper counts from where the width was measured to the side button', () => {
    const set = { side: button(50), widthAtY: 90 };
    expectRow(set, { 'taper/x': D }, () => [D * (50 - 90), 0]);
    expectRow({ ...set, ...opposite }, { 'taper/x': D }, nothing);
  });
});

describe('zero', () => {
  const e = { 'zero-touch/front-up/x/1': D, 'zero-touch/front-up/y/1': 2 * D };
  const both = { ...e, 'zero-touch/back-up/x/1': 3 * D, 'zero-touch/back-up/y/1': 5 * D };
  const reset: Row = () => [-(D + 3 * D), 5 * D - 2 * D];
  it('kept: doubled along X, nil along Y', () => {
    expectRow({}, e, () => [-2 * D, 0]);
    expectRow(opposite, e, () => [-2 * D, 0]);
    expectRow({ aboutX: true }, e, () => [0, -4 * D]);
  });
  it('kept from milling: there is no zero error to draw', () => {
    expect(() => misalign(jobOf({ milled: true, first: FROM_MILLING }), e, POINTS[0]!)).toThrow(
      'does not use',
    );
  });
  it('touched again: the errors add along the turn, differ across it', () => {
    expectRow({ second: ON_STOPS }, both, reset);
    expectRow({ aboutX: true, second: ON_STOPS }, both, () => [3 * D - D, -(2 * D + 5 * D)]);
  });
  it('touched again on the second side stop: away from that stop is the other way on the machine', () => {
    expectRow({ ...opposite, second: ON_STOPS }, both, () => [-(D - 3 * D), 5 * D - 2 * D]);
  });
  it('at the middle both times the width drops out', () => {
    expectRow({ first: MIDDLE, second: MIDDLE }, { width: D }, nothing);
    expectRow({ ...opposite, first: MIDDLE, second: MIDDLE }, { width: D }, nothing);
    // One touch of the near edge, positive away from the blank, moves the middle by half of it the other way.
    const touches = { 'zero-touch/front-up/x/1': -2 * D, 'zero-touch/back-up/x/1': -6 * D };
    expectRow({ first: MIDDLE, second: MIDDLE }, touches, () => [-(D + 3 * D), 0]);
  });
});

describe('machine', () => {
  const G = D / 100;
  it('shear: -2 gamma (y - y_t) at either corner', () => {
    for (const opp of [false, true]) {
      expectRow({ opposite: opp }, { 'machine-lean': G }, (_x, y) => [-2 * G * y, 0]);
      expectRow({ opposite: opp, first: stopsTouchedAt(120) }, { 'machine-lean': G }, (_x, y) => [
        -2 * G * (y - 120),
        0,
      ]);
    }
  });
  it('shear, turned about X: gamma (H - 2y)', () => {
    expectRow({ aboutX: true }, { 'machine-lean': G }, (_x, y) => [G * (H - 2 * y), 0]);
    expectRow({ aboutX: true, first: stopsTouchedAt(50) }, { 'machine-lean': G }, (_x, y) => [
      G * (H - 2 * y),
      0,
    ]);
  });
  it('scale: -sx W with stops set by hand, nil when both side stops are milled from one zero', () => {
    expectRow({}, { 'scale/x': G }, () => [-G * W, 0]);
    expectRow(opposite, { 'scale/x': G }, () => [-G * W, 0]);
    expectRow({ ...opposite, milled: true, first: FROM_MILLING }, { 'scale/x': G }, nothing);
  });
  it('a leaning cutter: -2 zeta (T - hs)', () => {
    for (const opp of [false, true]) {
      expectRow({ opposite: opp }, { 'cutter-lean/x': G }, () => [-2 * G * (T - HS), 0]);
    }
  });
});

describe('stops set by hand', () => {
  const PHI = D / 100;
  it('fence turned by phi: (-2 phi (y - y_t), -phi W + 2 phi x)', () => {
    for (const opp of [false, true]) {
      expectRow({ opposite: opp }, { 'fence-angle': PHI }, (x, y) => [
        -2 * PHI * y,
        -PHI * W + 2 * PHI * x,
      ]);
      expectRow({ opposite: opp, first: stopsTouchedAt(70) }, { 'fence-angle': PHI }, (x, y) => [
        -2 * PHI * (y - 70),
        -PHI * W + 2 * PHI * x,
      ]);
    }
  });
  it('fence turned by phi, turned about X: (phi (H - 2y), 2 phi x)', () => {
    expectRow({ aboutX: true }, { 'fence-angle': PHI }, (x, y) => [PHI * (H - 2 * y), 2 * PHI * x]);
  });
  it('spacing of the side stops: d with the zero kept, nil when touched again on the second', () => {
    expectRow(opposite, { spacing: D }, () => [D, 0]);
    expectRow({ ...opposite, second: ON_STOPS }, { spacing: D }, nothing);
  });
  it('seat gaps add at one side stop and differ at two', () => {
    const gaps = (second: string): Off => ({
      'seat-gap/front-up/side-1': D,
      [`seat-gap/back-up/${second}`]: 3 * D,
    });
    expectRow({}, gaps('side-1'), () => [D + 3 * D, 0]);
    expectRow(opposite, gaps('side2-1'), () => [D - 3 * D, 0]);
  });
});

describe('edges out of true', () => {
  const A = D / 100;
  it('out of square under an arm: one-sided, either sign; nil under one button or at the opposite corner', () => {
    for (const alpha of [A, -A]) {
      expectRow({ side: arm(20, 160) }, { square: alpha }, () => [Math.abs(alpha) * 140, 0]);
      expectRow({ side: arm(20, 160), ...opposite }, { square: alpha }, nothing);
      expectRow({ side: button(40) }, { square: alpha }, nothing);
    }
  });
  it('out of square, turned about X: alpha (H - 2s) under a button, alpha (H - s0 - s1) under an arm', () => {
    for (const alpha of [A, -A]) {
      expectRow({ aboutX: true, side: button(40) }, { square: alpha }, () => [alpha * (H - 80), 0]);
      expectRow({ aboutX: true, side: arm(20, 110) }, { square: alpha }, () => [
        alpha * (H - 130),
        0,
      ]);
    }
  });
  it('bevel of the lower edge: -eps (T - hs) across the fence', () => {
    for (const eps of [A, -A]) {
      for (const opp of [false, true]) {
        expectRow({ opposite: opp }, { 'bevel/lower': eps }, () => [0, -eps * (T - HS)]);
      }
    }
  });
  it('bevel of the side edges feels one end of the edge on one placing and the other on the next', () => {
    expectRow({}, { 'bevel/left': A }, () => [A * (HS - T / 2), 0]);
    expectRow({}, { 'bevel/left': -A }, () => [(A * T) / 2, 0]);
    expectRow({}, { 'bevel/right': A }, () => [(A * T) / 2, 0]);
    expectRow({}, { 'bevel/right': -A }, () => [-A * (T / 2 - HS), 0]);
    for (const eps of [A, -A]) {
      expectRow(opposite, { 'bevel/left': eps }, () => [-eps * (T - HS), 0]);
      expectRow(opposite, { 'bevel/lower': eps }, () => [0, -eps * (T - HS)]);
      expect(() => misalign(jobOf(opposite), { 'bevel/right': eps }, POINTS[0]!)).toThrow(
        'does not use',
      );
    }
  });
  it('touched in a narrow band: eps (T - 2 zc), nil at half thickness', () => {
    for (const zc of [9, 12]) {
      for (const opp of [false, true]) {
        expectRow({ opposite: opp, narrowAt: zc }, { 'bevel/lower': A }, () => [
          0,
          -A * (T - 2 * zc),
        ]);
      }
      expectRow({ narrowAt: zc }, { 'bevel/left': A, 'bevel/right': 3 * A }, () => [
        A * (zc - T / 2) + 3 * A * (T / 2 - zc),
        0,
      ]);
      expectRow({ narrowAt: zc, ...opposite }, { 'bevel/left': A }, () => [-A * (T - 2 * zc), 0]);
    }
  });
  it('crook of the fence edge cancels when the contacts are mirror images about the turn line', () => {
    for (const opp of [false, true]) {
      expectRow({ opposite: opp }, { 'crook/lower': D }, nothing);
      expectRow({ opposite: opp }, { 'bump/lower/30': D, 'bump/lower/250': 3 * D }, nothing);
    }
    const [, y] = misalign(
      jobOf({ fence: { kind: 'buttons', atMm: [30, 200] } }),
      { 'crook/lower': D },
      POINTS[1]!,
    );
    expect(Math.abs(y)).toBeGreaterThan(D);
  });
  it('crook or bumps at the side contact: two edges add, the same spot cancels', () => {
    const sag = (s: number): number => (4 * A * s * (H - s)) / H;
    const side = button(60);
    expectRow({ side }, { 'crook/left': A, 'crook/right': 2 * A }, () => [3 * sag(60), 0]);
    expectRow({ side, ...opposite }, { 'crook/left': A }, nothing);
    expectRow({ side }, { 'bump/left/60': D, 'bump/right/60': 2 * D }, () => [3 * D, 0]);
    expectRow({ side, ...opposite }, { 'bump/left/60': D }, nothing);
  });
});

describe('milled in place', () => {
  const from = { milled: true, first: FROM_MILLING };
  const touched = { milled: true, first: ON_STOPS };
  const dr = { 'cutter-radius/flat 6': D };
  const G = D / 100;
  it('a cutter larger by dr: -2 dr at the same corner, nil at the opposite one', () => {
    expectRow(from, dr, () => [-2 * D, 0]);
    expectRow({ ...from, ...opposite }, dr, nothing);
  });
  it('zero touched on the faces instead: nil, +2 dr, or nil when touched again on the second stop', () => {
    expectRow(touched, dr, nothing);
    expectRow({ ...touched, ...opposite }, dr, () => [2 * D, 0]);
    expectRow({ ...touched, ...opposite, second: ON_STOPS }, dr, nothing);
  });
  it('shear with a square button at s: -2 gamma (y - s)', () => {
    for (const opp of [false, true]) {
      expectRow({ ...from, opposite: opp, side: button(65) }, { 'machine-lean': G }, (_x, y) => [
        -2 * G * (y - 65),
        0,
      ]);
    }
  });
  it('shear with the fence along the leaning Y, turned about X: (0, -2 gamma (x - s))', () => {
    // Derived: the blank lies along the leaning axis, so a cut misses by gamma (x - s) along Y on each
    // face, seen from the button at s on the side stop; the turn changes the sign of one of them.
    const set = { ...from, aboutX: true, fenceAlongY: true, side: button(65) };
    for (const opp of [false, true]) {
      expectRow({ ...set, opposite: opp }, { 'machine-lean': G }, (x) => [0, -2 * G * (x - 65)]);
    }
  });
  it('shear with an arm: one end counts at the same corner, the middle at the opposite one', () => {
    const set = { ...from, side: arm(20, 120) };
    expectRow(set, { 'machine-lean': G }, (_x, y) => [-2 * G * (y - 120), 0]);
    expectRow(set, { 'machine-lean': -G }, (_x, y) => [2 * G * (y - 20), 0]);
    for (const gamma of [G, -G]) {
      expectRow({ ...set, ...opposite }, { 'machine-lean': gamma }, (_x, y) => [
        -2 * gamma * (y - 70),
        0,
      ]);
    }
  });
});

describe('wood that moves between the placings', () => {
  it('swells by lambda along X: lambda (W - x) at the same corner, -lambda x at the opposite one', () => {
    const L = D / 100;
    expectRow({}, { 'movement/x': L }, (x) => [L * (W - x), 0]);
    expectRow(opposite, { 'movement/x': L }, (x) => [-L * x, 0]);
  });
});
