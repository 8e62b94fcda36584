import { spawn } from 'node:child_process';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { appendLog } from '../../src/cli/append-log.ts';
import { LOG_HEAD, logLine, readLog } from '../../src/job/readings/log-file.ts';
import { MAIN, withFolder } from './run.ts';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';

const row = (part: number, what: string) =>
  logLine({ date: '2026-11-25', part, what, value: '0.12', gauge: 'caliper', note: 'fine' });
const read = (path: string) => readLog({ name: path, bytes: readFileSync(path) });

/** A process that logs part after part and says each number once it is on the disk. */
function writer(folder: string, who: string, count: number) {
  const built = (name: string): string =>
    JSON.stringify(pathToFileURL(join(MAIN, '..', '..', name)).href);
  const script = `
    import { appendLog } from ${built('cli/append-log.js')};
    import { logLine } from ${built('job/readings/log-file.js')};
    for (let part = 1; part <= ${count}; part++) {
      appendLog(${JSON.stringify(join(folder, 'j.log.csv'))}, [logLine({ date: '2026-11-25', part, what: ${JSON.stringify(who)}, value: '0.1', gauge: '', note: 'a note of some length' })]);
      process.stdout.write(part + '\\n');
    }`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script]);
  let said = '';
  let started: () => void = () => undefined;
  const first = new Promise<void>((resolve) => {
    started = resolve;
  });
  child.stdout.on('data', (data: Buffer) => {
    said += data.toString();
    started();
  });
  const done = new Promise<number>((resolve) => {
    child.on('close', () => {
      resolve(Math.max(0, ...said.split('\n').slice(0, -1).map(Number)));
    });
  });
  return { child, first, done };
}

async function inFolder(use: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'flipwright-log-'));
  try {
    await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe('logging', () => {
  it('begins a log, and goes on after a row that was cut short or a hand that left no line end', () => {
    withFolder((folder) => {
      const path = join(folder, 'j.log.csv');
      appendLog(path, [row(1, 'a')]);
      expect(readFileSync(path, 'utf8')).toBe(LOG_HEAD + row(1, 'a'));
      appendFileSync(path, '2026-11-25,2,a,0.1');
      expect(read(path).cutShort).not.toBeNull();
      appendLog(path, [row(3, 'a'), row(3, 'b')]);
      const { rows, faults } = read(path);
      expect(rows.map(({ part }) => part)).toEqual([1, 3, 3]);
      expect(faults.map(({ line }) => line)).toEqual([3]);
      writeFileSync(path, LOG_HEAD + row(1, 'a').trimEnd());
      appendLog(path, [row(2, 'a')]);
      expect(read(path)).toMatchObject({ faults: [], cutShort: null });
      expect(read(path).rows).toHaveLength(2);
    });
  });

  it('by two writers at once loses and mixes nothing', async () => {
    await inFolder(async (folder) => {
      const both = [writer(folder, 'one', 60), writer(folder, 'two', 60)];
      expect(await Promise.all(both.map(({ done }) => done))).toEqual([60, 60]);
      const { rows, faults } = read(join(folder, 'j.log.csv'));
      expect(faults).toEqual([]);
      for (const who of ['one', 'two'])
        expect(rows.filter(({ what }) => what === who).map(({ part }) => part)).toEqual(
          Array.from({ length: 60 }, (_, k) => k + 1),
        );
    });
  });

  it('killed at any moment keeps every part that was said to be logged', async () => {
    for (const afterMs of [0, 7]) {
      await inFolder(async (folder) => {
        const { child, first, done } = writer(folder, 'one', 100_000);
        await first;
        await new Promise((resolve) => setTimeout(resolve, afterMs));
        child.kill('SIGKILL');
        const logged = await done;
        expect(logged).toBeGreaterThan(0);
        const { rows, faults } = read(join(folder, 'j.log.csv'));
        expect(faults).toEqual([]);
        expect(rows.length).toBeGreaterThanOrEqual(logged);
        expect(rows.map(({ part }) => part)).toEqual(rows.map((_, k) => k + 1));
      });
    }
  });
});
