import { describe, expect, it } from 'vitest';
import { faultsOf, readTexts } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

/** The dish cut right through at [40, 60], and Z touched on top of the back at a place of the bed. */
const touching = (place: string): string =>
  otherwise(
    otherwise(
      otherwise(
        JOB,
        'circle: 80, at: [100, 60], depth: 6',
        'circle: 30, at: [40, 60], depth: through',
      ),
      'concentric: [dish, foot], within: 0.5',
      'misalignment: [100, 60], within: 0.5',
    ),
    'kept: held, z: top',
    `kept: held, z: top, z-touched: ${place}`,
  );

const LONG = otherwise(SHOP, 'flute: 22', 'flute: 30');

describe('touching Z on top', () => {
  it('is refused where the first placing has cut right through, as the blank then lies', () => {
    // Turned about Y the hole at x = 40 of 200 lies at 160.
    expect(faultsOf(touching('[160, 60]'), LONG)).toEqual([
      'job.yaml:21:54: dish is cut right through before, so at [160, 60] there is no top to touch; name a place that is still there',
    ]);
  });

  it('is fine beside the hole, and where the hole would be without the turn', () => {
    expect(faultsOf(touching('[144, 60]'), LONG)).toEqual([]);
    expect(faultsOf(touching('[40, 60]'), LONG)).toEqual([]);
  });
});

const notesOf = (job: string): readonly string[] => {
  const read = readTexts(job, SHOP);
  return read.ok ? read.value.notes.map(({ message }) => message) : ['faulty'];
};

describe('notes on what fits', () => {
  it('a blank longer than the two side stops stand apart does not go in', () => {
    const opposite = otherwise(JOB, 'back-up: near-left', 'back-up: near-right');
    expect(notesOf(opposite)).toEqual([
      'the two side stops stand 200 mm apart, and a blank up to 200.4 mm does not go in between; write the longest as the size: 200.4 -0.8..0',
    ]);
    expect(notesOf(otherwise(opposite, '200 ±0.4', '200.4 -0.8..0'))).toEqual([]);
    expect(notesOf(JOB)).toEqual([]);
  });

  it('cuts that meet from both faces are told, unless a need names both', () => {
    const deep = otherwise(JOB, 'depth: 6', 'depth: 15');
    expect(notesOf(deep)).toEqual([]);
    expect(notesOf(otherwise(deep, 'concentric: [dish, foot]', 'misalignment: [100, 60]'))).toEqual(
      ['foot meets dish from the other face: nothing is left between them'],
    );
  });
});
