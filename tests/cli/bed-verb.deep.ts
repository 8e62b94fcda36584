import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flipwright, JIGS, withFolder } from './run.ts';

const inFolder = (use: (folder: string) => void): void => {
  withFolder((folder) => {
    for (const name of ['shop.yaml', 'bed-heights.csv', 'enclosure-lid.yaml'])
      copyFileSync(join(JIGS, name), join(folder, name));
    use(folder);
  });
};

/** Each step is a run of the built program, which takes its time on a busy machine. */
describe('bed', { timeout: 90_000 }, () => {
  it('tells of the bed in 80 columns, writes its map, and what it measured for predictions to use', () => {
    inFolder((folder) => {
      const shop = readFileSync(join(folder, 'shop.yaml'), 'utf8');
      const { code, out, err } = flipwright(
        ['bed', 'shop.yaml', '--save', '--out', 'made'],
        folder,
      );
      expect(err).toBe('');
      expect(code).toBe(0);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
      expect(out).toMatch(/rises to the right +0\.070 mm per 200 mm/);
      expect(out).toMatch(/What to do: shim it/);
      expect(readFileSync(join(folder, 'made', 'bed.svg'), 'utf8')).toMatch(/^<svg [^]*<\/svg>\n$/);
      const program = (name: string): string => readFileSync(join(folder, 'made', name), 'utf8');
      expect(program('skim-the-spoilboard.nc')).toMatch(/\nM0\n[^]*\nM3 S/);
      expect(program('skim-the-spoilboard-air-cut.nc')).not.toMatch(/\nM3/);
      // Nothing that a person wrote is edited.
      expect(readFileSync(join(folder, 'shop.yaml'), 'utf8')).toBe(shop);
      const measured = readFileSync(join(folder, 'shop.measured.yaml'), 'utf8');
      expect(measured).toMatch(/of: bed\.lean-x\n {4}value: 0\.07\d* per 200/);
      expect(measured).toContain('was: "±0.2 per 200"');
      expect(measured).toMatch(/bed-heights:[^]*points: # x, y, height\n {4}- \[40, 30, 0\]/);
      const predicted = flipwright(
        ['predict', 'enclosure-lid.yaml', '--json', '--trials', '2000'],
        folder,
      );
      expect(predicted.out).toMatch(/the height of the bed at 140, 120/);
    });
  });

  it('tells a program the same figures, and of a job what the bed does to its needs', () => {
    inFolder((folder) => {
      const { out, code } = flipwright(['bed', 'enclosure-lid.yaml', '--json'], folder);
      expect(code).toBe(0);
      const found = JSON.parse(out) as Readonly<Record<string, unknown>>;
      expect(found).toMatchObject({ json: 1, readings: 12, shims: { kind: 'plan' } });
      expect(found['acrossPart']).toHaveLength(2);
      expect(existsSync(join(folder, 'shop.measured.yaml'))).toBe(false);
    });
  });

  it('refuses void, wild and missing readings with their line', () => {
    inFolder((folder) => {
      const shop = join(folder, 'shop.yaml');
      const text = readFileSync(shop, 'utf8');
      const after = (from: string, to: string): string => {
        writeFileSync(shop, text.replace(from, to));
        const run = flipwright(['bed', 'shop.yaml'], folder);
        expect(run.code).toBe(2);
        expect(run.out).toBe('');
        return run.err;
      };
      expect(after('resurfaced: 2026-11-18', 'resurfaced: 2026-11-21')).toMatch(
        /shop\.yaml:\d+:\d+: the heights were measured on 2026-11-20, before the board was re-surfaced on 2026-11-21; read them again/,
      );
      expect(after('file: bed-heights.csv', 'file: no.csv')).toMatch(
        /the file no\.csv is not there/,
      );
      const csv = join(folder, 'bed-heights.csv');
      writeFileSync(csv, readFileSync(csv, 'utf8').replace('0.07', '0.47'));
      expect(after('', '')).toMatch(/bed-heights\.csv:4:1: the reading at 360, 200 stands 0\.4/);
    });
  });
});
