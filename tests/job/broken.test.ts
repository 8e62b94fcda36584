import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { faultText } from '../../src/job/read.ts';
import { BROKEN } from './broken-faults.ts';
import { readFromDisk } from './from-disk.ts';

const FOLDER = 'tests/job/broken';
/** Shop files, which jobs beside them name. */
const SHOPS = ['shop.yaml', 'broken-shop-file.yaml'];
/** Files that look broken and must be read. */
const SOUND = ['byte-order-mark', 'sound', 'windows-line-ends'];

describe('a broken job file', () => {
  const files = readdirSync(FOLDER).filter((file) => !SHOPS.includes(file));

  it('is listed with what must be said of it, and only sound ones say nothing', () => {
    expect(Object.keys(BROKEN).map((name) => `${name}.yaml`)).toEqual(files.sort());
    const silent = Object.keys(BROKEN).filter((name) => BROKEN[name]!.length === 0);
    expect(silent).toEqual(SOUND);
    expect(files.length).toBeGreaterThan(60);
  });

  it.each(Object.entries(BROKEN))('%s is told line by line', (name, expected) => {
    const read = readFromDisk(`${FOLDER}/${name}.yaml`, `${name}.yaml`);
    expect(read.ok ? [] : read.faults.map(faultText)).toEqual(expected);
  });

  it('reads the same with a byte-order mark or line ends of Windows', () => {
    const [sound, ...others] = ['sound', 'byte-order-mark', 'windows-line-ends'].map((name) => {
      const read = readFromDisk(`${FOLDER}/${name}.yaml`, 'job.yaml');
      return read.ok ? read.value.job : null;
    });
    expect(sound).not.toBeNull();
    expect(others).toEqual([sound, sound]);
  });
});
