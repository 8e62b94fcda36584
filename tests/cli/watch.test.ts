import { renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { watchFiles } from '../../src/cli/watch.ts';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';

/** Waits until a count has come to at least this, 5 s at most. */
async function until(count: () => number, least: number): Promise<void> {
  for (let k = 0; k < 100 && count() < least; k++) await wait(50);
}

it('a save is seen however the editor saves, once for each, and others are not', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
  const job = join(folder, 'job.yaml');
  writeFileSync(job, 'a');
  let runs = 0;
  const watching = watchFiles(
    () => [job],
    () => {
      runs += 1;
      return Promise.resolve();
    },
  );
  try {
    writeFileSync(join(folder, 'other.txt'), 'x');
    await wait(400);
    expect(runs).toBe(0);
    writeFileSync(job, 'b');
    writeFileSync(job, 'bb');
    await until(() => runs, 1);
    expect(runs).toBe(1);
    writeFileSync(join(folder, '.job.yaml.new'), 'c');
    renameSync(join(folder, '.job.yaml.new'), job);
    await until(() => runs, 2);
    expect(runs).toBe(2);
  } finally {
    watching.leave();
    rmSync(folder, { recursive: true, force: true });
  }
  await wait(200);
  expect(runs).toBe(2);
});
