// Source of every row: the depth table of the registration model (section 2). Depths are linear in what is
// off, so rows hold to rounding.
import { describe, expect, it } from 'vitest';
import type { Feature, StopsJob, Need, ZeroZ } from '../../src/job/job.ts';
import type { Point } from '../../src/plane/point.ts';
import { comeTo } from './come-to.ts';
import { FLAT6, PAPER, plainJob } from './plain-job.ts';

const W = 280;
const H = 180;
const CENTRE = { x: 100, y: 60 };
/** Layout places where z is touched. */
const P1 = { x: 40, y: 25 };
const P2 = { x: 250, y: 150 };
const D = 1e-3;
const DIGITS = 10;

const pocket = (
  name: string,
  face: 'front' | 'back',
  depthMm: number,
  diameterMm = 2,
): Feature => ({
  name,
  face,
  shape: { kind: 'circle', diameterMm },
  at: CENTRE,
  turnedRad: 0,
  cut: 'drill',
  depthMm,
  through: false,
  cutter: FLAT6,
});
const WEB: Need = {
  kind: 'web',
  name: 'web',
  features: ['A', 'B'],
  limits: { lowMm: 1, highMm: null },
};

type On = ZeroZ['on'];
const COMBINATIONS: readonly (readonly [On, On])[] = [
  ['top', 'top'],
  ['bed', 'bed'],
  ['top', 'bed'],
  ['bed', 'top'],
];

interface Set {
  readonly up?: 'front' | 'back' | null;
  readonly flat?: boolean;
  readonly along?: 'x' | 'y';
  readonly at?: readonly [Point<'layout'>, Point<'layout'>];
  readonly turn?: StopsJob['turn'];
}

function jobOf([front, back]: readonly [On, On], set: Set = {}): StopsJob {
  const plain = plainJob();
  const [at1, at2] = set.at ?? [P1, P2];
  const { cup } = plain.blank;
  return {
    ...plain,
    turn: set.turn ?? 'about-y',
    blank: {
      ...plain.blank,
      cup: {
        ...cup,
        along: set.along ?? 'x',
        up: set.up === undefined ? 'front' : set.up,
        pressedFlat: set.flat ?? false,
      },
    },
    features: [pocket('A', 'front', 6), pocket('B', 'back', 15)],
    zero: {
      frontUp: { ...plain.zero.frontUp, z: { on: front, at: at1, tool: PAPER } },
      backUp: { ...plain.zero.backUp, z: { on: back, at: at2, tool: PAPER } },
    },
  };
}

/** How much more web is left than nominally, of a web of a few mm across: its own place. */
const more = (job: StopsJob, off: Record<string, number>): number => comeTo(job, WEB, off)[0]! - 3;

describe.each(COMBINATIONS)('the web, z zero on %s then %s', (front, back) => {
  const on = [front, back] as const;
  const mixed = front !== back;
  // The overlap is 2 mm across: it reaches 1 mm further, or less far, along a slope.
  const reach = (perMm: number): number => Math.abs(perMm);

  it('is as nominal when nothing is off', () => {
    expect(comeTo(jobOf(on), WEB, {})).toEqual([3]);
  });

  it('a blank thicker by dT', () => {
    const row = mixed ? 0 : front === 'top' ? D : -D;
    expect(more(jobOf(on), { thickness: D })).toBeCloseTo(row, DIGITS);
  });

  it.each([D, -D])('a bed that leans %f along X', (k) => {
    const row = -k * (W - P1.x - P2.x);
    expect(more(jobOf(on), { 'bed-lean/x': k })).toBeCloseTo(row, DIGITS);
  });

  it('a bed that leans along Y', () => {
    const row = -D * (2 * CENTRE.y - P1.y - P2.y) - 2 * reach(D);
    expect(more(jobOf(on), { 'bed-lean/y': D })).toBeCloseTo(row, 6);
  });

  it('an uneven bed: under each feature and where z was touched', () => {
    const off = {
      [`bed-height/${CENTRE.x}/${CENTRE.y}`]: 0.01,
      [`bed-height/${W - CENTRE.x}/${CENTRE.y}`]: 0.02,
      [`bed-height/${P1.x}/${P1.y}`]: 0.003,
      [`bed-height/${P2.x}/${P2.y}`]: 0.005,
    };
    expect(more(jobOf(on), off)).toBeCloseTo(-(0.01 + 0.02 - 0.003 - 0.005), DIGITS);
  });

  it('touched over the feature itself, what the bed does drops out', () => {
    const at = [CENTRE, { x: W - CENTRE.x, y: CENTRE.y }] as const;
    const off = {
      'bed-lean/x': D,
      [`bed-height/${CENTRE.x}/${CENTRE.y}`]: 0.01,
      [`bed-height/${W - CENTRE.x}/${CENTRE.y}`]: 0.02,
    };
    expect(more(jobOf(on, { at }), off)).toBeCloseTo(0, DIGITS);
  });

  it.each(['x', 'y'] as const)('a cup along %s, up on the first side', (along) => {
    const h = 0.2;
    const c = (share: number): number => h * 4 * share * (1 - share);
    // P2 on the machine is W - x on the blank.
    const [c1, c2] = along === 'x' ? [c(P1.x / W), c((W - P2.x) / W)] : [c(P1.y / H), c(P2.y / H)];
    const row = {
      'top top': c1 - c2,
      'bed bed': -h,
      'top bed': -(h - c1),
      'bed top': -c2,
    }[`${front} ${back}`];
    expect(more(jobOf(on, { along }), { cup: h })).toBeCloseTo(row, DIGITS);
  });

  it('a cup up on the other side is the same cup seen from the second placing', () => {
    const [one, other] = [
      more(jobOf(on), { cup: 0.2 }),
      more(jobOf(on, { up: 'back' }), { cup: 0.2 }),
    ];
    const c = (x: number): number => (0.8 * x * (W - x)) / W ** 2;
    const row = {
      'top top': c(W - P2.x) - c(P1.x),
      'bed bed': -0.2,
      'top bed': -c(P1.x),
      'bed top': -(0.2 - c(W - P2.x)),
    }[`${front} ${back}`];
    expect(other).toBeCloseTo(row, DIGITS);
    const unknown = jobOf(on, { up: null });
    expect(more(unknown, { cup: 0.2, 'cup-side': 1 })).toBe(one);
    expect(more(unknown, { cup: 0.2, 'cup-side': -1 })).toBe(other);
  });

  it('pressed flat has no cup to be off', () => {
    expect(() => more(jobOf(on, { flat: true }), { cup: 0.2 })).toThrow('does not use cup');
  });

  it('touch-off errors each add their own, swarf under the blank only to a zero on the bed', () => {
    expect(more(jobOf(on), { 'z-touch/front-up/flat 6': 0.02 })).toBeCloseTo(0.02, DIGITS);
    expect(more(jobOf(on), { 'z-touch/back-up/flat 6': 0.03 })).toBeCloseTo(0.03, DIGITS);
    expect(more(jobOf(on), { 'swarf/front-up': 0.05 })).toBeCloseTo(
      front === 'bed' ? -0.05 : 0,
      DIGITS,
    );
  });

  it('a blank thicker at the right: the mixed way is left with the slope at the places touched', () => {
    // Derived from rule 8: thickness at the place, less a depth that follows the top where it is zeroed on the bed.
    const t = (x: number): number => D * (x - W / 2);
    const touched = (front === 'top' ? t(P1.x) : 0) + (back === 'top' ? t(W - P2.x) : 0);
    const row = -t(CENTRE.x) + touched;
    expect(more(jobOf(on), { 'thickness-taper/x': D })).toBeCloseTo(row - reach(D), 6);
  });
});

describe('depth at the place of a feature', () => {
  const depth = (feature: string): Need => ({
    kind: 'depth',
    name: 'depth',
    feature,
    limits: { lowMm: 5, highMm: null },
  });
  it('is nominal less the zero set too high, and with the bed as in rule 8', () => {
    const job = jobOf(['top', 'bed']);
    expect(comeTo(job, depth('A'), {})).toEqual([6]);
    expect(comeTo(job, depth('A'), { 'z-touch/front-up/flat 6': 0.02 })[0]).toBeCloseTo(
      5.98,
      DIGITS,
    );
    expect(comeTo(job, depth('A'), { thickness: 0.1 })[0]).toBe(6);
    expect(comeTo(job, depth('B'), { thickness: 0.1 })[0]).toBeCloseTo(15.1, DIGITS);
    expect(comeTo(job, depth('B'), { 'bed-lean/x': D })[0]).toBeCloseTo(
      15 + D * (W - CENTRE.x - P2.x),
      DIGITS,
    );
  });

  it('turned about X, far and near change places', () => {
    const job = jobOf(['top', 'bed'], { turn: 'about-x' });
    expect(comeTo(job, depth('B'), { 'bed-lean/y': D })[0]).toBeCloseTo(
      15 + D * (H - CENTRE.y - P2.y),
      DIGITS,
    );
  });
});

describe('the least web over a wide overlap', () => {
  it('is where the slope is worst: the edge of the smaller circle', () => {
    const job: StopsJob = {
      ...jobOf(['top', 'bed']),
      features: [pocket('A', 'front', 6, 120), pocket('B', 'back', 15, 40)],
    };
    // Thicker by D (x - W / 2): zero on top takes out the front's, the back follows the bed.
    const t = (x: number): number => D * (x - W / 2);
    const row = t(P1.x) - t(CENTRE.x) - D * 20;
    expect(more(job, { 'thickness-taper/x': D })).toBeCloseTo(row, 5);
  });
});
