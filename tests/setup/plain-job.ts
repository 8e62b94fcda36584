import type { Distribution } from '../../src/num/distribution.ts';
import type { Cutter, StopsJob, Spread, TouchTool } from '../../src/job/job.ts';

/** A job with nothing off, for tests to change; 280 x 180 x 24, turned about Y, same corner. */
export function plainJob(changes: Partial<StopsJob> = {}): StopsJob {
  return { ...BASE, ...changes };
}

export function spread(distribution: Distribution): Spread {
  return {
    distribution,
    recurs: 'part',
    origin: { kind: 'assumed', because: 'test' },
    text: 'test',
  };
}

export const NONE = spread({ kind: 'exactly', value: 0 });
export const PAPER: TouchTool = { name: 'paper', spread: NONE };

export const FLAT6: Cutter = {
  name: 'flat 6',
  kind: 'flat',
  diameterMm: 6,
  radiusError: NONE,
  vee: null,
  pushOff: NONE,
  fluteMm: 22,
  stepMm: 3,
  stickOutMm: 32,
  speedPerMin: null,
  feedMmPerMin: null,
};

const BASE: StopsJob = {
  name: 'test block',
  goodEnoughShare: 0.99,
  onBed: { value: { x: 70, y: 65 }, origin: { kind: 'assumed', because: 'test' } },
  blank: {
    widthMm: 280,
    heightMm: 180,
    thickMm: 24,
    material: 'ash',
    marked: ['lower', 'left'],
    widthSpread: NONE,
    heightSpread: NONE,
    thickSpread: NONE,
    squareSpread: NONE,
    taperXSpread: NONE,
    taperYSpread: NONE,
    bevelSpread: NONE,
    crookSpread: NONE,
    bumpSpread: NONE,
    movementX: NONE,
    movementY: NONE,
    movesTogether: false,
    thicknessTaperX: NONE,
    thicknessTaperY: NONE,
    cup: { hump: NONE, along: 'x', up: 'front', pressedFlat: true },
    swarf: NONE,
    widthAtYMm: 90,
    heightAtXMm: 140,
  },
  first: 'front',
  features: [],
  turn: 'about-y',
  locating: 'stops',
  stops: {
    corner: { frontUp: 'near-left', backUp: 'near-left' },
    fence: 'lower',
    fenceTouch: { kind: 'buttons', atMm: [30, 250] },
    sideTouch: { kind: 'buttons', atMm: [90] },
    band: { kind: 'plain', heightMm: 8 },
    made: { kind: 'set-by-hand', angle: NONE, square: NONE, spacing: NONE },
    seatGap: NONE,
    give: NONE,
  },
  zero: {
    frontUp: {
      xy: { kind: 'stops', at: null, tool: PAPER },
      z: { on: 'top', at: null, tool: PAPER },
    },
    backUp: {
      xy: { kind: 'kept', how: 'held', extra: null },
      z: { on: 'bed', at: null, tool: PAPER },
    },
  },
  needs: [],
  parts: { count: 1, order: 'each-in-turn' },
  hold: { pusher: 'towards-stops', clampDrag: NONE },
  jig: {},
  shop: {
    name: 'test shop',
    units: 'mm',
    machine: {
      travelMm: { x: 600, y: 400, z: 90 },
      drive: 'screw',
      lean: NONE,
      scaleX: NONE,
      scaleY: NONE,
      lostMotion: NONE,
      repeatability: NONE,
      local: { spread: NONE, overMm: 100 },
      cutterLeanX: NONE,
      cutterLeanY: NONE,
      aboveTip: {
        colletNut: { radiusMm: 10, fromMm: 30 },
        spindle: { radiusMm: 33, fromMm: 45 },
        dustShoe: { xMm: 110, yMm: 90, fromMm: 12 },
      },
    },
    bed: {
      leanX: NONE,
      leanY: NONE,
      unevenness: NONE,
      spoilboard: { xMm: 600, yMm: 400, thickMm: 18 },
      inserts: {
        thread: 'M6',
        first: { x: 50, y: 50 },
        pitchMm: { x: 100, y: 75 },
        count: { x: 6, y: 5 },
      },
    },
    cutters: [FLAT6],
  },
};
