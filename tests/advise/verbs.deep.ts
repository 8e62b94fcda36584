// The built program: every way of the wall clock in a table of 80 columns, each row the same as predict says of its written file.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const PROGRAM = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'main.js');
const CLOCK = 'jigs/wall-clock-plain.yaml';
const run = (...words: readonly string[]) =>
  spawnSync('node', [PROGRAM, ...words], { encoding: 'utf8', timeout: 300_000 });

interface Row {
  readonly words: string;
  readonly asWritten: boolean;
  readonly allGood: { readonly value: number };
  readonly needs: readonly { readonly name: string; readonly value: number }[];
}

describe('compare', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ways-'));
  const ways = join(folder, 'ways');
  const trials = ['--trials', '2000', '--seed', '5'];
  let rows: readonly Row[] = [];

  beforeAll(() => {
    const told = run('compare', CLOCK, '--json', '--write', ways, ...trials);
    expect(told.stderr).toBe('');
    const found = JSON.parse(told.stdout) as { ways: readonly Row[]; tried: number };
    rows = found.ways;
    expect(found.tried).toBeGreaterThan(100);
  }, 300_000);

  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('shows stops, dowels, a fence with a dowel and a nest, both turns, and the job itself', () => {
    const words = rows.map((row) => row.words).join('\n');
    for (const wanted of [
      'opposite corner',
      'the same corner',
      'two dowels',
      'four dowels',
      'one dowel',
      'nest',
      'about X',
      'about Y',
      'milled in place',
      'set by hand',
      'on bed pins',
      'middle',
      'touched again',
    ])
      expect(words).toContain(wanted);
    expect(rows.filter(({ asWritten }) => asWritten)).toHaveLength(1);
  });

  it('gives in each row what predict says of the file it writes', () => {
    const onFence = rows.flatMap(({ words }, k) => (words.includes('on the fence') ? [k] : []));
    for (const k of [onFence[0]!, onFence.at(-1)!]) {
      const file = join(ways, `way-${String(k + 1).padStart(2, '0')}.yaml`);
      const told = run('predict', file, '--json', '--digits', '4', ...trials);
      const found = JSON.parse(told.stdout) as {
        batch: { onePart: number };
        needs: readonly { name: string; chance: number }[];
      };
      expect(found.batch.onePart).toBe(rows[k]!.allGood.value);
      expect(found.needs.map(({ chance }) => chance)).toEqual(
        rows[k]!.needs.map(({ value }) => value),
      );
    }
  }, 300_000);

  it('is a table of 80 columns with a picture, and never written over what is there', () => {
    const before = readFileSync(join(ways, 'way-01.yaml'), 'utf8');
    const told = run('compare', CLOCK, '--write', ways, '--out', join(folder, 'out'), ...trials);
    expect(told.status).toBe(2);
    expect(told.stderr).toContain('way-01.yaml: is already there; name another folder');
    expect(readFileSync(join(ways, 'way-01.yaml'), 'utf8')).toBe(before);
    const lines = told.stdout.split('\n').filter((line) => !line.startsWith('wrote'));
    expect(lines.length).toBeGreaterThan(40);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    expect(existsSync(join(folder, 'out', 'wall-clock-plain', 'compare.html'))).toBe(true);
  }, 300_000);
});

describe('improve', () => {
  it('leaves a good job alone', () => {
    const told = run('improve', 'jigs/wall-clock.yaml');
    expect(told.status).toBe(0);
    expect(told.stdout).toContain('Leave it alone.');
    expect(told.stdout).not.toContain('Write ');
  });

  it('says what to do first, in lines of 80 columns', () => {
    const told = run('improve', CLOCK, '--trials', '2000');
    expect(told.status).toBe(0);
    expect(told.stdout).toContain('Set zero at the middle of the blank both times');
    expect(told.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  }, 300_000);

  it('refuses a job with faults, with its line', () => {
    const told = run('improve', 'jigs/shop.yaml');
    expect(told.status).toBe(2);
    expect(told.stderr).toContain('jigs/shop.yaml');
  });
});
