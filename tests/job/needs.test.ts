import { describe, expect, it } from 'vitest';
import { faultsOf, jobOf } from './from-disk.ts';
import { otherwise, SHOP } from './sound.ts';

/** A body with something for every kind of need; 18 mm thick. */
const JOB = `flipwright: 1
name: Body
shop: shop.yaml
blank:
  size: [200 ±0.4, 120 ±0.4, 18 ±0.15]
  edges: sawn
front:
  - {name: dish, circle: 80, at: [100, 60], depth: 6, cutter: flat 6}
  - {name: rebate, rectangle: [160, 100], corner-radius: 3, at: [100, 60], depth: 3, cutter: flat 6}
  - {name: upper half, rectangle: [180, 110], corner-radius: 0, at: [100, 60], depth: 10, cut: profile-outside, cutter: flat 6}
  - {name: slot, slot: [40, 8], at: [160, 60], turned: 90 deg, depth: 3, cutter: flat 6}
back:
  - {name: pocket, rectangle: [48, 48], corner-radius: 3, at: [100, 60], depth: 9, cutter: flat 6}
  - {name: lower half, polygon: [[10, 5], [190, 5], [190, 115], [10, 115]], depth: 9, cut: profile-outside, cutter: flat 6}
  - {name: hole, circle: 10, at: [30, 60], depth: through, cutter: flat 6}
turn: about-y
stops:
  corner: {front-up: near-left, back-up: near-left}
  fence: lower-edge
  fence-touch: [20, 100]
  side-touch: 60
  height: 8
  made: set-by-hand
zero:
  front-up: {xy: stops, z: top, with: paper}
  back-up: {xy: kept, kept: held, z: top, with: paper}
needs:
  - {name: n, concentric: [dish, pocket], within: 0.5}
`;
const WAS = 'concentric: [dish, pocket], within: 0.5';
const needOf = (words: string) => jobOf(otherwise(JOB, WAS, words), SHOP).needs[0];
const said = (words: string) => faultsOf(otherwise(JOB, WAS, words), SHOP);

describe('a need', () => {
  it.each<[string, object]>([
    [
      'lip: [dish, pocket], at-least: 5, up-to: 16.1',
      { kind: 'lip', features: ['dish', 'pocket'], limits: { lowMm: 5, highMm: 16.1 } },
    ],
    [
      'web: [dish, pocket], at-least: 2.5',
      { kind: 'web', features: ['dish', 'pocket'], limits: { lowMm: 2.5, highMm: null } },
    ],
    [
      'wall: pocket, to: lower-edge, from: 35.5, up-to: 1.5 in',
      { kind: 'wall', feature: 'pocket', to: 'lower', limits: { lowMm: 35.5, highMm: 38.1 } },
    ],
    [
      'wall: hole, at-least: 24.5',
      { kind: 'wall', feature: 'hole', to: null, limits: { lowMm: 24.5, highMm: null } },
    ],
    [
      'depth: dish, from: 5.9, up-to: 6.1',
      { kind: 'depth', feature: 'dish', limits: { lowMm: 5.9, highMm: 6.1 } },
    ],
    ['meets: [upper half, lower half], within: 0.2', { kind: 'meets', withinMm: 0.2 }],
    [
      'parallel: [slot, rebate], within: 0.1 per 100',
      { kind: 'parallel', features: ['slot', 'rebate'], withinTangent: 0.001 },
    ],
    [
      'size: pocket, along: x, up-to: 48.1',
      { kind: 'size', feature: 'pocket', along: 'x', limits: { lowMm: null, highMm: 48.1 } },
    ],
  ])('%s is read', (words, need) => {
    expect(needOf(words)).toMatchObject({ name: 'n', ...need });
  });

  it.each([
    [
      'web: [dish, pocket]',
      '28:5: the need n has no limit; write at-least: 2.5, or up-to: 3.5, or from: 2.5 and up-to: 3.5',
    ],
    ['concentric: [dish, pocket]', '28:5: the need n has no limit; write within: 0.2'],
    ['parallel: [slot, rebate]', '28:5: the need n has no limit; write within: 0.1 per 100'],
    [
      'web: [dish, pocket], within: 0.2',
      '28:5: the need n has no limit; write at-least: 2.5, or up-to: 3.5, or from: 2.5 and up-to: 3.5',
      '28:44: within is not for web, which is judged by its own measure; write at-least: 2.5, or up-to: 3.5, or from: 2.5 and up-to: 3.5',
    ],
    [
      'concentric: [dish, pocket], within: 0.5, at-least: 1',
      '28:66: at-least is not for concentric, which is judged by how far it is off; write within: 0.2',
    ],
    [
      'parallel: [slot, rebate], within: 0.1',
      '28:49: within 0.1 is a length, and parallel is judged by a slope; write within: 0.1 per 100',
    ],
    [
      'concentric: [dish, pocket], within: 0.1 per 100',
      '28:51: within 0.1 per 100 is a slope, and concentric is judged by a length; write within: 0.2',
    ],
    [
      'depth: dish, from: 6, to: lower-edge',
      '28:41: to is for a wall, and n is about depth; take it out',
    ],
    [
      'depth: dish, from: 6, along: x',
      '28:44: along is for a size, and n is about depth; take it out',
    ],
    [
      'size: dish, from: 79',
      '28:5: the need n does not say along which axis; write along: x, or along: y',
    ],
    [
      'depth: dish, from: 6.1, up-to: 6',
      '28:46: up-to 6 is not above from 6.1; write the smaller of the two first',
    ],
    [
      'depth: dish, at-least: 5, from: 5, up-to: 7',
      '28:47: the need n has both at-least and from; write at-least alone, or from beside up-to',
    ],
    ['depth: dsh, at-least: 5', '28:22: no feature is called dsh; did you mean dish?'],
    ['web: [dish, dish], at-least: 5', '28:27: n compares dish with itself; name two features'],
    [
      'web: [dish], at-least: 5',
      '28:20: web has 1 entry and needs 2; separate them with commas, and write decimals with a point',
    ],
    [
      'depth: [dish], at-least: 5',
      '28:22: depth is a list and should be a text; write it in quotes: "[\"dish\"]"',
    ],
    [
      'wall: dish, to: front-edge, at-least: 5',
      '28:31: to front-edge is not known; write lower-edge, upper-edge, left-edge or right-edge',
    ],
  ])('%s is refused', (words, ...expected) => {
    expect(said(words)).toEqual(expected.map((one) => `job.yaml:${one}`));
  });
});

describe('a drawing that is out by itself', () => {
  // Nominals by hand: the web is 18 - 6 - 9; the pocket's corner is at 21 + 3 / sqrt 2 both ways, so
  // 21 sqrt 2 + 3 = 32.698 from the middle and 7.302 inside the dish of radius 40, its side 16;
  // its lower side is at 60 - 24; the hole's left side at 30 - 5.
  it.each([
    [
      'web: [dish, pocket], at-least: 3.5',
      '28:46: n: the drawing itself is out: nominal 3 mm, at least 3.5 mm; change the features, or the limit',
    ],
    [
      'web: [pocket, dish], up-to: 2.5',
      '28:43: n: the drawing itself is out: nominal 3 mm, at most 2.5 mm; change the features, or the limit',
    ],
    [
      'lip: [dish, pocket], from: 7.4, up-to: 17',
      '28:42: n: the drawing itself is out: nominal 7.302 mm, at least 7.4 mm; change the features, or the limit',
    ],
    [
      'lip: [pocket, dish], up-to: 15.9',
      '28:43: n: the drawing itself is out: nominal 16 mm, at most 15.9 mm; change the features, or the limit',
    ],
    [
      'wall: pocket, to: lower-edge, at-least: 36.5',
      '28:55: n: the drawing itself is out: nominal 36 mm, at least 36.5 mm; change the features, or the limit',
    ],
    [
      'wall: hole, at-least: 25.5',
      '28:37: n: the drawing itself is out: nominal 25 mm, at least 25.5 mm; change the features, or the limit',
    ],
    [
      'depth: dish, up-to: 5.9',
      '28:35: n: the drawing itself is out: nominal 6 mm, at most 5.9 mm; change the features, or the limit',
    ],
    [
      'size: slot, along: y, from: 40.1',
      '28:43: n: the drawing itself is out: nominal 40 mm, at least 40.1 mm; change the features, or the limit',
    ],
  ])('%s', (words, expected) => {
    expect(said(words)).toEqual([`job.yaml:${expected}`]);
  });

  it.each([
    'web: [dish, pocket], from: 3, up-to: 3.1',
    'lip: [dish, pocket], from: 7.302, up-to: 16',
    'wall: pocket, to: lower-edge, from: 36, up-to: 36.1',
    'size: slot, along: x, from: 8, up-to: 8.1',
    'depth: pocket, from: 9, up-to: 9.1',
  ])('%s is just good', (words) => {
    expect(said(words)).toEqual([]);
  });
});

describe('what cannot be judged', () => {
  // The slot's far end is a circle of radius 4 at 60 and 16 from the middle of the dish: hypot + 4 - 40.
  it.each([
    [
      'web: [dish, rebate], at-least: 1',
      '28:20: a web is left between a front and a back feature, and dish and rebate are both cut from the front; name one of each face',
    ],
    [
      'web: [dish, hole], at-least: 1',
      '28:20: hole is cut through, so no web is left; name two features with a depth',
    ],
    [
      'web: [slot, pocket], at-least: 1',
      '28:20: slot and pocket do not lie over each other, so they leave no web; name two features that overlap, or write wall or lip',
    ],
    [
      'web: [upper half, pocket], at-least: 1',
      '28:20: upper half and pocket do not lie over each other, so they leave no web; name two features that overlap, or write wall or lip',
    ],
    [
      'depth: hole, at-least: 1',
      '28:22: hole is cut through, so it has no floor whose depth could be off; name a feature with a depth',
    ],
    [
      'lip: [dish, slot], at-least: 1',
      '28:20: slot reaches 26.097 mm out of dish, so there is no lip all round; move one of them, or make it fit',
    ],
    [
      'meets: [upper half, pocket], within: 1',
      '28:22: pocket is cut: pocket, and what meets is two profiles; write cut: profile-outside or profile-inside for both',
    ],
    [
      'meets: [dish, rebate], within: 1',
      '28:22: a front and a back profile meet, and dish and rebate are both cut from the front; name one of each face',
    ],
    [
      'parallel: [slot, dish], within: 0.1 per 100',
      '28:32: dish is a circle, which has no direction; name a rectangle, slot, polygon or outline',
    ],
  ])('%s', (words, expected) => {
    expect(said(words)).toEqual([`job.yaml:${expected}`]);
  });

  it.each([
    [
      '[190, 115], [10, 115]',
      '[190, 115], [10, 114]',
      'the outlines of upper half and lower half are drawn 1 mm apart; give both the same outline and place',
    ],
    [
      'depth: 9, cut: profile-outside',
      'depth: 7, cut: profile-outside',
      'upper half and lower half leave 1 mm between them, so they do not meet; cut one of them deeper',
    ],
    [
      'depth: 9, cut: profile-outside',
      'depth: 9, cut: profile-inside',
      'upper half is cut: profile-outside and lower half is cut: profile-inside, so they leave different sides; cut both on the same side',
    ],
  ])('as profiles that meet: %s as %s', (part, instead, expected) => {
    const job = otherwise(
      otherwise(JOB, WAS, 'meets: [upper half, lower half], within: 1'),
      part,
      instead,
    );
    expect(faultsOf(job, SHOP)).toEqual([`job.yaml:28:22: ${expected}`]);
  });

  it('as parallel: what is drawn at an angle', () => {
    const job = otherwise(
      otherwise(JOB, WAS, 'parallel: [slot, rebate], within: 1 per 100'),
      'turned: 90 deg',
      'turned: 75 deg',
    );
    expect(faultsOf(job, SHOP)).toEqual([
      'job.yaml:28:25: slot and rebate are drawn 15 deg apart, so they cannot be parallel; give them the same turned',
    ]);
  });

  it('is not told of a feature that has a fault of its own', () => {
    const job = otherwise(
      otherwise(JOB, WAS, 'web: [dish, pocket], at-least: 5'),
      'depth: 9, cutter',
      'cutter',
    );
    expect(faultsOf(job, SHOP)).toEqual([
      'job.yaml:13:5: the feature pocket does not say how deep it is; write depth: 6, or through',
    ]);
  });
});
