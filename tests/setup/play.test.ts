import { describe, expect, it } from 'vitest';
import { discPlay, newPairs } from '../../src/setup/disc-play.ts';
import { pushed, taken, type Play, type Taken } from '../../src/setup/play.ts';
import { wallPlay } from '../../src/setup/wall-play.ts';
import { randomsOf } from './loose-play/numbers.ts';

// How well `taken` follows the set it draws from: its turns and rows against the same set cut into thousands of slices.

function pinPlay(
  places: readonly (readonly [number, number])[],
  plays: readonly number[],
  missed: readonly (readonly [number, number])[] = [],
): Play {
  const pairs = newPairs(places.length);
  places.forEach(([a, b], k) => {
    pairs.holeA[k] = a + (missed[k]?.[0] ?? 0);
    pairs.holeB[k] = b + (missed[k]?.[1] ?? 0);
    pairs.pinA[k] = a;
    pairs.pinB[k] = b;
    pairs.playMm[k] = plays[k]!;
  });
  const play = discPlay(pairs, 0.6, 0.8);
  play.load();
  return play;
}

/** A rectangle of that size in one that is larger all round by these gaps: right, far, left, near. */
function boxPlay(width: number, height: number, gap: readonly number[]): Play {
  return wallPlay(
    {
      count: 4,
      normalA: Float64Array.of(1, 0, -1, 0),
      normalB: Float64Array.of(0, 1, 0, -1),
      middle: [0, 0],
      gaps: (cos, sin, gaps) => {
        const [w, h] = [width / 2, height / 2];
        const [wide, high] = [cos * w + Math.abs(sin) * h, cos * h + Math.abs(sin) * w];
        gaps.set([w - wide + gap[0]!, h - high + gap[1]!, w - wide + gap[2]!, h - high + gap[3]!]);
      },
    },
    0,
    1,
  );
}

const PLAYS: Readonly<Record<string, () => Play>> = {
  'two pins': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
      ],
      [0.05, 0.05],
    ),
  'two pins, one much looser': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
      ],
      [0.01, 0.2],
    ),
  'two pins that nearly bind': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
      ],
      [0.05, 0.05],
      [
        [0, 0],
        [0.01, 0.09],
      ],
    ),
  'three pins': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
        [90, 70],
      ],
      [0.05, 0.08, 0.06],
    ),
  'three pins, one off': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
        [90, 70],
      ],
      [0.05, 0.08, 0.3],
      [
        [0, 0],
        [0, 0],
        [0.2, -0.15],
      ],
    ),
  'four pins': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
        [90, 0],
        [90, 150],
      ],
      [0.05, 0.08, 0.06, 0.2],
    ),
  'four pins, one off': () =>
    pinPlay(
      [
        [0, 0],
        [0, 150],
        [90, 0],
        [90, 150],
      ],
      [0.05, 0.08, 0.06, 0.2],
      [
        [0, 0],
        [0.06, 0],
        [0, 0],
        [0.1, 0.1],
      ],
    ),
  'a nest': () => boxPlay(280, 180, [0.2, 0.2, 0.2, 0.2]),
  'a nest, tight one way': () => boxPlay(280, 180, [0.2, 0.01, 0.2, 0.01]),
  'a nest wider than it is high': () => boxPlay(100, 100, [0.3, 0.1, 0.2, 0.05]),
};

const SLICES = 2000;

/** Shares of a density below each slice's middle. */
function sharesOf(low: number, high: number, density: (at: number) => number) {
  const values = Array.from({ length: SLICES }, (_, k) =>
    density(low + ((k + 0.5) * (high - low)) / SLICES),
  );
  const total = values.reduce((sum, value) => sum + value, 0);
  return (at: number): number => {
    const place = ((at - low) / (high - low)) * SLICES;
    const whole = Math.min(SLICES - 1, Math.max(0, Math.floor(place)));
    const below = values.slice(0, whole).reduce((sum, value) => sum + value, 0);
    return (below + (place - whole) * values[whole]!) / total;
  };
}

const DRAWS = Array.from({ length: 41 }, (_, k) => (k + 0.5) / 41);

describe('a draw out of a play', () => {
  it.each(Object.entries(PLAYS))('has the turns and rows of the set: %s', (name, made) => {
    const play = made();
    const to: Taken = { s: 0, e: 0, f: 0 };
    const [low, high] = play.limits()!;
    const turnShare = sharesOf(low, high, (s) => (play.turn(s) ? play.area() : 0));
    const turnOff = DRAWS.map((u) => {
      taken(play, u, 0.5, 0.5, to);
      return Math.abs(turnShare(to.s) - u);
    });
    let rowOff = 0;
    let areaOff = 0;
    for (const u of [0.02, 0.3, 0.9]) {
      taken(play, u, 0.5, 0.5, to);
      play.turn(to.s);
      const [first, last] = [play.low(), play.high()];
      const width = (f: number): number => Math.max(0, play.right(f) - play.left(f));
      const rowShare = sharesOf(first, last, width);
      const slices = Array.from({ length: SLICES }, (_, k) =>
        width(first + ((k + 0.5) * (last - first)) / SLICES),
      );
      const area = (slices.reduce((sum, value) => sum + value, 0) * (last - first)) / SLICES;
      areaOff = Math.max(areaOff, Math.abs(play.area() / area - 1));
      for (const v of DRAWS) {
        taken(play, u, v, 0.5, to);
        rowOff = Math.max(rowOff, Math.abs(rowShare(to.f) - v));
      }
    }
    // As `taken` says of itself; within its cells the density is taken as straight, for rows of pins 0.15 %.
    const isOfPins = name.includes('pins');
    expect(Math.max(...turnOff)).toBeLessThan(isOfPins ? 0.0025 : 5e-4);
    expect(rowOff).toBeLessThan(isOfPins ? 0.0015 : 5e-4);
    // Eight points of Gauss over rows whose ends have corners; walls leave a polygon, whose area is exact.
    expect(areaOff).toBeLessThan(isOfPins ? 0.007 : 1e-12);
  });
});

describe('a push', () => {
  it.each(Object.entries(PLAYS))('goes as far as any turn lets it: %s', (_, made) => {
    const play = made();
    const to: Taken = { s: 0, e: 0, f: 0 };
    expect(pushed(play, 0.5, to)).toBe(true);
    const [low, high] = play.limits()!;
    let furthest = -Infinity;
    for (let k = 0; k <= SLICES; k++)
      if (play.turn(low + (k * (high - low)) / SLICES)) furthest = Math.max(furthest, play.high());
    expect(to.f).toBeGreaterThan(furthest - 1e-11);
    // No slice is further from the best turn than half of one.
    expect(to.f).toBeLessThan(furthest + (200 * (high - low)) / SLICES);
    expect(play.turn(to.s)).toBe(true);
    expect(to.f).toBe(play.high());
  });
});

describe('a play of nothing', () => {
  const numbers = (to: Taken) => [to.s, to.e, to.f];
  it.each([2, 3, 4])('of %d pins without clearance is the best fit', (count) => {
    const places = (
      [
        [0, 0],
        [0, 150],
        [90, 0],
        [90, 150],
      ] as const
    ).slice(0, count);
    const play = pinPlay(places, [0, 0, 0, 0]);
    for (const u of [0, 0.3, 1]) {
      const to: Taken = { s: 9, e: 9, f: 9 };
      expect(taken(play, u, u, u, to)).toBe(true);
      for (const number of numbers(to)) expect(Math.abs(number)).toBeLessThan(1e-12);
      expect(pushed(play, u, to)).toBe(true);
      for (const number of numbers(to)) expect(Math.abs(number)).toBeLessThan(1e-10);
    }
  });

  it('of pins that bind is none', () => {
    const places = [
      [0, 0],
      [0, 150],
      [90, 70],
    ] as const;
    const to: Taken = { s: 0, e: 0, f: 0 };
    const bound = pinPlay(
      places,
      [0.01, 0.01, 0.01],
      [
        [0, 0],
        [0, 0],
        [0.2, 0],
      ],
    );
    expect(taken(bound, 0.5, 0.5, 0.5, to)).toBe(false);
    expect(pushed(bound, 0.5, to)).toBe(false);
    expect(
      pinPlay(
        places.slice(0, 2),
        [0.05, 0.05],
        [
          [0, 0],
          [0, 0.11],
        ],
      ).limits(),
    ).toBeNull();
  });

  it('of a nest without clearance is its middle, and of one too small none', () => {
    const to: Taken = { s: 9, e: 9, f: 9 };
    expect(taken(boxPlay(280, 180, [0, 0, 0, 0]), 0.2, 0.7, 1, to)).toBe(true);
    for (const number of numbers(to)) expect(Math.abs(number)).toBeLessThan(1e-8);
    expect(taken(boxPlay(280, 180, [-0.1, 0.1, 0.05, 0.1]), 0.2, 0.7, 1, to)).toBe(false);
    expect(taken(boxPlay(280, 180, [-2e-6, 0.1, 1e-6, 0.1]), 0.2, 0.7, 1, to)).toBe(false);
  });
});

/** Pins anywhere, and holes that are on them after a turn and a move, none nearer its limit than a share of its play. */
function pinsThatGoOn(seed: number, least: number) {
  const next = randomsOf(seed);
  const count = next() < 0.5 ? 3 : 4;
  const size = 0.01 + next();
  const sine = 0.002 * (2 * next() - 1);
  const cos = Math.sqrt(1 - sine * sine);
  const pairs = newPairs(count);
  for (let k = 0; k < count; k++) {
    // One in each quarter of a blank of 280 by 180.
    const [a, b] = [100 * next() + (k % 2) * 180, 60 * next() + (k > 1 ? 120 : 0)];
    const play = size * (next() < 0.5 ? 0.03 : next());
    const off = (1 - least) * play * next() ** 0.2;
    const rad = 2 * Math.PI * next();
    const [onA, onB] = [a + off * Math.cos(rad), b + off * Math.sin(rad)];
    pairs.pinA[k] = a;
    pairs.pinB[k] = b;
    pairs.playMm[k] = play;
    // Turned back from where it is on its pin.
    pairs.holeA[k] = cos * onA + sine * onB + 3;
    pairs.holeB[k] = cos * onB - sine * onA - 2;
  }
  return pairs;
}

describe('pins that go on somehow', () => {
  it('are put on, wherever their best fit is', () => {
    let outside = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const play = discPlay(pinsThatGoOn(seed, 0.02), 0.6, 0.8);
      play.load();
      if (!play.turn(0)) outside++;
      const to: Taken = { s: 0, e: 0, f: 0 };
      expect([seed, taken(play, 0.5, 0.5, 0.5, to)]).toEqual([seed, true]);
      expect(play.turn(to.s)).toBe(true);
      expect(to.e).toBeGreaterThan(play.left(to.f) - 1e-12);
      expect(to.e).toBeLessThan(play.right(to.f) + 1e-12);
    }
    expect(outside).toBeGreaterThan(100);
  });
});
