// The built program, run with plain node: named imports that only work under a bundler die here.
import { spawn } from 'node:child_process';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Prediction } from '../../src/stackup/prediction.ts';
import { flipwright, JIGS, MAIN, withFolder } from './run.ts';

const CLOCK = join(JIGS, 'wall-clock.yaml');
const PLAIN = join(JIGS, 'wall-clock-plain.yaml');
const TRIALS = 2000;
const FAST = ['--trials', String(TRIALS)];

const jsonWith = (seed: string): string =>
  flipwright(['predict', PLAIN, '--json', '--seed', seed, ...FAST]).out;
/** The first run's JSON, kept: several tests read it. */
const first = ((): (() => string) => {
  let kept: string | null = null;
  return () => (kept ??= jsonWith('1'));
})();

describe('predict', () => {
  it('prints a table that fits 80 columns, with units, sources in words and what was assumed', () => {
    const { out, err, code } = flipwright(['predict', PLAIN, ...FAST]);
    expect(err).toBe('');
    expect(code).toBe(1);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(out).toMatch(/shaft in the pocket\s+≤ 0\.2 mm/);
    expect(out).toContain("the blank's length along X");
    expect(out).toContain('Assumed, since nobody stated it');
    expect(out).toContain('2000 trials, seed 1');
  });

  it('tells good enough by its exit code', () => {
    const clock = flipwright(['predict', CLOCK, ...FAST, '--json']);
    const prediction = JSON.parse(clock.out) as Prediction;
    const least = Math.min(...prediction.needs.map(({ chance }) => chance));
    expect(clock.code).toBe(least >= 0.99 ? 0 : 1);
  });

  it('prints the same bytes for the same seed, and figures within their standard error for another', () => {
    expect(jsonWith('1')).toBe(first());
    const [one, other] = [first(), jsonWith('2')].map((json) => JSON.parse(json) as Prediction);
    one!.needs.forEach((need, k) => {
      const same = other!.needs[k]!;
      expect(same.mean).not.toBe(need.mean);
      expect(Math.abs(same.mean - need.mean)).toBeLessThan(4 * need.sd * Math.sqrt(2 / TRIALS));
      expect(Math.abs(same.chance - need.chance)).toBeLessThan(
        4 * Math.hypot(need.chanceSe, same.chanceSe),
      );
    });
  });

  it('prints every figure that the format names', () => {
    const { needs, ...rest } = JSON.parse(first()) as Prediction;
    expect(rest).toMatchObject({
      json: 1,
      job: expect.any(String) as string,
      seed: 1,
      trials: TRIALS,
    });
    expect(rest.assumed.length).toBeGreaterThan(3);
    for (const need of needs) {
      expect(need.unit).toBe('mm');
      expect(need.interval95[0]).toBeLessThan(need.mean);
      expect(need.interval95[1]).toBeGreaterThan(need.mean);
      expect(need.shortest95[1] - need.shortest95[0]).toBeLessThanOrEqual(
        need.interval95[1] - need.interval95[0],
      );
      expect(need.worst[1]).toBeGreaterThan(need.interval95[1]);
      expect(need.worstLinear[1]).toBeGreaterThan(need.interval95[1]);
      expect(need.sure.high).toBeGreaterThan(0);
      expect(Object.keys(need.recurring!)).toEqual([
        'shop',
        'powerUp',
        'setup',
        'part',
        'placing',
        'feature',
      ]);
      expect(need.shares[0]!.share).toBeGreaterThan(0.1);
      expect(need.shares[0]!.se).toBeGreaterThan(0);
      expect(need).not.toHaveProperty('cloud');
    }
  });

  it.each([
    [['predict', 'no-such-job.yaml'], /no-such-job\.yaml: no such file; name a job file/],
    [['predict', JIGS], /is a folder; name a file in it/],
    [['predict', PLAIN, '--seed', '-1'], /--seed -1: write a whole number from 0 to 4294967295/],
    [
      ['predict', PLAIN, '--trials', '1e9'],
      /--trials 1e9: write a whole number from 2000 to 20000000/,
    ],
    [['predict', PLAIN, '--digits', '9'], /--digits 9: write a whole number from 1 to 4/],
    [['predict', PLAIN, '--seconds', '-3'], /--seconds -3: write a whole number from 1 to 86400/],
    [['predict', PLAIN, '--threads', '0'], /--threads 0: write a whole number from 1 to 8/],
    [['predict', PLAIN, '--trials', 'NaN'], /--trials NaN/],
    [
      ['predict', PLAIN, '--quick', '--trials', '5000'],
      /--quick tries no blanks: leave out --trials/,
    ],
    [['predict'], /missing required argument/],
    [['predcit', PLAIN], /Did you mean predict\?/],
  ])('refuses %j with exit code 2 and no stack trace', (words, message) => {
    const { code, err, out } = flipwright(words);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('new and check', () => {
  it('write a job that is checked and predicted as it stands, and never overwrite one', () => {
    withFolder((folder) => {
      expect(flipwright(['new', folder]).code).toBe(0);
      const job = join(folder, 'job.yaml');
      const checked = flipwright(['check', job]);
      expect(checked.err).toBe('');
      expect(checked.out).toContain('nothing is wrong');
      expect(checked.out).toContain('Assumed');
      expect(checked.out).toMatch(/ood enough/);
      expect(checked.code).toBe(checked.out.includes('Not good enough') ? 1 : 0);
      expect(flipwright(['predict', job, ...FAST]).code).toBe(checked.code);
      const before = readFileSync(job, 'utf8');
      const again = flipwright(['new', folder]);
      expect(again.code).toBe(2);
      expect(again.err).toContain('is already there');
      expect(readFileSync(job, 'utf8')).toBe(before);
    });
  });

  it('check refuses what no stop can be made for, and a zero touched where a stop stands', () => {
    withFolder((folder) => {
      const write = (name: string, ...changes: readonly (readonly [string, string])[]): string => {
        let text = readFileSync(PLAIN, 'utf8');
        for (const [part, instead] of changes) {
          expect(text).toContain(part);
          text = text.replace(part, instead);
        }
        writeFileSync(join(folder, name), text);
        return join(folder, name);
      };
      copyFileSync(join(JIGS, 'shop.yaml'), join(folder, 'shop.yaml'));
      const off = flipwright(['check', write('off.yaml', ['on-bed: [70, 70]', 'on-bed: [5, 5]'])]);
      expect(off.code).toBe(2);
      expect(off.err).toMatch(
        /no stop can be made: no insert of the bed lies where .*; what would fit: on-bed: \[70, 70\]/,
      );
      const edges = flipwright(['check', write('edges.yaml', ['xy: stops', 'xy: middle'])]);
      expect(edges.code).toBe(2);
      expect(edges.err).toMatch(
        /touched on the left edge at y = 90 mm, where the corner stop, near left, stands.*write xy-touched/,
      );
    });
  });

  it('tells every fault at once, with its place', () => {
    withFolder((folder) => {
      flipwright(['new', folder]);
      const job = join(folder, 'job.yaml');
      const text = readFileSync(job, 'utf8')
        .replace(/^blank:/m, 'blnak:')
        .replace(/^turn: .*/m, 'turn: about-z');
      writeFileSync(job, text);
      const { code, err } = flipwright(['check', job]);
      expect(code).toBe(2);
      expect(err).toMatch(/job\.yaml:\d+:\d+: .*blnak.*blank/);
      expect(err).toMatch(/job\.yaml:\d+:\d+: .*about-z/);
      expect(err).not.toMatch(/\n\s+at /);
    });
  });
});

describe('the shell', () => {
  it('ends quietly when somebody reads only the first line', async () => {
    const run = spawn(process.execPath, [MAIN, 'predict', PLAIN, ...FAST]);
    let err = '';
    run.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    run.stdout.destroy();
    await new Promise((done) => run.on('close', done));
    expect(err).toBe('');
  });
});

/** Every program reads back, and the page of what was built has every file. */
