// What npm would publish, put into a clean folder: it must start there and do the main job.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { withFolder } from './run.ts';

/** npm through node, so that no shell is needed on any system. */
function npm(words: readonly string[], cwd: string): string {
  const cli = process.env['npm_execpath'];
  const run =
    cli === undefined
      ? spawnSync('npm', words, { cwd, encoding: 'utf8', shell: process.platform === 'win32' })
      : spawnSync(process.execPath, [cli, ...words], { cwd, encoding: 'utf8' });
  expect(run.status, run.stderr).toBe(0);
  return run.stdout;
}

it('the package installs into a clean folder, starts, and builds a job of its own making', () => {
  withFolder((folder) => {
    npm(['pack', '--ignore-scripts', '--pack-destination', folder], process.cwd());
    const [packed] = readdirSync(folder);
    writeFileSync(join(folder, 'package.json'), '{"name":"a-shop","version":"1.0.0"}');
    npm(['install', '--no-audit', '--no-fund', '--prefer-offline', `./${packed!}`], folder);
    const home = join(folder, 'node_modules', 'flipwright');
    for (const file of ['LICENSE', 'README.md', 'CHANGELOG.md', 'THIRD-PARTY.md'])
      expect(existsSync(join(home, file)), file).toBe(true);
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    const main = join(home, 'dist', 'cli', 'main.js');
    const run = (...words: string[]) =>
      spawnSync(process.execPath, [main, ...words], { cwd: folder, encoding: 'utf8' });
    expect(run('--version').stdout.trim()).toBe(version);
    expect(run('new', 'lid').status).toBe(0);
    const built = run('build', 'lid/job.yaml', '--trials', '2000');
    expect(built.stderr).toBe('');
    expect(built.status).toBe(0);
    expect(existsSync(join(folder, 'exports', 'job', 'bench-sheet.html'))).toBe(true);
  });
});

it('the notices name every package that an install brings, with its licence', () => {
  const run = spawnSync(process.execPath, ['.config/third-party.mjs', '--check'], {
    encoding: 'utf8',
  });
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
});

it('the job that new writes is good, can be made, and is held as it stands', () => {
  withFolder((folder) => {
    const main = join(process.cwd(), 'dist', 'cli', 'main.js');
    const run = (...words: string[]) =>
      spawnSync(process.execPath, [main, ...words], { cwd: folder, encoding: 'utf8' });
    expect(run('new', '.').status).toBe(0);
    expect(run('check', 'job.yaml').status).toBe(0);
    expect(run('hold', 'job.yaml').status).toBe(0);
  });
});
