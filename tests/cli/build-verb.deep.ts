// The built program, run with plain node: named imports that only work under a bundler die here.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readRs274 } from '../export/read-rs274.ts';
import { flipwright, JIGS, withFolder } from './run.ts';

const CLOCK = join(JIGS, 'wall-clock.yaml');
const PLAIN = join(JIGS, 'wall-clock-plain.yaml');
const TRIALS = 2000;
const FAST = ['--trials', String(TRIALS)];

function expectProgramsAndPage(folder: string, names: readonly string[]): void {
  const programs = names.filter((name) => name.endsWith('.nc'));
  expect(programs).toContain('mill-the-stops.nc');
  expect(programs).toContain('test-piece-back-up-air-cut.nc');
  for (const name of programs) {
    const read = readRs274(readFileSync(join(folder, name), 'utf8'));
    expect(read.endsStopped).toBe(true);
    expect(read.comments[0]).toBe('Flipwright - Wall clock');
  }
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  for (const name of names.filter((name) => name !== 'index.html'))
    expect(page).toContain(`href="${name}"`);
}

describe('build', () => {
  it('writes sheet, stops and prediction of both clocks and their difference, the same bytes twice', () => {
    withFolder((out) => {
      const run = flipwright(['build', PLAIN, CLOCK, '--out', out, ...FAST]);
      expect(run.err).toBe('');
      expect(run.code).toBe(0);
      expect(run.out).toMatch(/Good parts, wall-clock-plain → wall-clock: shaft in the pocket/);
      const folder = join(out, 'wall-clock');
      const names = readdirSync(folder);
      expect(names).toContain('bench-sheet.html');
      expect(names).toContain('prediction.json');
      expect(names.filter((name) => name.endsWith('.stl')).length).toBeGreaterThan(0);
      expectProgramsAndPage(folder, names);
      const before = names.map((name) => readFileSync(join(folder, name)));
      const again = flipwright(['build', CLOCK, '--out', out, ...FAST]);
      expect(again.out).toContain('(replaced)');
      expect(readdirSync(folder)).toEqual(names);
      names.forEach((name, k) => {
        expect(readFileSync(join(folder, name)).equals(before[k]!), name).toBe(true);
      });
    });
  }, 60_000);

  it('writes nothing at all when one of the jobs is wrong', () => {
    withFolder((out) => {
      const { code, err } = flipwright([
        'build',
        CLOCK,
        join(JIGS, 'shop.yaml'),
        '--out',
        join(out, 'new'),
        ...FAST,
      ]);
      expect(code).toBe(2);
      expect(err).toContain('shop.yaml');
      expect(existsSync(join(out, 'new'))).toBe(false);
    });
  });

  it('writes only what is asked for', () => {
    withFolder((out) => {
      const { code } = flipwright([
        'build',
        CLOCK,
        '--out',
        out,
        '--only',
        'stops,programs',
        ...FAST,
      ]);
      expect(code).toBe(0);
      const endings = readdirSync(join(out, 'wall-clock')).map((name) =>
        name.replace(/^[^.]*/, ''),
      );
      expect([...new Set(endings)].sort()).toEqual(['.html', '.nc', '.stl']);
      const wrong = flipwright(['build', CLOCK, '--out', out, '--only', 'stops,jigs', ...FAST]);
      expect(wrong.code).toBe(2);
      expect(wrong.err).toContain(
        '--only stops,jigs: there is no group jigs; write one or more of sheet, report, prediction, hold, stops, parts, programs, with commas between',
      );
    });
  });

  it('refuses a part that cannot be, and says what would fit', () => {
    withFolder((out) => {
      const job = readFileSync(CLOCK, 'utf8')
        .replace('shop: shop.yaml', `shop: ${join(JIGS, 'shop.yaml')}`)
        .replace('cam-clamp: yes', 'cam-clamp: {throw: 5}');
      writeFileSync(join(out, 'job.yaml'), job);
      const { code, err } = flipwright(['build', 'job.yaml', ...FAST], out);
      expect(code).toBe(2);
      expect(err).toContain('throw: 2.72 or less');
      expect(readdirSync(out)).toEqual(['job.yaml']);
    });
  });

  it('refuses two jobs of one name', () => {
    withFolder((out) => {
      const { code, err } = flipwright(['build', CLOCK, CLOCK, '--out', out, ...FAST]);
      expect(code).toBe(2);
      expect(err).toContain('two jobs would be written to');
    });
  });
});
