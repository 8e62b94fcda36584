import { describe, expect, it } from 'vitest';
import { assumptionsOf } from '../../src/job/assumptions.ts';
import { explained } from '../../src/job/schema/explained.ts';
import { jobRows, shopRows } from '../../src/job/schema/key-rows.ts';
import { keysWithDefaults, takenWhenLeftOut } from '../../src/job/schema/left-out.ts';
import { sketchedKeys, sketchOf } from '../../src/job/schema/sketches.ts';
import { readFromDisk } from './from-disk.ts';

const rows = [...jobRows(), ...shopRows()];
const paths = new Set(rows.map(({ path }) => path));
const found = (key: string): readonly string[] => {
  const told = explained(key);
  return told.kind === 'found' ? told.rows.map(({ path }) => path) : [];
};

describe('every key', () => {
  it('says what it means, and no two say it twice', () => {
    expect(rows.filter(({ means }) => means === '').map(({ path }) => path)).toEqual([]);
  });

  it('that takes a length says its unit', () => {
    for (const key of ['blank.size', 'on-bed', 'front[ ].depth', 'machine.lost-motion'])
      expect(rows.find(({ path }) => path === key)?.unit).toBe('mm');
    expect(rows.find(({ path }) => path === 'hold.cutting-force')?.unit).toBe('N');
    expect(rows.find(({ path }) => path === 'turn')?.unit).toBeNull();
  });
});

describe('sketches and what is taken when left out', () => {
  it('belong to keys that there are, and pictures fit the terminal', () => {
    expect(sketchedKeys().filter((key) => !paths.has(key))).toEqual([]);
    expect(keysWithDefaults().filter((key) => !paths.has(key))).toEqual([]);
    for (const key of sketchedKeys())
      for (const line of sketchOf(key)!.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  // The reader's own assumptions are the other witness: whatever it takes must be told by some key.
  it('tell every figure that the reader of a job takes by itself', () => {
    const told = keysWithDefaults().map((key) => takenWhenLeftOut(key)!);
    let count = 0;
    for (const name of ['wall-clock', 'chime-box', 'clock-feet', 'tray', 'enclosure-lid']) {
      const read = readFromDisk(`jigs/${name}.yaml`);
      if (!read.ok) throw new Error(`${name} has faults`);
      for (const { what, text } of assumptionsOf(read.value.job)) {
        // Chosen or worked out for each job: no figure of a table.
        if (/stands on the bed|movement of the wood/.test(what)) continue;
        count += 1;
        expect(
          told.filter((words) => words.includes(text)),
          `${what}: ${text}`,
        ).not.toEqual([]);
      }
    }
    expect(count).toBeGreaterThan(20);
  });
});

describe('a key is found', () => {
  it('by its whole path, as written in a message, or by its end', () => {
    expect(found('blank.bevel')).toEqual(['blank.bevel']);
    expect(found('front[2].at')).toEqual(['front[ ].at']);
    expect(found('back.at:')).toEqual(['back[ ].at']);
    expect(found('Bevel')).toEqual(['blank.bevel']);
    expect(found('touch-off.paper.spread')).toEqual([]);
    expect(found('touch-off.spread')).toEqual(['touch-off.< >.spread']);
    expect(found('seat-gap')).toEqual(['stops.seat-gap', 'nest.seat-gap']);
  });

  it('by what was probably meant, when nothing fits', () => {
    expect(explained('bevl')).toEqual({ kind: 'unknown', meant: 'bevel' });
    expect(explained('xyzzy-plugh')).toEqual({ kind: 'unknown', meant: null });
    expect(explained('')).toMatchObject({ kind: 'unknown' });
  });
});
