import { describe, expect, it } from 'vitest';
import { freedPieces } from '../../src/hold/freed.ts';
import { gripOf, type Contact } from '../../src/hold/grip.ts';
import { placedScrews } from '../../src/hold/screws.ts';
import { withdrawalFromBoardN, withdrawalN } from '../../src/hold/screw.ts';
import { thinWebs } from '../../src/hold/thin-web.ts';
import { holdNumbers } from '../../src/hold/numbers.ts';
import { keepClearOf } from '../../src/sweep/keep-clear.ts';
import { aFeature, aJob, placed } from '../jig/a-job.ts';
import { aHolding } from './a-holding.ts';
import { planOf } from './plan-laws.ts';

const dish = aFeature({ name: 'dish', shape: { kind: 'circle', diameterMm: 60 } });
const screw = { name: 'spax', shankMm: 4, lengthMm: 38, headMm: 8, headHighMm: 3 };

describe('room beside', () => {
  // The axis of a 6 mm cutter in a circle of 60 at 140, 90 comes to x = 167, its edge to 170.
  const bodyAt = (gapMm: number) => {
    const x = 170 + gapMm;
    const outline = [
      { x, y: 80 },
      { x: x + 20, y: 80 },
      { x: x + 20, y: 100 },
      { x, y: 100 },
    ];
    return { name: 'block', outline, lowMm: 0, highMm: 19 };
  };
  const job = aJob({ features: [dish] });
  const said = (gapMm: number, besideMm: number) =>
    keepClearOf(job, placed(job).frontUp, { by: 'features' })([bodyAt(gapMm)], {
      overMm: 2,
      besideMm,
    })
      .filter(({ what }) => what === 'cutter')
      .map(({ kind }) => kind);

  it('is kept as it is stated, neither less nor more', () => {
    expect(said(2.9, 3)).toEqual(['too-near']);
    expect(said(3.1, 3)).toEqual([]);
    expect(said(0.9, 1)).toEqual(['too-near']);
    expect(said(1.1, 1)).toEqual([]);
    expect(said(-0.1, 3)).toEqual(['strikes']);
    expect(holdNumbers.besideMm).toBe(3);
  });
});

describe('form closure in the plane', () => {
  // Source: Lynch and Park, Modern Robotics 12.1.7 (first-order form closure); cases computed independently, block 100 by 60.
  const push = (x: number, y: number, nx: number, ny: number): Contact => ({
    kind: 'push',
    at: [x, y, 0],
    normal: [nx, ny, 0],
    mostN: Infinity,
    friction: 0,
  });
  /** Closed: pulls and turns of every way are balanced, however large. */
  const isClosed = (contacts: readonly Contact[]): boolean =>
    Array.from({ length: 12 }, (_, k) => (k * Math.PI) / 6).every((rad) =>
      [
        [0, 0],
        [100, 60],
        [50, 30],
        [100, 0],
      ].every(
        ([x, y]) =>
          gripOf(
            contacts,
            { at: [x!, y!, 0], force: [Math.cos(rad), Math.sin(rad), 0] },
            'in-plane',
          ) === Infinity,
      ),
    );
  const locators = [push(25, 0, 0, 1), push(75, 0, 0, 1), push(0, 30, 1, 0)];

  it('is not there with three locators, and is with a clamp across or two', () => {
    expect(isClosed(locators)).toBe(false);
    expect(isClosed([...locators, push(100, 60, -Math.SQRT1_2, -Math.SQRT1_2)])).toBe(true);
    expect(isClosed([...locators, push(100, 30, -1, 0), push(50, 60, 0, -1)])).toBe(true);
  });

  it('is not there with a contact in the middle of each side: it turns', () => {
    const middles = [
      push(50, 0, 0, 1),
      push(100, 30, -1, 0),
      push(50, 60, 0, -1),
      push(0, 30, 1, 0),
    ];
    expect(isClosed(middles)).toBe(false);
  });
});

describe('screws and the board under them', () => {
  const job = aJob({ features: [], inserts: null });
  const at = (screws: { x: number; y: number }[], board = aHolding().board) =>
    placedScrews(job, aHolding({ screw, screws, board }), placed(job).backUp);

  it('hold in MDF by one formula and in solid wood by another', () => {
    const [mdf] = at([{ x: 40, y: 60 }]);
    expect(mdf!.downN).toBeCloseTo(withdrawalFromBoardN(0.6, 4, 14, 'face'), 6);
    const [beech] = at([{ x: 40, y: 60 }], { material: 'beech', oldHoles: [] });
    // Wood Handbook: 108.25 G2 D L with G 0.64: 108.25 x 0.4096 x 4 x 14 = 2483 N.
    expect(beech!.downN).toBeCloseTo(withdrawalN(0.64, 4, 14), 6);
    expect(Math.round(beech!.downN)).toBe(2483);
  });

  it('keep away from old holes of the board, or go into them', () => {
    // Back up, turned about Y: blank 40 lies at 240; the blank's corner at 50, 50 on the bed.
    const faults = (x: number) =>
      at([{ x: 40, y: 60 }], { material: null, oldHoles: [{ x, y: 110 }] }).flatMap(
        (one) => one.faults,
      );
    expect(faults(290)).toEqual([]);
    expect(faults(300.5)).toEqual([]);
    expect(faults(299).join()).toContain('9.0 mm beside the old hole at 299, 110');
  });
});

describe('what is left thin', () => {
  const front = aFeature({ name: 'front dish', depthMm: 11 });
  const back = (depthMm: number) => aFeature({ name: 'back dish', face: 'back', depthMm });
  const webs = (depthMm: number, hasFiller = false) => {
    const job = aJob({ features: [front, back(depthMm)] });
    const force = { sidewaysN: 30, liftN: 15, feature: '', isStated: false, assumed: [] };
    return thinWebs(job, aHolding({ hasFiller }), placed(job).backUp, force);
  };

  it('wants a filler, and is silent once there is one or enough wood', () => {
    // Roark: 3 x 30 x 1.3 x ln(60 / 3) / (2 pi x 1) = 55.8 N/mm2 against 6.5 of ash, for 1 mm.
    const [web] = webs(12);
    expect(web!.thickMm).toBeCloseTo(1, 9);
    expect(web!.factor).toBeCloseTo(6.5 / 55.78, 2);
    expect(webs(12, true)).toEqual([]);
    expect(webs(2)).toEqual([]);
  });

  it('is laid over with straps only when it is filled', () => {
    const wide = aFeature({
      name: 'wide',
      shape: { kind: 'rectangle', widthMm: 276, heightMm: 176, cornerRadiusMm: 4 },
    });
    const small = aFeature({
      name: 'small',
      face: 'back',
      depthMm: 2,
      shape: { kind: 'circle', diameterMm: 20 },
    });
    const job = aJob({
      features: [wide, small],
      onBed: { x: 140, y: 100 },
      inserts: {
        thread: 'M6',
        first: { x: 25, y: 25 },
        pitchMm: { x: 100, y: 75 },
        count: { x: 6, y: 5 },
      },
    });
    const bare = planOf(job).backUp.candidates;
    expect(bare.free).toEqual([]);
    expect(bare.refused.some(({ because }) => because.kind === 'hollow')).toBe(true);
    expect(
      planOf(job, aHolding({ hasFiller: true })).backUp.candidates.free.length,
    ).toBeGreaterThan(1);
  });
});

describe('vacuum and tape', () => {
  const job = aJob({ features: [dish], inserts: null });
  const factor = (wish: Parameters<typeof aHolding>[0]) =>
    planOf(job, aHolding({ straps: [], force: { sidewaysN: 40, liftN: 20 }, ...wish })).frontUp
      .verdict!.factor;

  it('hold as strongly as a person states, twice as much for twice the area', () => {
    // 0.8 bar on 200 x 100: 1600 N, of which half is counted on; friction 0.2.
    const one = factor({ vacuum: { gaugeKPa: 80, areaMm2: 20_000 } });
    const two = factor({ vacuum: { gaugeKPa: 80, areaMm2: 40_000 } });
    expect(one).toBeGreaterThan(0);
    expect(two).toBeGreaterThan(1.8 * one);
    // Tape holds sideways only: nothing bears against lifting.
    expect(factor({ tape: { shearKPa: 20, areaMm2: 40_000 } })).toBe(0);
  });
});

describe('the order of cuts', () => {
  it('decides what comes free, and what is cut at later', () => {
    const window = aFeature({
      name: 'window',
      cut: 'profile-inside',
      shape: { kind: 'circle', diameterMm: 80 },
      depthMm: 24,
      through: true,
    });
    const hole = aFeature({
      name: 'hole',
      cut: 'drill',
      shape: { kind: 'circle', diameterMm: 6 },
      depthMm: 10,
    });
    const laterOf = (features: (typeof hole)[]) =>
      freedPieces(aJob({ features }), new Map())
        .find(({ side }) => side === 'inside')!
        .later.map(({ name }) => name);
    expect(laterOf([window, hole])).toEqual(['hole']);
    expect(laterOf([hole, window])).toEqual([]);
  });
});
