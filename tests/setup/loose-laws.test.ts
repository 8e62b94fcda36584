import { describe, expect, it } from 'vitest';
import type { DowelHoles, Job, TakeUp } from '../../src/job/job.ts';
import { HELD, inNest, onDowels, onFenceAndDowel } from './loose-job.ts';
import { randomsOf } from './loose-play/numbers.ts';
import { ALLOWED_MM } from './loose-second-model/agreement.ts';
import { looseSetUp } from './loose-second-model/set-ups.ts';
import { keysOf, misalign, type Off } from './misalign.ts';
import { PAPER } from './plain-job.ts';

const renamed = (off: Off, name: (key: string) => string): Off =>
  Object.fromEntries(Object.entries(off).map(([key, value]) => [name(key), value]));

describe('dowels told in another order', () => {
  it('locate alike, each with the luck it had', () => {
    let compared = 0;
    for (let seed = 4; seed <= 240; seed += 4) {
      const { job, off, at, take } = looseSetUp(seed);
      if (job.locating !== 'dowels') throw new Error('every fourth set-up is on dowels');
      const count = job.dowels.at.length;
      const other: Job = { ...job, dowels: { ...job.dowels, at: job.dowels.at.toReversed() } };
      const swapped = renamed(off, (key) =>
        key.replace(
          /(dowel |clearance\/|pin-size\/|hole-size\/|hole-place\/)(\d)/,
          (_, name, k) => `${name as string}${count + 1 - Number(k)}`,
        ),
      );
      const [x, y] = misalign(job, off, at);
      const [otherX, otherY] = misalign(other, swapped, at);
      expect([seed, Math.hypot(x - otherX, y - otherY) < ALLOWED_MM[take]]).toEqual([seed, true]);
      compared++;
    }
    expect(compared).toBe(60);
  });
});

const [W, H] = [280, 180];
const MIDDLE = { kind: 'middle', at: null, tool: PAPER } as const;
const SIZE = 1e-3;
/** The blank's own frame hangs on its lower-left corner: the square of what is off, over levers of 280 / 120. */
const SECOND_MM = 60 * SIZE * SIZE;

const OTHER_WAY: Record<TakeUp, TakeUp> = {
  anywhere: 'anywhere',
  left: 'right',
  right: 'left',
  near: 'near',
  far: 'far',
};

/** What a mirror makes of a deviation's name and sign. */
function mirrored(off: Off): Off {
  return Object.fromEntries(
    Object.entries(off).map(([key, value]) => {
      const swapped = key
        .replace(/left|right/g, (word) => (word === 'left' ? 'right' : 'left'))
        // At the middle, the second touch of X is that of the right edge.
        .replace(/^(zero-touch.*\/x)\/(\d)/, (_, name, k) => `${name as string}/${3 - Number(k)}`)
        .replace(
          /^(bump\/(?:lower|upper))\/(\d+)/,
          (_, name, mm) => `${name as string}/${W - Number(mm)}`,
        )
        .replace(
          /^(seat-gap\/.*(?:lower|upper))-(\d)/,
          (_, name, k) => `${name as string}-${3 - Number(k)}`,
        );
      const turns =
        /^(machine-lean|laid|cutter-lean\/x|zero-return\/x)/.test(key) ||
        /^(repeatability|lost-motion|hole-place).*\/x$/.test(key) ||
        /take-up\/.*\/turn/.test(key);
      return [swapped, turns ? -value : value];
    }),
  );
}

/** Everything off a little, but for what hangs on the lower-left corner: the blank's width, squareness and tapers. */
function littleOff(job: Job, seed: number, anywhere: boolean): Off {
  const next = randomsOf(seed);
  return Object.fromEntries(
    keysOf(job).map((key) => {
      const value = 2 * next() - 1;
      if (key.startsWith('take-up')) {
        const isTurn = anywhere && key.endsWith('turn');
        return [key, isTurn ? (value < 0 ? -0.5 : 0.5) : 0];
      }
      if (/^(square|taper|width)/.test(key)) return [key, 0];
      if (/^(clearance|nest-clearance)/.test(key)) return [key, 0.1 + 0.05 * value];
      if (key.startsWith('seat-gap')) return [key, Math.abs(value) * SIZE];
      const isLean = /^(machine-lean|scale|cutter-lean|bevel|crook|movement|laid)/.test(key);
      return [key, value * (isLean ? SIZE / 100 : SIZE)];
    }),
  );
}

const PLACES: readonly (readonly { x: number; y: number }[])[] = [
  [
    { x: 131, y: 20 },
    { x: 131, y: 160 },
  ],
  [
    { x: 40, y: 70 },
    { x: 222, y: 70 },
  ],
  [
    { x: 131, y: 150 },
    { x: 40, y: 30 },
    { x: 222, y: 30 },
  ],
];

describe('the whole bench mirrored left for right', () => {
  it('lands dowelled blanks mirrored', () => {
    for (const at of PLACES)
      for (const takeUp of ['anywhere', 'left', 'near'] as const)
        for (const drilled of ['with-the-blank', 'separately'] as const)
          expectMirrored((way, flip) => {
            const holes: Partial<DowelHoles> = {
              at: flip ? at.map(({ x, y }) => ({ x: W - x, y })) : at,
              takeUp: way,
              drilled,
            };
            return onDowels(holes, { first: MIDDLE, second: HELD });
          }, takeUp);
  });

  it('lands blanks in a nest mirrored', () => {
    for (const takeUp of ['anywhere', 'left', 'near'] as const)
      for (const second of [HELD, MIDDLE])
        expectMirrored((way) => inNest({ takeUp: way }, { first: MIDDLE, second }), takeUp);
  });
});

function expectMirrored(jobOf: (way: TakeUp, flip: boolean) => Job, takeUp: TakeUp): void {
  const [one, other] = [jobOf(takeUp, false), jobOf(OTHER_WAY[takeUp], true)];
  for (let seed = 1; seed <= 4; seed++) {
    const off = littleOff(one, seed, takeUp === 'anywhere');
    const at = { x: 37 * seed, y: 150 - 31 * seed };
    const [x, y] = misalign(one, off, at);
    const [mx, my] = misalign(other, mirrored(off), { x: W - at.x, y: at.y });
    expect(Math.abs(mx + x)).toBeLessThan(SECOND_MM);
    expect(Math.abs(my - y)).toBeLessThan(SECOND_MM);
    expect(Math.hypot(x, y)).toBeGreaterThan(SECOND_MM);
  }
}

describe('where it stands on the bed', () => {
  it('makes no difference to dowels and nests', () => {
    for (const job of [onDowels({}), inNest({})]) {
      const elsewhere = {
        ...job,
        onBed: { value: { x: 123, y: 45 }, origin: { kind: 'assumed' as const, because: 'test' } },
      };
      const off = littleOff(job, 9, true);
      expect(misalign(elsewhere, off, { x: 33, y: H / 4 })).toEqual(
        misalign(job, off, { x: 33, y: H / 4 }),
      );
    }
  });
});

describe('a dowel pushed one way along its fence', () => {
  it.each(['lower', 'upper'] as const)('is off by its clearance, turned over: %s', (fence) => {
    const clearance = 0.1;
    for (const [takeUp, way] of [
      ['right', 1],
      ['left', -1],
    ] as const) {
      const set = { milled: true, first: { kind: 'dowels' } } as const;
      const job = onFenceAndDowel({ takeUp, drilled: 'separately' }, set);
      if (job.locating !== 'fence-and-dowel') throw new Error('on a fence and a dowel');
      const drilled: Job = { ...job, fenceAndDowel: { ...job.fenceAndDowel, fence } };
      const [x, y] = misalign(drilled, { 'clearance/1': clearance }, { x: 60, y: 40 });
      const [trueX] = misalign(drilled, {}, { x: 60, y: 40 });
      expect(Math.abs(trueX)).toBeLessThan(1e-12);
      // Half of it to that side in both placings, and the back is seen mirrored.
      expect(x).toBeCloseTo(way * clearance, 12);
      expect(y).toBeCloseTo(0, 12);
    }
  });
});
