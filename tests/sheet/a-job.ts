import type { Cutter, Feature, StopsJob, Spread, TouchTool, Zero } from '../../src/job/job.ts';
import type { Distribution } from '../../src/num/distribution.ts';

/** A spread somebody stated. */
export function spread(distribution: Distribution): Spread {
  const origin = { kind: 'stated', file: 'shop.yaml', line: 1 } as const;
  return { distribution, recurs: 'part', origin, text: '' };
}

export const none = spread({ kind: 'exactly', value: 0 });
export const within = (mm: number): Spread => spread({ kind: 'rectangular', low: -mm, high: mm });

export const flat6: Cutter = {
  name: 'flat 6',
  kind: 'flat',
  diameterMm: 6,
  radiusError: within(0.02),
  vee: null,
  pushOff: none,
  fluteMm: 22,
  stepMm: 3,
  stickOutMm: 32,
  speedPerMin: 18000,
  feedMmPerMin: 1800,
};
export const flat3: Cutter = { ...flat6, name: 'flat 3', diameterMm: 3 };
export const paper: TouchTool = { name: 'paper', spread: within(0.02) };

const recess: Feature = {
  name: 'dial recess',
  face: 'front',
  shape: { kind: 'circle', diameterMm: 120 },
  at: { x: 140, y: 90 },
  turnedRad: 0,
  cut: 'pocket',
  depthMm: 6,
  through: false,
  cutter: flat6,
};

export const clockFeatures: readonly Feature[] = [
  recess,
  { ...recess, name: 'shaft hole', shape: { kind: 'circle', diameterMm: 10 }, depthMm: 12 },
  {
    ...recess,
    name: 'movement pocket',
    face: 'back',
    shape: { kind: 'rectangle', widthMm: 58, heightMm: 58, cornerRadiusMm: 3.2 },
    depthMm: 15,
  },
];

const touched: Zero = {
  xy: { kind: 'stops', at: null, tool: paper },
  z: { on: 'top', at: { x: 140, y: 90 }, tool: paper },
};

/** A clock body, 280 x 180 x 24 mm, milled stops, turned about Y onto the opposite corner. */
export const clock: StopsJob = {
  name: 'Wall clock',
  goodEnoughShare: 0.99,
  onBed: { value: { x: 40, y: 40 }, origin: { kind: 'stated', file: 'wall-clock.yaml', line: 6 } },
  blank: {
    widthMm: 280,
    heightMm: 180,
    thickMm: 24,
    material: 'ash',
    marked: ['lower', 'left'],
    widthSpread: within(0.4),
    heightSpread: within(0.4),
    thickSpread: within(0.15),
    squareSpread: none,
    taperXSpread: none,
    taperYSpread: none,
    bevelSpread: none,
    crookSpread: none,
    bumpSpread: none,
    movementX: none,
    movementY: none,
    movesTogether: false,
    thicknessTaperX: none,
    thicknessTaperY: none,
    cup: { hump: none, along: 'x', up: 'front', pressedFlat: true },
    swarf: none,
    widthAtYMm: 90,
    heightAtXMm: 140,
  },
  first: 'front',
  features: clockFeatures,
  turn: 'about-y',
  locating: 'stops',
  stops: {
    corner: { frontUp: 'near-left', backUp: 'near-right' },
    fence: 'lower',
    fenceTouch: { kind: 'buttons', atMm: [30, 250] },
    sideTouch: { kind: 'buttons', atMm: [90] },
    band: { kind: 'narrow', touchHeightMm: 12 },
    made: { kind: 'milled-in-place', cutter: flat6 },
    seatGap: none,
    give: none,
  },
  zero: {
    frontUp: { ...touched, xy: { kind: 'milled-stops', at: null } },
    backUp: {
      xy: { kind: 'kept', how: 'held', extra: null },
      z: { on: 'bed', at: { x: 140, y: 90 }, tool: paper },
    },
  },
  needs: [
    {
      kind: 'concentric',
      name: 'shaft in the pocket',
      features: ['shaft hole', 'movement pocket'],
      withinMm: 0.2,
    },
    { kind: 'misalignment', name: 'corner check', at: { x: 70, y: 120 }, withinMm: 0.25 },
  ],
  parts: { count: 1, order: 'each-in-turn' },
  hold: { pusher: 'towards-stops', clampDrag: none },
  jig: {},
  shop: {
    name: 'Garage router',
    units: 'mm',
    machine: {
      travelMm: { x: 600, y: 400, z: 90 },
      drive: 'screw',
      lean: none,
      scaleX: none,
      scaleY: none,
      lostMotion: none,
      repeatability: none,
      local: { spread: none, overMm: 100 },
      cutterLeanX: none,
      cutterLeanY: none,
      aboveTip: {
        colletNut: { radiusMm: 10, fromMm: 30 },
        spindle: { radiusMm: 33, fromMm: 45 },
        dustShoe: { xMm: 110, yMm: 90, fromMm: 12 },
      },
    },
    bed: {
      leanX: none,
      leanY: none,
      unevenness: none,
      spoilboard: { xMm: 600, yMm: 400, thickMm: 18 },
      inserts: {
        thread: 'M6',
        first: { x: 50, y: 50 },
        pitchMm: { x: 100, y: 75 },
        count: { x: 6, y: 5 },
      },
    },
    cutters: [flat6, flat3],
  },
};

/** Everything set by hand, one stop for both placings, zero touched afresh each time. */
export const clockPlain: StopsJob = {
  ...clock,
  name: 'Wall clock, plain stop',
  locating: 'stops',
  stops: {
    ...clock.stops,
    corner: { frontUp: 'near-left', backUp: 'near-left' },
    fenceTouch: { kind: 'arm', fromMm: 20, toMm: 110 },
    sideTouch: { kind: 'arm', fromMm: 20, toMm: 90 },
    band: { kind: 'plain', heightMm: 8 },
    made: { kind: 'set-by-hand', angle: none, square: none, spacing: none },
  },
  zero: { frontUp: touched, backUp: touched },
  hold: { pusher: 'none', clampDrag: none },
};
