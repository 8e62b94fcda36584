import type { Bed, Cutter, Feature, StopsJob, Spread, Stops } from '../../src/job/job.ts';
import type { Point } from '../../src/plane/point.ts';
import { placingsOf } from '../../src/setup/place.ts';
import type { Placings } from '../../src/sweep/clearances.ts';

const none: Spread = {
  distribution: { kind: 'exactly', value: 0 },
  recurs: 'part',
  origin: { kind: 'assumed', because: 'test' },
  text: '0',
};

export const flat6: Cutter = {
  name: 'flat 6',
  kind: 'flat',
  diameterMm: 6,
  radiusError: none,
  vee: null,
  pushOff: none,
  fluteMm: 22,
  stepMm: 3,
  stickOutMm: 32,
  speedPerMin: 18000,
  feedMmPerMin: 1800,
};

/** Long enough to mill the faces of any stop. */
export const long6: Cutter = { ...flat6, fluteMm: 60, stickOutMm: 70 };

export interface Wish {
  readonly size: readonly [number, number, number];
  readonly stops: Partial<Omit<Stops, 'made'>>;
  readonly made: Stops['made']['kind'];
  readonly onBed: Point<'bed'>;
  readonly inserts: Bed['inserts'];
  readonly spoilboard: { readonly xMm: number; readonly yMm: number };
  readonly features: readonly Feature[];
}

export const plainBed: Bed['inserts'] = {
  thread: 'M6',
  first: { x: 25, y: 25 },
  pitchMm: { x: 50, y: 50 },
  count: { x: 12, y: 8 },
};

/** A case lid, front up at the near left, turned about Y; whatever is not wished is plain. */
export function aJob(wish: Partial<Wish> = {}): StopsJob {
  const [widthMm, heightMm, thickMm] = wish.size ?? [280, 180, 24];
  const zero = {
    xy: { kind: 'edges', at: null, tool: { name: 'paper', spread: none } },
    z: { on: 'top', at: null, tool: { name: 'paper', spread: none } },
  } as const;
  return {
    name: 'Case lid',
    goodEnoughShare: 0.99,
    onBed: { value: wish.onBed ?? { x: 50, y: 50 }, origin: { kind: 'assumed', because: 'test' } },
    blank: {
      widthMm,
      heightMm,
      thickMm,
      material: 'ash',
      marked: ['lower', 'left'],
      widthSpread: none,
      heightSpread: none,
      thickSpread: none,
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
      widthAtYMm: heightMm / 2,
      heightAtXMm: widthMm / 2,
    },
    first: 'front',
    features: wish.features ?? [],
    turn: 'about-y',
    locating: 'stops',
    stops: {
      corner: { frontUp: 'near-left', backUp: 'near-left' },
      fence: 'lower',
      fenceTouch: { kind: 'buttons', atMm: [30, widthMm - 30] },
      sideTouch: { kind: 'buttons', atMm: [heightMm / 2] },
      band: { kind: 'plain', heightMm: 8 },
      made: madeOf(wish.made ?? 'set-by-hand'),
      seatGap: none,
      give: none,
      ...wish.stops,
    },
    zero: { frontUp: zero, backUp: zero },
    needs: [],
    parts: { count: 1, order: 'each-in-turn' },
    hold: { pusher: 'none', clampDrag: none },
    jig: {},
    shop: {
      name: 'Test shop',
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
        spoilboard: { ...(wish.spoilboard ?? { xMm: 600, yMm: 400 }), thickMm: 18 },
        inserts: wish.inserts === undefined ? plainBed : wish.inserts,
      },
      cutters: [flat6],
    },
  };
}

export const placed = (job: StopsJob): Placings => placingsOf(job);

export function aFeature(change: Partial<Feature> = {}): Feature {
  return {
    name: 'recess',
    face: 'front',
    shape: { kind: 'circle', diameterMm: 120 },
    at: { x: 140, y: 90 },
    turnedRad: 0,
    cut: 'pocket',
    depthMm: 6,
    through: false,
    cutter: flat6,
    ...change,
  };
}

function madeOf(kind: Stops['made']['kind']): Stops['made'] {
  return kind === 'milled-in-place'
    ? { kind, cutter: long6 }
    : { kind, angle: none, square: none, spacing: none };
}
