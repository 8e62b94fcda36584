import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultsOf, jobOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const HOLE = otherwise(
  JOB,
  'front:\n',
  'front:\n  - {name: bore, circle: 8, at: [20, 20], depth: through, cutter: flat 6}\n',
);
const zeroAt = (words: string, job = HOLE) =>
  otherwise(job, 'xy: kept, kept: held, z: top, with: paper', words);

describe('zero at a hole', () => {
  it('is its centre, touched with the cutter at rest unless a tool is named', () => {
    expect(jobOf(zeroAt('xy: hole, hole: bore, z: top'), SHOP).zero.backUp.xy).toMatchObject({
      kind: 'hole',
      feature: 'bore',
      tool: { name: 'the cutter at rest', spread: { recurs: 'placing' } },
    });
    expect(
      jobOf(zeroAt('xy: hole, hole: bore, z: top, with: paper'), SHOP).zero.backUp.xy,
    ).toMatchObject({ tool: { name: 'paper' } });
  });

  it.each([
    [
      'xy: hole, z: top',
      '22:12: xy: hole does not say which; write hole: shaft hole, the name of a round hole that is cut through',
    ],
    [
      'xy: stops, hole: bore, z: top',
      '22:30: hole: bore is for a zero at a hole, and xy is stops; take it out, or write xy: hole',
    ],
    [
      'xy: hole, hole: bore, xy-touched: [1, 1], z: top',
      '22:47: xy-touched says where a zero is touched, and the centre of a hole is found all round it; take it out',
    ],
    ['xy: hole, hole: boar, z: top', '22:29: no feature is called boar; did you mean bore?'],
    [
      'xy: hole, hole: dish, z: top',
      '22:29: dish does not go through, so it faces the bed in the second placing; name a hole with depth: through',
    ],
    [
      'xy: hole, hole: foot, z: top',
      '22:29: foot is cut from the back, so it is not there yet; name a hole that is cut from the front',
    ],
  ])('with {%s} is refused', (words, expected) => {
    expect(faultsOf(zeroAt(words), SHOP)).toEqual([`job.yaml:${expected}`]);
  });

  it('is round', () => {
    const square = otherwise(HOLE, 'circle: 8', 'rectangle: [8, 8]');
    expect(faultsOf(zeroAt('xy: hole, hole: bore, z: top', square), SHOP)).toEqual([
      'job.yaml:22:29: bore is a rectangle, and the centre of a round hole is found; name a circle',
    ]);
  });
});

const SMALL = otherwise(
  otherwise(
    otherwise(HOLE, 'circle: 80, at: [100, 60]', 'circle: 40, at: [30, 30]'),
    'circle: 60, at: [100, 60]',
    'circle: 30, at: [30, 30]',
  ),
  'at: [20, 20]',
  'at: [8, 8]',
);
const repeated = (words: string, job = SMALL) =>
  otherwise(job, 'turn: about-y', `turn: about-y\nrepeat: {${words}}`);

describe('several parts in one blank', () => {
  it('have every feature and need again, each with its place in its name', () => {
    const job = jobOf(repeated('count: [3, 2], pitch: [60, 55]'), SHOP);
    expect(job.features).toHaveLength(18);
    expect(job.features.find(({ name }) => name === 'dish (3,2)')?.at).toEqual({ x: 150, y: 85 });
    expect(job.features.find(({ name }) => name === 'dish (1,1)')?.at).toEqual({ x: 30, y: 30 });
    expect(job.needs.map(({ name }) => name)).toEqual(
      ['(1,1)', '(2,1)', '(3,1)', '(1,2)', '(2,2)', '(3,2)'].map(
        (at) => `foot under the dish ${at}`,
      ),
    );
    expect(job.needs[1]).toMatchObject({ features: ['dish (2,1)', 'foot (2,1)'] });
  });

  it('have a point to be judged at each', () => {
    const points = otherwise(SMALL, 'concentric: [dish, foot]', 'misalignment: [10, 10]');
    const job = jobOf(repeated('count: [2, 1], pitch: [60, 55]', points), SHOP);
    expect(job.needs).toMatchObject([{ at: { x: 10, y: 10 } }, { at: { x: 70, y: 10 } }]);
  });

  it('have their zero at the hole of the first, unless another is named', () => {
    const of = (hole: string) =>
      jobOf(
        repeated(
          'count: [2, 1], pitch: [60, 55]',
          zeroAt(`xy: hole, hole: "${hole}", z: top`, SMALL),
        ),
        SHOP,
      ).zero.backUp.xy;
    expect(of('bore')).toMatchObject({ feature: 'bore (1,1)' });
    expect(of('bore (2,1)')).toMatchObject({ feature: 'bore (2,1)' });
  });

  it('is one part as it is written when the count is one each way', () => {
    const places = (job: string) => jobOf(job, SHOP).features.map(({ name, at }) => ({ name, at }));
    expect(places(repeated('count: [1, 1], pitch: [60, 55]'))).toEqual(places(SMALL));
  });

  it('names no two features alike, and refers to those that are there', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 2 }),
        (columns, rows) => {
          const job = jobOf(repeated(`count: [${columns}, ${rows}], pitch: [60, 55]`), SHOP);
          const names = new Set(job.features.map(({ name }) => name));
          expect(names.size).toBe(3 * columns * rows);
          for (const need of job.needs)
            if (need.kind === 'concentric')
              for (const name of need.features) expect(names.has(name)).toBe(true);
        },
      ),
      { seed: 1, numRuns: 6 },
    );
  });

  it.each([
    [
      'count: [0, 2], pitch: [60, 55]',
      '13:17: count 0 by 2 is not a number of copies; write 1 or more each way, and at most 100 in all',
    ],
    [
      'count: [11, 10], pitch: [60, 55]',
      '13:17: count 11 by 10 is not a number of copies; write 1 or more each way, and at most 100 in all',
    ],
    [
      'count: [2, 2], pitch: [35, 55]',
      '13:33: dish takes 40 mm along X, and the pitch is 35 mm, so its copies run into each other; write at least 40',
    ],
    [
      'count: [4, 1], pitch: [60, 55]',
      '13:18: the last copy of dish reaches x = 230 mm, and the blank spans 0 to 200 mm; write fewer, or a smaller pitch',
    ],
    ['count: [2, 2]', '13:9: repeat: pitch is missing; write pitch: [90, 70]'],
  ])('with {%s} is refused', (words, expected) => {
    expect(faultsOf(repeated(words), SHOP)).toEqual([`job.yaml:${expected}`]);
  });

  it('have no edge of the blank as a wall of their own', () => {
    const wall = otherwise(
      SMALL,
      'concentric: [dish, foot], within: 0.5',
      'wall: dish, at-least: 5',
    );
    expect(faultsOf(repeated('count: [2, 1], pitch: [60, 55]', wall), SHOP)).toEqual([
      "job.yaml:25:39: foot under the dish is about an edge of the blank, which is not an edge of each copy; write lip: with the part's own outline instead",
    ]);
  });
});
