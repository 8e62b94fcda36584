import { describe, expect, it } from 'vitest';
import { freedPieces } from '../../src/hold/freed.ts';
import { tabN, tabsFor } from '../../src/hold/tabs.ts';
import { strengthsOf } from '../../src/hold/wood.ts';
import { regionsOf } from '../../src/plane/regions.ts';
import { aFeature, aJob } from '../jig/a-job.ts';

const window = (change = {}) =>
  aFeature({
    name: 'window',
    cut: 'profile-inside',
    shape: { kind: 'circle', diameterMm: 60 },
    depthMm: 24,
    through: true,
    ...change,
  });
const names = (features: ReturnType<typeof aFeature>[], tabs = new Map()) =>
  freedPieces(aJob({ features }), tabs).map(({ name, link }) => [name, link.kind]);

describe('what a through cut sets free', () => {
  it('is the disc inside, with the area that is left of it', () => {
    const pieces = freedPieces(aJob({ features: [window()] }), new Map());
    expect(pieces.map(({ name }) => name)).toEqual([
      'the rest around window',
      'the inside of window',
    ]);
    // The 6 mm cutter leaves a disc of 60 - 12.
    expect(pieces[1]!.region.areaMm2 / (Math.PI * 24 ** 2)).toBeCloseTo(1, 2);
    expect(pieces[0]!.region.areaMm2 / (280 * 180 - Math.PI * 30 ** 2)).toBeCloseTo(1, 3);
  });

  it('is nothing where a pocket or a hole is cut through', () => {
    expect(names([window({ cut: 'pocket' })])).toEqual([]);
    expect(names([window({ cut: 'drill' })])).toEqual([]);
    expect(names([window({ depthMm: 20, through: false })])).toEqual([]);
  });

  it('is the part itself when it is cut round from outside', () => {
    expect(names([window({ cut: 'profile-outside' })])).toEqual([
      ['the rest around window', 'none'],
      ['the inside of window', 'none'],
    ]);
  });

  it('comes from both faces when their cuts meet, and a skin is a hold of its own', () => {
    const front = window({ depthMm: 12, through: false });
    const back = (depthMm: number) =>
      window({ name: 'back window', face: 'back', depthMm, through: false });
    expect(names([front, back(12)])).toEqual([
      ['the rest around back window', 'none'],
      ['the inside of back window', 'none'],
    ]);
    expect(names([front, back(11.5)])[1]).toEqual(['the inside of back window', 'skin']);
    expect(names([front, back(10)])).toEqual([]);
    // From one face the same cut twice goes no deeper.
    expect(names([front, { ...front, name: 'again' }])).toEqual([]);
    // Elsewhere they do not meet.
    expect(names([front, { ...back(12), at: { x: 240, y: 90 } }])).toEqual([]);
  });

  it('falls apart where grooves cross the blank', () => {
    const groove = aFeature({
      name: 'groove',
      shape: { kind: 'slot', lengthMm: 320, widthMm: 6.2 },
      depthMm: 24,
      through: true,
    });
    const pieces = freedPieces(aJob({ features: [groove] }), new Map());
    expect(pieces).toHaveLength(2);
    expect(pieces[0]!.region.areaMm2).toBeCloseTo(280 * 86.9, 0);
  });

  it('is tied by tabs when it has them', () => {
    const tabs = new Map([['window', { count: 3, widthMm: 6, thickMm: 2 }]]);
    expect(names([window()], tabs)[1]).toEqual(['the inside of window', 'tabs']);
  });

  it('has tabs as strong as the wood', () => {
    // Computed independently, ultimate over 3: 6 x 2 mm in white pine 8, cherry 16, red oak 22, ash 26 N.
    const rows = [
      ['white pine', 8],
      ['cherry', 16],
      ['red oak', 22],
      ['ash', 26],
    ] as const;
    for (const [name, newtons] of rows)
      expect(Math.round(tabN({ widthMm: 6, thickMm: 2 }, strengthsOf(name)))).toBe(newtons);
    expect(tabsFor(60, strengthsOf('ash'), 20)).toEqual({ count: 3, widthMm: 6, thickMm: 2 });
    const weak = tabsFor(200, strengthsOf('white pine'), 20);
    expect(weak.count * tabN(weak, strengthsOf('white pine'))).toBeGreaterThan(200);
  });
});

describe('regions', () => {
  it('keep their own holes', () => {
    const square = (x: number, half: number, clockwise = false) => {
      const round = [
        { x: x - half, y: -half },
        { x: x + half, y: -half },
        { x: x + half, y: half },
        { x: x - half, y: half },
      ];
      return clockwise ? round.reverse() : round;
    };
    const regions = regionsOf([
      square(0, 10),
      square(0, 5, true),
      square(0, 2),
      square(50, 8),
      square(50, 1, true),
    ]);
    expect(regions.map(({ areaMm2, outlines }) => [areaMm2, outlines.length])).toEqual([
      [300, 2],
      [252, 2],
      [16, 1],
    ]);
  });
});
