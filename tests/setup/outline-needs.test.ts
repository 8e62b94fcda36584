// Closed forms by hand, one thing off at a time. Source of what is meant: registration.md rules 8 to 10.
import { describe, expect, it } from 'vitest';
import type { Cutter, Feature, StopsJob, Need } from '../../src/job/job.ts';
import { comeTo } from './come-to.ts';
import { FLAT6, NONE, plainJob } from './plain-job.ts';

const VEE90: Cutter = {
  ...FLAT6,
  name: 'vee 90',
  kind: 'vee',
  vee: { includedRad: Math.PI / 2, tipFlatMm: NONE },
};

const feature = (name: string, changes: Partial<Feature>): Feature => ({
  name,
  face: 'front',
  shape: { kind: 'circle', diameterMm: 40 },
  at: { x: 100, y: 60 },
  turnedRad: 0,
  cut: 'pocket',
  depthMm: 5,
  through: false,
  cutter: FLAT6,
  ...changes,
});
const RECTANGLE: Feature['shape'] = {
  kind: 'rectangle',
  widthMm: 60,
  heightMm: 30,
  cornerRadiusMm: 4,
};
const SQUARE_PART = feature('part', {
  shape: {
    kind: 'polygon',
    vertices: [
      { x: -30, y: -15 },
      { x: 30, y: -15 },
      { x: 30, y: 15 },
      { x: -30, y: 15 },
    ],
  },
  cut: 'profile-outside',
});
const low = { lowMm: 0.1, highMm: null };
const both = { lowMm: 0.1, highMm: 50 };
const jobOf = (...features: readonly Feature[]): StopsJob => plainJob({ features });
const value = (job: StopsJob, need: Need, off: Record<string, number> = {}): number =>
  comeTo(job, need, off)[0]!;

const size = (name: string, along: 'x' | 'y'): Need => ({
  kind: 'size',
  name: 'size',
  feature: name,
  along,
  limits: low,
});
const D = 0.03;

describe('size', () => {
  const pocket = jobOf(feature('pocket', { shape: RECTANGLE }));
  it.each([
    ['x', 60],
    ['y', 30],
  ] as const)(
    'of a pocket along %s is nominal, and grows by the radius error on both sides',
    (along, nominal) => {
      expect(value(pocket, size('pocket', along))).toBeCloseTo(nominal, 12);
      expect(value(pocket, size('pocket', along), { 'cutter-radius/flat 6': D })).toBeCloseTo(
        nominal + 2 * D,
        12,
      );
      expect(value(pocket, size('pocket', along), { 'push-off/feature pocket': D })).toBeCloseTo(
        nominal - 2 * D,
        12,
      );
    },
  );

  it('of what an outside profile leaves shrinks by it, and grows by the push-off', () => {
    const part = jobOf(SQUARE_PART);
    expect(value(part, size('part', 'x'))).toBeCloseTo(60, 12);
    expect(value(part, size('part', 'x'), { 'cutter-radius/flat 6': D })).toBeCloseTo(
      60 - 2 * D,
      12,
    );
    expect(value(part, size('part', 'y'), { 'push-off/feature part': D })).toBeCloseTo(
      30 + 2 * D,
      12,
    );
  });

  it('across the sharp corners of a square that shrinks is less by the root of two on each', () => {
    const turned = jobOf(
      feature('part', {
        ...SQUARE_PART,
        shape: {
          kind: 'polygon',
          vertices: [
            { x: 20, y: 0 },
            { x: 0, y: 20 },
            { x: -20, y: 0 },
            { x: 0, y: -20 },
          ],
        },
      }),
    );
    expect(value(turned, size('part', 'x'), { 'cutter-radius/flat 6': D })).toBeCloseTo(
      40 - 2 * Math.SQRT2 * D,
      9,
    );
  });

  it('stretches with the scale, but for the cutter itself', () => {
    expect(value(pocket, size('pocket', 'x'), { 'scale/x': 1e-3 })).toBeCloseTo(
      60 + 1e-3 * (60 - 6),
      9,
    );
  });

  it('of a drilled hole does not stretch', () => {
    const hole = jobOf(feature('hole', { cut: 'drill' }));
    expect(value(hole, size('hole', 'x'), { 'scale/x': 1e-3 })).toBeCloseTo(40, 12);
  });

  it('of a V groove grows by twice what it goes deeper times the tangent, and by the flat at the tip', () => {
    const groove = jobOf(feature('groove', { cutter: VEE90, cut: 'chamfer', depthMm: 3 }));
    expect(value(groove, size('groove', 'x'))).toBeCloseTo(40, 12);
    expect(value(groove, size('groove', 'x'), { 'z-touch/front-up/vee 90': D })).toBeCloseTo(
      40 - 2 * D,
      12,
    );
    expect(value(groove, size('groove', 'x'), { 'tip-flat/vee 90': D })).toBeCloseTo(40 + D, 12);
    // The bed leans up to the right: deeper there by as much as it is shallower on the left.
    expect(value(groove, size('groove', 'x'), { 'bed-lean/x': 1e-3 })).toBeCloseTo(
      40 + 2 * 1e-3 * (100 - 140),
      6,
    );
  });
});

describe('wall', () => {
  const wall = (to: 'lower' | 'upper' | 'left' | 'right' | null): Need => ({
    kind: 'wall',
    name: 'wall',
    feature: 'pocket',
    to,
    limits: low,
  });
  const job = jobOf(feature('pocket', { shape: RECTANGLE }));
  it.each([
    ['left', 70],
    ['right', 150],
    ['lower', 45],
    ['upper', 105],
    [null, 45],
  ] as const)('to %s is nominal, and less by the radius error', (to, nominal) => {
    expect(value(job, wall(to))).toBeCloseTo(nominal, 12);
    expect(value(job, wall(to), { 'cutter-radius/flat 6': D })).toBeCloseTo(nominal - D, 12);
  });

  it('grows on the far side with the blank, and by what the zero is off', () => {
    expect(value(job, wall('right'), { width: D })).toBeCloseTo(150 + D, 12);
    expect(value(job, wall('upper'), { height: D })).toBeCloseTo(105 + D, 12);
    expect(value(job, wall('left'), { 'zero-touch/front-up/x/1': D })).toBeCloseTo(70 + D, 12);
    expect(value(job, wall('right'), { 'zero-touch/front-up/x/1': D })).toBeCloseTo(150 - D, 12);
  });

  it('to an upper edge that slopes is least at one corner of the pocket', () => {
    const t = 0.01;
    const c = Math.cos(Math.atan(t));
    // Derived: the line y = 180 + t (x - 140), the corner circle of radius 4 about (74, 71) or (126, 71).
    const row = (180 + t * (74 - 140) - 71) * c - 4;
    expect(value(job, wall('upper'), { 'taper/y': t })).toBeCloseTo(row, 9);
  });

  it('minds no bump, crook or bevel of the edge itself', () => {
    for (const key of ['crook/right', 'bevel/right'])
      expect(value(job, wall('right'), { [key]: 0.001 })).toBeCloseTo(150, 12);
  });
});

describe('lip', () => {
  const lip: Need = { kind: 'lip', name: 'lip', features: ['inner', 'outer'], limits: both };
  const rings = jobOf(
    feature('outer', { shape: { kind: 'circle', diameterMm: 60 } }),
    feature('inner', { face: 'back' }),
  );
  it('between rings is the difference of their radii, less and more by how far they are apart', () => {
    for (const [k, row] of [10, 10].entries())
      expect(comeTo(rings, lip, {})[k]).toBeCloseTo(row, 5);
    // Same corner: a blank too long by d moves the back by d.
    const [least, most] = comeTo(rings, lip, { width: 0.4 });
    expect(least).toBeCloseTo(9.6, 6);
    expect(most).toBeCloseTo(10.4, 6);
    const [out] = comeTo(rings, lip, { width: 12 });
    expect(out).toBeCloseTo(-2, 4);
  });

  it('takes the smaller outline for the inner one, in either order', () => {
    const turned: Need = { ...lip, features: ['outer', 'inner'] };
    expect(comeTo(rings, turned, { width: 0.4 })).toEqual(comeTo(rings, lip, { width: 0.4 }));
  });

  it('of a square in a circle is least at the corners and largest at the middle of a side', () => {
    const job = jobOf(
      feature('outer', { shape: { kind: 'circle', diameterMm: 120 } }),
      feature('inner', {
        shape: { kind: 'rectangle', widthMm: 58, heightMm: 58, cornerRadiusMm: 3.2 },
      }),
    );
    const [least, most] = comeTo(job, lip, {});
    expect(least).toBeCloseTo(60 - 25.8 * Math.SQRT2 - 3.2, 6);
    expect(most).toBeCloseTo(31, 4);
  });

  it('of a rectangle in a rectangle is the narrowest margin, and the widest', () => {
    const job = jobOf(
      feature('outer', {
        shape: { kind: 'rectangle', widthMm: 80, heightMm: 44, cornerRadiusMm: 10 },
      }),
      feature('inner', { shape: RECTANGLE, at: { x: 101, y: 60.5 } }),
    );
    const [least, most] = comeTo(job, lip, {});
    // By hand: above, 22 - 15 - 0.5; the corner circles (10 and 4) are further apart there.
    expect(least).toBeCloseTo(6.5, 9);
    // By hand: the place of a left corner's circle (radius 4 about 75, 49.5) that is as far from the left
    // side (x = 60) as from the lower one (y = 38): 15 - 4 cos t = 11.5 - 4 sin t.
    const t = Math.acos(0.875 / Math.SQRT2) - Math.PI / 4;
    expect(most).toBeCloseTo(15 - 4 * Math.cos(t), 3);
  });
});

describe('meets', () => {
  const meets: Need = { kind: 'meets', name: 'meets', features: ['upper', 'lower'], withinMm: 1 };
  const job = jobOf(
    feature('upper', SQUARE_PART),
    feature('lower', { ...SQUARE_PART, face: 'back' }),
  );
  const named = {
    ...job,
    features: [
      { ...job.features[0]!, name: 'upper' },
      { ...job.features[1]!, name: 'lower' },
    ],
  };
  it('is nothing when nothing is off, and the shift of the back when the blank is long', () => {
    expect(value(named, meets)).toBeCloseTo(0, 12);
    expect(value(named, meets, { width: 0.3 })).toBeCloseTo(0.3, 6);
    expect(value(named, meets, { 'push-off/feature lower': 0.05 })).toBeCloseTo(0.05, 9);
  });
});

describe('parallel', () => {
  const parallel: Need = {
    kind: 'parallel',
    name: 'p',
    features: ['one', 'two'],
    withinTangent: 0.01,
  };
  const job = jobOf(
    feature('one', { shape: RECTANGLE }),
    feature('two', { shape: RECTANGLE, face: 'back' }),
  );
  it('is twice the turn of the fence: each placing turns the other way on the blank', () => {
    // Identity: misalignment (-2 phi (y - yt), -phi W + 2 phi x) is a turn by 2 phi, 2 mm in 100 for 1 in 100.
    expect(value(job, parallel)).toBeCloseTo(0, 12);
    const phi = 1e-4;
    expect(value(job, parallel, { 'fence-angle': phi })).toBeCloseTo(100 * 2 * phi, 7);
    const upright = jobOf(...job.features.map((one) => ({ ...one, turnedRad: Math.PI / 2 })));
    expect(value(upright, parallel, { 'machine-lean': phi })).toBeCloseTo(100 * 2 * phi, 7);
  });
});

describe('a V cutter round the outside of a part', () => {
  const chamfer = feature('edge', {
    ...SQUARE_PART,
    name: 'edge',
    cutter: VEE90,
    cut: 'chamfer-outside',
    depthMm: 3,
  });
  const job = jobOf(chamfer, feature('rim', { shape: RECTANGLE, face: 'back', cut: 'pocket' }));
  const deeper = { 'z-touch/front-up/vee 90': -D };
  const edgeToRight: Need = { kind: 'wall', name: 'w', feature: 'edge', to: 'right', limits: low };

  // Source: registration.md rule 9, half angle 45 degrees: each edge draws in by what the cutter goes deeper.
  it('leaves the face smaller on both sides by what it goes deeper, its corners sharp', () => {
    expect(value(job, size('edge', 'x'))).toBeCloseTo(60, 9);
    expect(value(job, size('edge', 'x'), deeper)).toBeCloseTo(60 - 2 * D, 9);
    expect(value(job, size('edge', 'y'), { 'tip-flat/vee 90': D })).toBeCloseTo(30 - D, 9);
    const depth: Need = { kind: 'depth', name: 'd', feature: 'edge', limits: low };
    expect(value(job, depth, deeper)).toBeCloseTo(3 + D, 12);
  });

  it('and farther from the edge of the blank', () => {
    expect(value(job, edgeToRight)).toBeCloseTo(150, 9);
    expect(value(job, edgeToRight, deeper)).toBeCloseTo(150 + D, 9);
  });

  it('and with a wider lip to what it lies in', () => {
    const around = feature('around', {
      shape: { kind: 'rectangle', widthMm: 80, heightMm: 50, cornerRadiusMm: 5 },
    });
    const lip: Need = { kind: 'lip', name: 'lip', features: ['edge', 'around'], limits: low };
    expect(value(jobOf(chamfer, around), lip)).toBeCloseTo(10, 9);
    expect(value(jobOf(chamfer, around), lip, deeper)).toBeCloseTo(10 + D, 9);
  });

  it('cut deeper on one side where the bed rises, draws in more there', () => {
    const lean = 1e-3;
    // By hand: the axis runs 3 mm off at x = 67 and 133, by 1e-3 of how far that is from the middle (140) deeper there.
    expect(value(job, size('edge', 'x'), { 'bed-lean/x': lean })).toBeCloseTo(
      60 - lean * (67 - 140) - lean * (133 - 140),
      4,
    );
  });
});

describe('outlines with hollows', () => {
  const ell = (by: number) => ({
    kind: 'polygon' as const,
    vertices: [
      [-by, -by],
      [60 + by, -by],
      [60 + by, 20 + by],
      [30 + by, 20 + by],
      [30 + by, 40 + by],
      [-by, 40 + by],
    ].map(([x, y]) => ({ x: x!, y: y! })),
  });
  const at = { x: 80, y: 50 };
  const job = jobOf(
    feature('outer', { shape: ell(6), at }),
    feature('inner', { shape: ell(0), at, face: 'back' }),
    feature('upper', { shape: ell(0), at, cut: 'profile-outside' }),
    feature('lower', { shape: ell(0), at, cut: 'profile-outside', face: 'back' }),
  );

  it('have the lip of their sides, less by what moves the back', () => {
    const lip: Need = { kind: 'lip', name: 'lip', features: ['inner', 'outer'], limits: low };
    expect(value(job, lip)).toBeCloseTo(6, 9);
    expect(value(job, lip, { width: 0.4 })).toBeCloseTo(5.6, 9);
    expect(value(job, lip, { width: 8 })).toBeCloseTo(-2, 9);
  });

  it('meet with a step of what moves the back', () => {
    const meets: Need = { kind: 'meets', name: 'm', features: ['upper', 'lower'], withinMm: 1 };
    expect(value(job, meets)).toBeCloseTo(0, 9);
    expect(value(job, meets, { width: 0.3 })).toBeCloseTo(0.3, 6);
  });
});
