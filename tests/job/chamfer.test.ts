import { describe, expect, it } from 'vitest';
import { faultsOf, jobOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const shopWith = (vee: string) =>
  otherwise(SHOP, 'touch-off:', `  - {name: vee, kind: vee, ${vee}}\ntouch-off:`);
const VEE = shopWith('angle: 90 deg, diameter: 12');
const chamfered = (words: string) =>
  otherwise(JOB, 'circle: 80, at: [100, 60], depth: 6, cutter: flat 6', words);
const featureOf = (words: string, shop = VEE) => jobOf(chamfered(words), shop).features[0];

describe('a chamfer', () => {
  it('of a 90 degree cutter is as deep as it is wide, of 60 degrees deeper', () => {
    const words = 'circle: 80, at: [100, 60], cut: chamfer, chamfer: 3, cutter: vee';
    expect(featureOf(words)).toMatchObject({ cut: 'chamfer', through: false });
    expect(featureOf(words)?.depthMm).toBeCloseTo(3, 12);
    // 3 / tan 30 deg = 3 sqrt 3.
    const narrow = featureOf(words, shopWith('angle: 60 deg, diameter: 12'));
    expect(narrow?.depthMm).toBeCloseTo(3 * Math.sqrt(3), 12);
  });

  it('is one when only its width is written, or its depth', () => {
    expect(featureOf('circle: 80, at: [100, 60], chamfer: 3, cutter: vee')?.cut).toBe('chamfer');
    expect(
      featureOf('circle: 80, at: [100, 60], cut: chamfer, depth: 2, cutter: vee'),
    ).toMatchObject({ depthMm: 2 });
  });

  it('leaves corners at the face as round as it is wide', () => {
    expect(
      featureOf('rectangle: [80, 40], at: [100, 60], chamfer: 3, cutter: vee')?.shape,
    ).toMatchObject({
      cornerRadiusMm: 3,
    });
  });

  it('of an outside edge keeps its corners sharp, and minds no narrow place', () => {
    const outside =
      'rectangle: [80, 4], at: [100, 60], cut: chamfer-outside, chamfer: 3, cutter: vee';
    expect(faultsOf(chamfered(outside), VEE)).toEqual([]);
    expect(featureOf(outside)).toMatchObject({
      cut: 'chamfer-outside',
      shape: { cornerRadiusMm: 0 },
    });
    expect(featureOf(outside)?.depthMm).toBeCloseTo(3, 12);
  });

  it('within a polygon that is narrower everywhere is refused', () => {
    const thin =
      'polygon: [[-20, -2], [20, -2], [20, 3], [-20, 3]], at: [100, 60], chamfer: 3, cutter: vee';
    expect(faultsOf(chamfered(thin), VEE)).toEqual([
      'job.yaml:8:27: vee cuts 6 mm wide, and dish is narrower everywhere; write a narrower chamfer, or make the outline wider',
    ]);
  });

  it('may be as wide as its cutter reaches', () => {
    expect(faultsOf(chamfered('circle: 12, at: [100, 60], chamfer: 6, cutter: vee'), VEE)).toEqual(
      [],
    );
  });

  it.each([
    [
      'circle: 80, at: [100, 60], cut: pocket, chamfer: 3, cutter: flat 6',
      '8:67: chamfer says how wide a chamfer is, and dish is cut: pocket; take it out, or write cut: chamfer',
    ],
    [
      'circle: 80, at: [100, 60], chamfer: 3, depth: 3, cutter: vee',
      '8:64: dish has both a depth and a width of chamfer; write one; the other follows from the angle of the cutter',
    ],
    [
      'circle: 80, at: [100, 60], cut: chamfer, cutter: vee',
      '8:5: the feature dish does not say how deep it is; write chamfer: 3, its width, or depth: 3',
    ],
    [
      'circle: 80, at: [100, 60], cut: chamfer, depth: through, cutter: vee',
      '8:66: dish is a chamfer, which has a depth or a width; write chamfer: 3, its width, or depth: 3',
    ],
    [
      'circle: 80, at: [100, 60], chamfer: 3, cutter: flat 6',
      '8:65: flat 6 is a flat cutter, and a chamfer is cut with a vee; name a vee cutter',
    ],
    [
      'circle: 80, at: [100, 60], chamfer: 7, cutter: vee',
      '8:54: dish is 7 mm wide, and vee reaches 6 mm from its tip; write at most 6, or name a larger cutter',
    ],
    [
      'circle: 80, at: [100, 60], cut: chamfer, depth: 7, cutter: vee',
      '8:66: dish is 7 mm wide, and vee reaches 6 mm from its tip; write at most 6, or name a larger cutter',
    ],
    [
      'circle: 8, at: [100, 60], chamfer: 5, cutter: vee',
      '8:53: dish is 5 mm wide from both sides, and its outline is 8 mm at its narrowest; write less; the outline is where the chamfer meets the face',
    ],
    [
      'rectangle: [80, 40], corner-radius: 2, at: [100, 60], chamfer: 3, cutter: vee',
      '8:54: corner-radius 2 mm is sharper than a chamfer 3 mm wide leaves at the face; write at least 3',
    ],
  ])('with %s is refused', (words, expected) => {
    expect(faultsOf(chamfered(words), VEE)).toEqual([`job.yaml:${expected}`]);
  });

  it('needs to know the angle of its cutter, which a shop may leave out otherwise', () => {
    const bare = shopWith('diameter: 12');
    expect(faultsOf(JOB, bare)).toEqual([]);
    expect(faultsOf(chamfered('circle: 80, at: [100, 60], chamfer: 3, cutter: vee'), bare)).toEqual(
      [
        'job.yaml:8:65: the vee cutter vee does not say its angle; write angle: 90 deg, the whole angle between its edges, with it in the shop file',
      ],
    );
  });
});
