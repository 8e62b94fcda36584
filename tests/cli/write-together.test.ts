import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeTogether } from '../../src/cli/write-together.ts';
import { withFolder } from './run.ts';

describe('writing together', () => {
  it('says what it replaced and what else is there', () => {
    withFolder((folder) => {
      writeFileSync(join(folder, 'a.txt'), 'old');
      writeFileSync(join(folder, 'mine.txt'), 'mine');
      const written = writeTogether(folder, [
        { name: 'a.txt', bytes: 'new' },
        { name: 'b.txt', bytes: 'b' },
      ]);
      expect(written.replaced).toEqual(['a.txt']);
      expect(written.others).toEqual(['mine.txt']);
      expect(readdirSync(folder).sort()).toEqual(['a.txt', 'b.txt', 'mine.txt']);
      expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('new');
    });
  });

  it('puts everything back when one file cannot take its place', () => {
    withFolder((folder) => {
      writeFileSync(join(folder, 'a.txt'), 'old');
      // A folder under the backup's name that is not empty keeps b.txt from being moved aside.
      writeFileSync(join(folder, 'b.txt'), 'old b');
      mkdirSync(join(folder, '.b.txt.old'));
      writeFileSync(join(folder, '.b.txt.old', 'full'), '');
      expect(() =>
        writeTogether(folder, [
          { name: 'a.txt', bytes: 'new' },
          { name: 'b.txt', bytes: 'new b' },
        ]),
      ).toThrow('nothing was written');
      expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('old');
      expect(readFileSync(join(folder, 'b.txt'), 'utf8')).toBe('old b');
      expect(readdirSync(folder).sort()).toEqual(['.b.txt.old', 'a.txt', 'b.txt']);
    });
  });

  it('leaves no folder behind that it made itself', () => {
    withFolder((folder) => {
      expect(() => writeTogether(join(folder, 'new'), [{ name: '../out.txt', bytes: '' }])).toThrow(
        'file name',
      );
      expect(readdirSync(folder)).toEqual([]);
    });
  });
});
