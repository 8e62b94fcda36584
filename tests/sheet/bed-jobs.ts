import type { DowelHoles, Job, JobBase, Nest } from '../../src/job/job.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { clearancesInBed } from '../../src/sheet/locating/way-of.ts';
import type { BedInput } from '../../src/sheet/sheet-input.ts';
import { clock, flat3, flat6, none, paper, within } from './a-job.ts';
import { predictionFor } from './a-prediction.ts';

/** A whole sheet's input for a job that is located by what is made in the bed. */
export function bedInputFor(job: BedInput['job']): BedInput {
  const placings = placingsOf(job);
  return {
    made: 'in-the-bed',
    job,
    placings,
    prediction: predictionFor(job, [0.9964, 0.9931]),
    clearances: clearancesInBed(job, placings),
    hold: { plan: null, notes: [] },
    version: '0.1.0',
  };
}

type Of<W extends Job['locating']> = Extract<Job, { locating: W }>;

// The clock without its stops.
export const base: JobBase = {
  name: clock.name,
  goodEnoughShare: clock.goodEnoughShare,
  onBed: clock.onBed,
  blank: clock.blank,
  first: clock.first,
  features: clock.features,
  turn: clock.turn,
  needs: clock.needs,
  parts: clock.parts,
  hold: clock.hold,
  jig: clock.jig,
  shop: clock.shop,
  zero: {
    frontUp: { xy: { kind: 'edges', at: null, tool: paper }, z: clock.zero.frontUp.z },
    backUp: {
      xy: { kind: 'kept', how: 'held', extra: null },
      z: { on: 'bed', at: null, tool: paper },
    },
  },
};

export const holes: DowelHoles = {
  at: [
    { x: 140, y: 12 },
    { x: 140, y: 168 },
  ],
  diameterMm: 6,
  clearance: { kind: 'stated', spread: { ...within(0.04), text: '0..0.08' } },
  drilled: 'with-the-blank',
  drillError: { ...within(0.1), text: '±0.1' },
  takeUp: 'anywhere',
  laid: { ...within(0.005), text: '±1 per 200' },
};

export const onLine: Of<'dowels'> = {
  ...base,
  name: 'On the line',
  locating: 'dowels',
  dowels: holes,
};

/** Off the middle: turned over, the blank lies 2 x (130 - 140) = -20 mm further along X. */
export const offMiddle: Of<'dowels'> = {
  ...onLine,
  name: 'Pair off the middle',
  first: 'back',
  dowels: {
    ...holes,
    at: [
      { x: 20, y: 60 },
      { x: 240, y: 60 },
    ],
    diameterMm: 8,
    drilled: 'separately',
    takeUp: 'left',
    clearance: {
      kind: 'sizes',
      pin: { ...within(0.01), text: '7.98 mm ±0.01' },
      hole: { ...within(0.02), text: '8.05 mm ±0.02' },
    },
  },
  zero: {
    frontUp: { xy: { kind: 'dowels' }, z: { on: 'top', at: null, tool: paper } },
    backUp: { xy: { kind: 'dowels' }, z: { on: 'bed', at: { x: 100, y: 60 }, tool: paper } },
  },
};

export const aNest: Nest = {
  around: null,
  clearance: {
    ...within(0),
    distribution: { kind: 'rectangular', low: 0.05, high: 0.15 },
    text: '0.05..0.15',
  },
  cutter: flat6,
  wallMm: 10,
  takeUp: 'near',
  seatGap: none,
  laid: { ...within(0.005), text: '±1 per 200' },
};

export const roundBlank: Of<'nest'> = {
  ...base,
  name: 'Nest round the blank',
  locating: 'nest',
  nest: aNest,
  zero: {
    frontUp: { xy: { kind: 'nest' }, z: { on: 'bed', at: null, tool: paper } },
    backUp: { xy: { kind: 'nest' }, z: { on: 'bed', at: null, tool: paper } },
  },
};

/** The part is cut out along a rectangle whose corners are tighter than the cutter. */
export const roundPart: Of<'nest'> = {
  ...base,
  name: 'Nest round the part',
  locating: 'nest',
  nest: { ...aNest, around: 'body outline' },
  features: [
    ...clock.features,
    {
      ...clock.features[0]!,
      name: 'body outline',
      shape: { kind: 'rectangle', widthMm: 200, heightMm: 140, cornerRadiusMm: 2 },
      at: { x: 130, y: 85 },
      cut: 'profile-outside',
      depthMm: 24,
      through: true,
    },
  ],
};

export const atFence: Of<'fence-and-dowel'> = {
  ...base,
  name: 'Fence and dowel',
  locating: 'fence-and-dowel',
  fenceAndDowel: {
    fence: 'lower',
    fenceTouch: { kind: 'buttons', atMm: [30, 240] },
    band: { kind: 'narrow', touchHeightMm: 12 },
    made: { kind: 'milled-in-place', cutter: flat6 },
    seatGap: none,
    give: none,
    dowel: { ...holes, at: [{ x: 136, y: 165 }] },
  },
};

export const bedJobs: Readonly<Record<string, BedInput['job']>> = {
  'dowels on the turn line': onLine,
  'dowels off the middle': offMiddle,
  'four dowels, inch, about X': {
    ...onLine,
    turn: 'about-x',
    dowels: {
      ...holes,
      takeUp: 'far',
      at: [
        [15, 20],
        [265, 20],
        [15, 160],
        [265, 160],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    },
    shop: { ...clock.shop, units: 'inch' },
    parts: { count: 4, order: 'each-in-turn' },
  },
  'nest round the blank': roundBlank,
  'nest round the part': roundPart,
  'nest round the part, about X': {
    ...roundPart,
    turn: 'about-x',
    parts: { count: 3, order: 'all-fronts-first' },
    nest: { ...roundPart.nest, takeUp: 'right', cutter: flat3 },
  },
  'fence and dowel': atFence,
  'fence at the far side, by hand': {
    ...atFence,
    fenceAndDowel: {
      ...atFence.fenceAndDowel,
      fence: 'upper',
      fenceTouch: { kind: 'arm', fromMm: 30, toMm: 240 },
      band: { kind: 'plain', heightMm: 10 },
      made: { kind: 'set-by-hand', angle: none, square: none, spacing: none },
      dowel: { ...holes, at: [{ x: 144, y: 15 }], drilled: 'separately', takeUp: 'right' },
    },
  },
};
