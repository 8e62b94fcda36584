import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { flipwright, JIGS, MAIN, withFolder } from './run.ts';

it('check --watch tells again after each save, of the shop too, and survives a broken file', async () => {
  const folder = withFolder((path) => path);
  mkdirSync(folder);
  const job = join(folder, 'job.yaml');
  copyFileSync(join(JIGS, 'wall-clock-plain.yaml'), job);
  copyFileSync(join(JIGS, 'shop.yaml'), join(folder, 'shop.yaml'));
  const run = spawn(process.execPath, [MAIN, 'check', job, '--watch']);
  let out = '';
  let err = '';
  run.stdout.on('data', (text: Buffer) => (out += text.toString()));
  run.stderr.on('data', (text: Buffer) => (err += text.toString()));
  const ended = new Promise<number | null>((end) => run.on('exit', end));
  const until = async (isThere: () => boolean): Promise<void> => {
    for (let k = 0; k < 400 && !isThere(); k++) await wait(100);
    expect(isThere(), `${out}\n${err}`).toBe(true);
  };
  try {
    await until(() => err.includes('watching 3 files'));
    expect(out).toContain('nothing is wrong');
    const text = readFileSync(job, 'utf8');
    err = '';
    writeFileSync(job, text.replace('turn: about-y', 'turn: about-z'));
    await until(() => err.includes('watching'));
    expect(err).toMatch(/about-z/);
    [out, err] = ['', ''];
    writeFileSync(job, text);
    await until(() => err.includes('watching'));
    expect(out).toContain('nothing is wrong');
    [out, err] = ['', ''];
    const shop = readFileSync(join(folder, 'shop.yaml'), 'utf8');
    writeFileSync(join(folder, 'shop.yaml'), `${shop}\nunknown-key: 1\n`);
    await until(() => err.includes('watching'));
    expect(err).toContain('unknown-key');
    run.kill('SIGINT');
    expect(await ended).toBe(2);
  } finally {
    run.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  }
});

it('each verb that has --json prints nothing else, and says what was wrong with its place', () => {
  withFolder((folder) => {
    const job = join(folder, 'job.yaml');
    const text = readFileSync(join(JIGS, 'wall-clock-plain.yaml'), 'utf8');
    writeFileSync(job, text.replace('turn: about-y', 'turn: about-z'));
    copyFileSync(join(JIGS, 'shop.yaml'), join(folder, 'shop.yaml'));
    const checked = flipwright(['check', job, '--json']);
    expect(checked.code).toBe(2);
    const line = text.split('\n').findIndex((one) => one.startsWith('turn:')) + 1;
    expect(JSON.parse(checked.out)).toMatchObject({ json: 1, good: false, faults: [{ line }] });
    writeFileSync(job, text);
    const built = flipwright([
      'build',
      job,
      '--json',
      '--trials',
      '2000',
      '--only',
      'sheet',
      '--out',
      join(folder, 'out'),
    ]);
    expect(built.err).toBe('');
    expect(JSON.parse(built.out)).toMatchObject({ built: [{ job: 'Wall clock, plain stop' }] });
    for (const words of [
      ['explain', 'turn'],
      ['new', join(folder, 'n')],
      ['schema', folder],
    ])
      expect(JSON.parse(flipwright([...words, '--json']).out)).toMatchObject({ json: 1 });
  });
});
