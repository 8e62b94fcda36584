import { describe, expect, it } from 'vitest';
import { assumptionsOf } from '../../src/job/assumptions.ts';
import { faultsOf, jobOf, readTexts } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const blankWith = (words: string) => jobOf(otherwise(JOB, 'edges: sawn', words), SHOP).blank;
const VEE = '  - {name: vee 90, kind: vee, angle: 90 deg, diameter: 12}\n';
const shopWith = (vee: string) => otherwise(SHOP, 'touch-off:', `${vee}touch-off:`);
const rectangular = (high: number, low = -high) => ({ kind: 'rectangular', low, high });

describe('what changes depths', () => {
  const { blank, shop, features } = jobOf(JOB, SHOP);

  // The table of defaults in jigs: common practice, no source.
  it.each([
    ['thickness taper along X', blank.thicknessTaperX, 'part', rectangular(0.1 / 200)],
    ['thickness taper along Y', blank.thicknessTaperY, 'part', rectangular(0.1 / 200)],
    ['cup', blank.cup.hump, 'part', rectangular(0.2, 0)],
    ['swarf', blank.swarf, 'placing', { kind: 'half-normal', sigma: 0.02 }],
    ['lean of the bed', shop.bed.leanX, 'shop', rectangular(0.2 / 200)],
    ['lean of the bed', shop.bed.leanY, 'shop', rectangular(0.2 / 200)],
    ['unevenness', shop.bed.unevenness, 'shop', rectangular(0.05)],
    ['push-off', features[0]!.cutter.pushOff, 'feature', rectangular(0.05, 0)],
  ])('%s is assumed as in the table when nothing is said', (_, spread, recurs, distribution) => {
    expect(spread.distribution).toEqual(distribution);
    expect(spread.recurs).toBe(recurs);
    expect(spread.origin.kind).toBe('assumed');
  });

  it('is one thickness taper for both directions, or one each', () => {
    const both = blankWith('thickness-taper: ±0.2 per 200');
    for (const taper of [both.thicknessTaperX, both.thicknessTaperY])
      expect(taper).toMatchObject({
        distribution: rectangular(0.001),
        origin: { kind: 'stated', file: 'job.yaml', line: 6 },
      });
    const apart = blankWith('thickness-taper: {x: 0, y: {spread: ±0.4 per 200, recurs: shop}}');
    expect(apart.thicknessTaperX.distribution).toEqual({ kind: 'exactly', value: 0 });
    expect(apart.thicknessTaperY).toMatchObject({
      distribution: rectangular(0.002),
      recurs: 'shop',
    });
    const one = blankWith('thickness-taper: {x: 0}');
    expect(one.thicknessTaperY.origin.kind).toBe('assumed');
  });

  it('is cupped across the grain, up on either face, and not pressed flat unless it is said', () => {
    expect(blank.cup).toMatchObject({ along: 'y', up: null, pressedFlat: false });
    expect(blankWith('grain: along-x').cup.along).toBe('y');
    expect(blankWith('grain: along-y').cup.along).toBe('x');
    expect(
      blankWith('cup: {hump: 0..0.1, along: x, up: front, pressed-flat: yes}').cup,
    ).toMatchObject({ along: 'x', up: 'front', pressedFlat: true, hump: { text: '0..0.1' } });
  });

  it('is noted when no need is about depth', () => {
    const of = (job: string) => {
      const read = readTexts(job, shopWith(VEE));
      return read.ok ? read.value.notes.map(({ line, message }) => `${line} ${message}`) : null;
    };
    const job = otherwise(JOB, 'edges: sawn', 'cup: {hump: 0..0.1}\n  swarf: 0');
    expect(of(job)).toEqual([
      '6 cup only changes depths, and no need here is about depth',
      '7 swarf only changes depths, and no need here is about depth',
    ]);
  });

  it('is not listed as assumed when no need is about depth', () => {
    const told = assumptionsOf(jobOf(JOB, SHOP)).map(({ what }) => what);
    expect(told.filter((what) => /bed along|middle|under|Z/.test(what))).toEqual([]);
    expect(told).toContain('movement of the wood along X');
  });

  it('is listed as assumed when one is', () => {
    const web = 'web: [dish, foot], at-least: 8';
    const job = jobOf(otherwise(JOB, 'concentric: [dish, foot], within: 0.5', web), SHOP);
    const told = assumptionsOf(job).map(({ what }) => what);
    for (const what of [
      'thickness changing along X',
      'how far the middle stands over the edges',
      'the face on which the middle stands up',
      'chips under the blank',
      'lean of the bed along Y',
      'unevenness of the bed',
    ])
      expect(told).toContain(what);
    expect(told).not.toContain('how far a cut pushes flat 6 aside');
  });

  it('leaves the push of a cut to needs about outlines', () => {
    const wall = 'wall: foot, at-least: 8';
    const job = jobOf(otherwise(JOB, 'concentric: [dish, foot], within: 0.5', wall), SHOP);
    const told = assumptionsOf(job).map(({ what }) => what);
    expect(told).toContain('how far a cut pushes flat 6 aside');
    expect(told).not.toContain('unevenness of the bed');
  });

  it.each([
    [
      'edges: sawn',
      'cup: {hump: ±0.1}',
      'job.yaml:6:15: hump ±0.1 goes below 0, and a hump cannot; write 0..0.1 or half-normal 0.1',
    ],
    [
      'edges: sawn',
      'swarf: 0.02 sd',
      'job.yaml:6:10: swarf 0.02 sd goes below 0, and swarf cannot; write 0..0.02 or half-normal 0.02',
    ],
    [
      'edges: sawn',
      'thickness-taper: {z: 0}',
      'job.yaml:6:21: the key z is not known; did you mean x?',
    ],
    [
      'edges: sawn',
      'thickness-taper: ±0.1',
      'job.yaml:6:20: thickness-taper 0.1 does not say over which length it leans; write 0.1 per 200, or 0.1 deg',
    ],
    [
      'turn: about-y',
      'turn: about-y\nparts: {count: 0}',
      'job.yaml:12:16: count 0 is not a number of parts; write 1 to 1000',
    ],
    [
      'turn: about-y',
      'turn: about-y\nparts: {order: all-at-once}',
      'job.yaml:12:16: order all-at-once is not known; write each-in-turn or all-fronts-first',
    ],
  ])('with %j as %j is refused', (part, instead, said) => {
    expect(faultsOf(otherwise(JOB, part, instead), SHOP)).toEqual([said]);
  });
});

describe('a batch', () => {
  it('is one part, each in turn, unless it is said', () => {
    expect(jobOf(JOB, SHOP).parts).toEqual({ count: 1, order: 'each-in-turn' });
    const six = otherwise(
      JOB,
      'turn: about-y',
      'turn: about-y\nparts: {count: 6, order: all-fronts-first}',
    );
    expect(jobOf(six, SHOP).parts).toEqual({ count: 6, order: 'all-fronts-first' });
  });
});

describe('a V cutter', () => {
  const veeOf = (line: string) => jobOf(JOB, shopWith(line)).shop.cutters[1]!.vee;

  it('has its whole angle and the flat at its tip, which is known or has a spread', () => {
    expect(veeOf(VEE)).toEqual({
      includedRad: Math.PI / 2,
      tipFlatMm: {
        distribution: { kind: 'exactly', value: 0.1 },
        recurs: 'shop',
        origin: { kind: 'assumed', because: 'common practice, no source' },
        text: '0.1',
      },
    });
    expect(veeOf(otherwise(VEE, 'diameter: 12', 'diameter: 12, tip-flat: 0.25'))).toMatchObject({
      tipFlatMm: { distribution: { kind: 'exactly', value: 0.25 }, origin: { kind: 'stated' } },
    });
    expect(veeOf(otherwise(VEE, 'diameter: 12', 'diameter: 12, tip-flat: 0..0.2'))).toMatchObject({
      tipFlatMm: { distribution: rectangular(0.2, 0), recurs: 'shop' },
    });
    expect(
      veeOf(otherwise(VEE, 'diameter: 12', 'diameter: 12, tip-flat: {spread: 0.1..0.2}')),
    ).toMatchObject({ tipFlatMm: { distribution: rectangular(0.2, 0.1) } });
    expect(jobOf(JOB, SHOP).shop.cutters[0]!.vee).toBeNull();
  });

  it.each([
    [
      'angle: 90 deg',
      'angle: 180 deg',
      'shop.yaml:8:38: angle 180 deg is not the angle of a vee; write more than 0 deg and less than 180 deg',
    ],
    [
      'kind: vee',
      'kind: ball',
      'shop.yaml:8:39: angle is for a vee cutter, and vee 90 is a ball one; take it out, or write kind: vee',
    ],
    [
      'diameter: 12',
      'diameter: 12, tip-flat: 12',
      'shop.yaml:8:70: tip-flat 12 mm is as wide as vee 90, which is 12 mm; write the width of the flat at its tip, such as 0.1',
    ],
    [
      'diameter: 12',
      'diameter: 12, tip-flat: -1',
      'shop.yaml:8:70: tip-flat -1 is negative; write 0 or more',
    ],
    [
      'diameter: 12',
      'diameter: 12, push-off: ±0.1',
      'shop.yaml:8:70: push-off ±0.1 goes below 0, and push-off cannot; write 0..0.1 or half-normal 0.1',
    ],
  ])('with %j as %j is refused', (part, instead, said) => {
    expect(faultsOf(JOB, shopWith(otherwise(VEE, part, instead)))).toEqual([said]);
  });
});
