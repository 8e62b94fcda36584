import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
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

  it('never follows a link, and takes no file for a folder', () => {
    withFolder((out) => {
      mkdirSync(join(out, 'elsewhere'));
      symlinkSync(join(out, 'elsewhere'), join(out, 'linked'));
      writeFileSync(join(out, 'file'), 'mine');
      const files = [{ name: 'a.txt', bytes: 'a' }];
      expect(() => writeTogether(join(out, 'linked'), files)).toThrow('is a link to another place');
      expect(() => writeTogether(join(out, 'file'), files)).toThrow('is a file, not a folder');
      expect(() => writeTogether(join(out, 'file', 'below'), files)).toThrow(
        'is a file, not a folder',
      );
      expect(readdirSync(join(out, 'elsewhere'))).toEqual([]);
      expect(readFileSync(join(out, 'file'), 'utf8')).toBe('mine');
    });
  });

  it('does not write through a link that stands where it stages a file', () => {
    withFolder((out) => {
      writeFileSync(join(out, 'mine.txt'), 'mine');
      symlinkSync(join(out, 'mine.txt'), join(out, '.a.txt.new'));
      writeTogether(out, [{ name: 'a.txt', bytes: 'a' }]);
      expect(readFileSync(join(out, 'mine.txt'), 'utf8')).toBe('mine');
      expect(readFileSync(join(out, 'a.txt'), 'utf8')).toBe('a');
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
