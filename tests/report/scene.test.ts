import { describe, expect, it } from 'vitest';
import { signedAreaMm2 } from '../../src/plane/measure.ts';
import { circleOutline, type Outline } from '../../src/plane/outline.ts';
import { distanceToOutline } from './away.ts';
import { blankBlock } from '../../src/report/scene/blank-block.ts';
import { blockOf, type Block } from '../../src/report/scene/block.ts';
import { coarser } from '../../src/report/scene/coarser.ts';
import { sceneData } from '../../src/report/scene/scene-data.ts';
import { scenesOf } from '../../src/report/scene/scene.ts';
import { stillPicture } from '../../src/report/scene/still.ts';
import { byKey, orbitWords, START, turned, zoomed } from '../../src/viewer/orbit.ts';
import { readScenes } from '../../src/viewer/scene.ts';
import { stoodOf } from './an-input.ts';

const areaMm2 = (loops: readonly Outline<'layout'>[]): number =>
  loops.reduce((sum, loop) => sum + signedAreaMm2(loop), 0);
const volumeMm3 = ({ layers }: Block): number =>
  layers.reduce((sum, { loops, lowMm, highMm }) => sum + areaMm2(loops) * (highMm - lowMm), 0);
const square = (half: number): Outline<'layout'> => [
  { x: -half, y: -half },
  { x: half, y: -half },
  { x: half, y: half },
  { x: -half, y: half },
];

describe('a block', () => {
  it('loses to a pocket from above and one from below just what they hold, and is seen alike from both', () => {
    const block = blockOf([square(20)], 0, 10, [
      { loops: [square(8)], lowMm: 6, highMm: 10 },
      { loops: [square(5)], lowMm: 0, highMm: 3 },
    ]);
    // By hand: 40 x 40 x 10 less 16 x 16 x 4 less 10 x 10 x 3.
    expect(volumeMm3(block)).toBeCloseTo(16_000 - 1024 - 300, 6);
    for (const looks of ['up', 'down'] as const) {
      const seen = block.faces.filter((face) => face.looks === looks);
      // From either side all of the square is seen: the rim, and the floor of the pocket on that side.
      expect(seen.reduce((sum, { loops }) => sum + areaMm2(loops), 0)).toBeCloseTo(1600, 6);
    }
  });

  it('is open where cuts from both sides meet', () => {
    const block = blockOf([square(20)], 0, 10, [
      { loops: [square(8)], lowMm: 4, highMm: 10 },
      { loops: [square(5)], lowMm: 0, highMm: 5 },
    ]);
    expect(volumeMm3(block)).toBeCloseTo(16_000 - 256 * 6 - 100 * 4, 6);
  });

  it('of the wall clock holds the wood that its cuts leave, and the same turned over', () => {
    const { job, placings } = stoodOf('wall-clock');
    const [first, second] = [blankBlock(job, placings.frontUp), blankBlock(job, placings.backUp)];
    const round = (d: number): number => (Math.PI * d * d) / 4;
    // By hand from jigs/wall-clock.yaml: the recess 120 across and 6 deep, the shaft hole 10 across and 12 deep.
    const front = job.blank.widthMm * 180 * 24 - round(120) * 6 - round(10) * 6;
    // Chords 0.02 and 0.06 inside a circle of 60 take 0.2 % of it at most.
    expect(volumeMm3(first) / front).toBeCloseTo(1, 3);
    // The pocket is 58 square with corners of 3.2, 15 deep; the hole reaches 3 into it.
    const pocket = (58 * 58 - (4 - Math.PI) * 3.2 ** 2) * 15 - round(10) * 3;
    expect(volumeMm3(second) / (front - pocket)).toBeCloseTo(1, 3);
  });
});

describe('coarser', () => {
  it('keeps within what it may stray, with far fewer corners', () => {
    const round = circleOutline<'layout'>(60, 0.005);
    const thin = coarser(round, 0.06);
    expect(thin.length).toBeLessThan(round.length / 2);
    for (const p of round) expect(distanceToOutline(p, thin)).toBeLessThanOrEqual(0.06);
    expect(coarser(square(3), 1)).toEqual(square(3));
  });
});

describe('the scenes', () => {
  const input = stoodOf('wall-clock');
  const scenes = scenesOf(input);
  it('are read by the viewer as they were written, and end no element', () => {
    const text = sceneData(scenes, ['</script><b>', 'second']);
    expect(text).not.toContain('<');
    const [first] = readScenes(text);
    expect(first!.title).toBe('</script><b>');
    expect(first!.things.map(({ kind }) => kind)).toEqual(['bed', 'blank', 'locates']);
    const walls = first!.things.flatMap((thing) => thing.walls);
    expect(walls.length).toBeGreaterThan(5);
    expect(walls.every(({ loop, low, high }) => low < high && loop.every(Number.isInteger))).toBe(
      true,
    );
  });
  it('are drawn without a script, all within the picture', () => {
    const { html } = stillPicture(scenes[0], 'as it lies');
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(html)!.map(Number);
    const places = [...html.matchAll(/[ML](-?\d+) (-?\d+)/g)].map(([, x, y]) => [
      Number(x) / 12,
      Number(y) / 12,
    ]);
    expect(places.length).toBeGreaterThan(200);
    expect(places.every(([x, y]) => x! >= 0 && x! <= width! && y! >= 0 && y! <= height!)).toBe(
      true,
    );
  });
});

describe('the view', () => {
  it('turns all the way round, never goes below the bed nor over the top', () => {
    let orbit = START;
    for (let k = 0; k < 36; k++) orbit = byKey(orbit, 'ArrowRight')!;
    expect(orbit.turnDeg).toBeCloseTo(START.turnDeg, 9);
    expect(turned(START, 0, 400).aboveDeg).toBe(90);
    expect(turned(START, 0, -400).aboveDeg).toBe(5);
    expect(zoomed(START, 1e9).zoom).toBe(12);
    expect(byKey(START, 'x')).toBeNull();
    expect(byKey(turned(START, 50, 20), '0')).toEqual(START);
  });
  it('is told in words', () => {
    expect(orbitWords(START)).toBe('from near left, 38 degrees above the bed');
    expect(orbitWords({ turnDeg: 90, aboveDeg: 20, zoom: 1 })).toBe(
      'from right, 20 degrees above the bed',
    );
    expect(orbitWords({ turnDeg: 180, aboveDeg: 90, zoom: 1 })).toBe('from straight above');
  });
});
