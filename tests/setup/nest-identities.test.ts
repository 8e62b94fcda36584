// Rows derived by us from registration.md section 1, to first order: a deviation of 1e-5 leaves second-order terms below 1e-5 of
// the row. Turned about Y; pushed near, the blank lies flat on the near wall, half-way between left and right.
import { describe, expect, it } from 'vitest';
import type { Feature, Job } from '../../src/job/job.ts';
import { inNest } from './loose-job.ts';
import { misalign, type Off } from './misalign.ts';
import { FLAT6, PAPER } from './plain-job.ts';

const [W, H] = [280, 180];
/** The gap times a deviation is left out of the rows. */
const [D, GAP] = [1e-5, 0.01];
const POINTS = [
  { x: 140, y: 90 },
  { x: 37, y: 161 },
  { x: 0, y: 0 },
  { x: 260, y: 12 },
];

type Row = (x: number, y: number) => readonly [number, number];
const none: Row = () => [0, 0];

const MIDDLE = { kind: 'middle', at: null, tool: PAPER } as const;
const body: Feature = {
  name: 'body',
  face: 'front',
  shape: { kind: 'rectangle', widthMm: 150, heightMm: 90, cornerRadiusMm: 0 },
  at: { x: 120, y: 85 },
  turnedRad: 0,
  cut: 'profile-outside',
  depthMm: 24,
  through: true,
  cutter: { ...FLAT6, name: 'flat 5', diameterMm: 5 },
};
const [CX, CY] = [body.at.x, body.at.y];
const near = inNest({ takeUp: 'near' });
const left = inNest({ takeUp: 'left' });
const part = (takeUp: 'near' | 'left'): Job => ({
  ...inNest({ takeUp, around: 'body' }, { first: MIDDLE }),
  features: [body],
});

const off =
  (...keys: readonly string[]) =>
  (d: number): Off =>
    Object.fromEntries(keys.map((key) => [key, d]));
const repeat = 'repeatability/nest';

const ROWS: readonly (readonly [string, Job, (d: number) => Off, Row])[] = [
  ["nest's cutter larger, pushed near", near, off('cutter-radius/flat 6'), none],
  [
    "nest's cutter larger, pushed left: as stops milled in place",
    left,
    off('cutter-radius/flat 6'),
    () => [-2, 0],
  ],
  ['wider nest, pushed left', left, off('nest-clearance'), () => [-2, 0]],
  ['W long, half-way between left and right', near, off('width'), none],
  ['W long, pushed left: as one side stop', left, off('width'), () => [1, 0]],
  ['H long, pushed near', near, off('height'), none],
  [
    'shear, pushed near: as a button in the middle',
    near,
    off('machine-lean'),
    (_x, y) => [-2 * (y - H / 2), 0],
  ],
  ['scale X, half-way', near, off('scale/x'), none],
  ['scale X, pushed left: as stops milled in place', left, off('scale/x'), () => [-W, 0]],
  ['scale Y', near, off('scale/y'), none],
  ['wood swells along x, half-way', near, off('movement/x'), (x) => [-(x - W / 2), 0]],
  // The near wall holds the lower edge in both placings.
  ['wood swells along y, pushed near', near, off('movement/y'), (_x, y) => [0, -y]],
  ['nest cut off its place in X, half-way', near, off(`${repeat}/x`), () => [2, 0]],
  ['nest cut off its place in Y', near, off(`${repeat}/y`), none],
  ['out of square, half-way', near, off('square'), none],
  ['front cut off in X', near, off('repeatability/front/x'), () => [-1, 0]],
  // Of a part: the first zero drops out, the nest is where it was cut.
  ['first zero off in X', part('near'), off('zero-touch/front-up/x/1'), none],
  ['first zero off in Y', part('near'), off('zero-touch/front-up/y/2'), none],
  ['nest of a part cut off its place in X', part('near'), off(`${repeat}/x`), () => [1, 0]],
  ['nest of a part cut off its place in Y', part('near'), off(`${repeat}/y`), () => [0, -1]],
  ['part cut off its place in X', part('near'), off('repeatability/feature body/x'), () => [1, 0]],
  ['part cut off its place in Y', part('near'), off('repeatability/feature body/y'), () => [0, 1]],
  [
    "part's cutter larger: it is smaller, pushed left",
    part('left'),
    off('cutter-radius/flat 5'),
    () => [-1, 0],
  ],
  [
    "nest's cutter larger, a part pushed left",
    part('left'),
    off('cutter-radius/flat 6'),
    () => [-1, 0],
  ],
  [
    'cutter pushed off the part: it is larger, pushed left',
    part('left'),
    off('push-off/feature body'),
    () => [1, 0],
  ],
  ['shear, a part pushed near', part('near'), off('machine-lean'), (_x, y) => [-2 * (y - CY), 0]],
  ['scale X, a part', part('near'), off('scale/x'), none],
  ['wood swells along x, a part', part('near'), off('movement/x'), (x) => [-(x - CX), 0]],
  ['laid askew, a part', part('near'), off('laid/front-up'), none],
];

describe('a nest', () => {
  it('with no clearance about a true blank or part lands it true', () => {
    for (const job of [
      near,
      left,
      inNest({}),
      part('near'),
      { ...part('left'), turn: 'about-x' as const },
    ])
      for (const at of POINTS) {
        const [x, y] = misalign(job, {}, at);
        expect(Math.hypot(x, y)).toBeLessThan(1e-7);
      }
  });

  it.each(ROWS)('%s', (_, job, told, row) => {
    for (const at of POINTS) {
      const loose = { 'nest-clearance': GAP };
      const more = told(D);
      const both = { ...loose, ...more, 'nest-clearance': GAP + (more['nest-clearance'] ?? 0) };
      const [x, y] = misalign(job, both, at);
      const [fromX, fromY] = misalign(job, loose, at);
      const [wantX, wantY] = row(at.x, at.y);
      const allowed = 1e-4 * Math.max(1, Math.hypot(wantX, wantY)) + 3 * GAP + FLAT_MM / D;
      expect(Math.abs((x - fromX) / D - wantX)).toBeLessThan(allowed);
      expect(Math.abs((y - fromY) / D - wantY)).toBeLessThan(allowed);
    }
  });
});

/** A push finds its turn to this much, mm of a far place: loose-second-model/agreement.ts. */
const FLAT_MM = 1e-7;
