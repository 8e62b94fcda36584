// Source of every row: the second table of the registration model (section 2), turned about Y on the line
// x = c, dowels where the machine drilled them. First order: a deviation of 1e-5 leaves second-order terms
// below 1e-5 of the row.
import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import { onDowels } from './loose-job.ts';
import { misalign, type Off } from './misalign.ts';

const D = 1e-5;
const POINTS = [
  { x: 140, y: 90 },
  { x: 37, y: 161 },
  { x: 0, y: 0 },
  { x: 260, y: 12 },
];

/** On the line, not in the middle of the blank: it comes to lie 26 mm further left. */
const C = 127;
const [Y1, Y2] = [20, 165];
const onLine = onDowels({
  at: [
    { x: C, y: Y1 },
    { x: C, y: Y2 },
  ],
});
const [APART, YD] = [100, 70];
const inPair = onDowels({
  at: [
    { x: C - APART, y: YD },
    { x: C + APART, y: YD },
  ],
});

type Row = (x: number, y: number) => readonly [number, number];

const both = (off: (d: number) => Off, line: Row, pair: Row) => ({ off, line, pair });
const none: Row = () => [0, 0];

const ROWS: Readonly<Record<string, ReturnType<typeof both>>> = {
  'zero error X, kept': both((d) => ({ 'zero-touch/front-up/x/1': d }), none, none),
  'zero error Y, kept': both((d) => ({ 'zero-touch/front-up/y/1': d }), none, none),
  shear: both(
    (d) => ({ 'machine-lean': d }),
    (x) => [0, 2 * (C - x)],
    (_x, y) => [-2 * (y - YD), 0],
  ),
  'first dowel off in x': both(
    (d) => ({ 'repeatability/dowel 1/x': d }),
    (x, y) => [1 - (2 / (Y2 - Y1)) * (y - (Y1 + Y2) / 2), (-2 / (Y2 - Y1)) * (C - x)],
    () => [1, 0],
  ),
  'second dowel off in x': both(
    (d) => ({ 'repeatability/dowel 2/x': d }),
    (x, y) => [1 + (2 / (Y2 - Y1)) * (y - (Y1 + Y2) / 2), (2 / (Y2 - Y1)) * (C - x)],
    () => [1, 0],
  ),
  'both dowels off in y': both(
    (d) => ({ 'repeatability/dowel 1/y': d, 'repeatability/dowel 2/y': d }),
    none,
    none,
  ),
  'scale X': both((d) => ({ 'scale/x': d }), none, none),
  'scale Y': both((d) => ({ 'scale/y': d }), none, none),
  'wood swells along x': both(
    (d) => ({ 'movement/x': d }),
    (x) => [-(x - C), 0],
    (x) => [-(x - C), 0],
  ),
  // Ours: the place of a dowel is taken at half the thickness, and the lean shifts front and back cuts.
  'cutter leans along x': both(
    (d) => ({ 'cutter-lean/x': d }),
    () => [-24, 0],
    () => [-24, 0],
  ),
  'cutter leans along y': both((d) => ({ 'cutter-lean/y': d }), none, none),
  'laid askew': both((d) => ({ 'laid/front-up': d }), none, none),
};

function expectRow(job: Job, off: (d: number) => Off, row: Row): void {
  for (const at of POINTS) {
    const [x, y] = misalign(job, off(D), at);
    const [wantX, wantY] = row(at.x, at.y);
    const size = Math.max(1, Math.hypot(wantX, wantY));
    expect(Math.abs(x / D - wantX)).toBeLessThan(1e-4 * size);
    expect(Math.abs(y / D - wantY)).toBeLessThan(1e-4 * size);
  }
}

describe('two dowels on the turn line', () => {
  it('lands true when nothing is off', () => {
    for (const at of POINTS) {
      const [x, y] = misalign(onLine, {}, at);
      expect(Math.abs(x) + Math.abs(y)).toBeLessThan(1e-12);
    }
  });
  it.each(Object.entries(ROWS))('%s', (_, { off, line }) => {
    expectRow(onLine, off, line);
  });
});

describe('a pair of dowels on both sides of the turn line', () => {
  it.each(Object.entries(ROWS))('%s', (_, { off, pair }) => {
    expectRow(inPair, off, pair);
  });
});
