// The engine and the model as they are built, in a browser whose own sines and powers are of another make: the same
// bits as here, trials and summaries. Stops, dowels, a nest, drawn outlines, figures from readings.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadJob } from '../../src/cli/load.ts';
import type { Job } from '../../src/job/job.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import type { PredictOptions } from '../../src/stackup/predict.ts';
import { startPredicting } from '../../src/stackup/predicting.ts';
import type { Prediction } from '../../src/stackup/prediction.ts';

const CHROMIUM = '/usr/bin/chromium';
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
// Off CI a contributor may have no browser; on CI a missing one must be seen as a failure.
const isMissing = !existsSync(CHROMIUM) && process.env['CI'] === undefined;

const ROOT = join(import.meta.dirname, '..', '..');
/** A name that no network answers for: every file of it is handed in from the disk. */
const HOST = 'http://flipwright.invalid';
const PAGE = `<!doctype html><title>engine</title><script type="importmap">${JSON.stringify({
  imports: {
    jstat: `${HOST}/jstat.mjs`,
    'clipper2-ts': `${HOST}/node_modules/clipper2-ts/dist/index.js`,
  },
})}</script>`;

/** What stands at a path of that name; null for nothing. */
function fileAt(path: string): { readonly type: string; readonly body: string } | null {
  if (path === '/') return { type: 'text/html', body: PAGE };
  if (path === '/jstat.mjs') {
    // It comes as a script of the older kind only.
    const script = readFileSync(join(ROOT, 'node_modules/jstat/dist/jstat.js'), 'utf8');
    const body = `const exports = {}; const module = { exports };\n${script}\nexport default module.exports;`;
    return { type: 'text/javascript', body };
  }
  const file = join(ROOT, path);
  return existsSync(file) ? { type: 'text/javascript', body: readFileSync(file, 'utf8') } : null;
}

describe.skipIf(isMissing)('the engine in a browser (skipped: no chromium here)', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  }, 60_000);
  afterAll(async () => {
    await browser.close();
  });

  async function saidThere(job: Job, options: PredictOptions, far: Far): Promise<string> {
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    await page.route('**/*', async (route) => {
      const found = fileAt(new URL(route.request().url()).pathname);
      if (found === null) await route.fulfill({ status: 404 });
      else await route.fulfill({ contentType: found.type, body: found.body });
    });
    await page.goto(`${HOST}/`);
    const said = await page.evaluate<string>(`(${THERE})(${JSON.stringify([job, options, far])})`);
    await page.close();
    expect(faults).toEqual([]);
    return said;
  }

  it.each([
    // Worked to the end, or as far as the trials tell: the rest is the same code, and takes a loose blank long.
    ['wall-clock.yaml', 1000, 'whole'],
    ['tray.yaml', 500, 'whole'],
    ['instrument-plate.yaml', 4000, 'trials'],
    ['compass-cover.yaml', 2000, 'trials'],
    ['chime-box.yaml', 1000, 'trials'],
    ['clock-feet.yaml', 500, 'trials'],
  ] as const)('comes to the same numbers to the last bit: %s', async (name, trials, far) => {
    const { job } = loadJob(join(ROOT, 'jigs', name));
    const gauge = { kind: 'normal', mean: 0, sd: 0.02 } as const;
    const options = { seed: 3, trials, digits: 4, gauge };
    const here = saidBy(job, options, far);
    const there = await saidThere(job, options, far);
    const [tallies, known] = JSON.parse(there) as [unknown, Prediction];
    const [ours, said] = JSON.parse(here) as [unknown, Prediction];
    expect(known.needs[0]!.sd).toBeGreaterThan(0);
    // Numbers written as JSON come back to the very same bits, so equal text is equal bits.
    expect(JSON.stringify(tallies) === JSON.stringify(ours)).toBe(true);
    expect(JSON.stringify(known)).toBe(JSON.stringify(said));
  });
});

type Far = 'whole' | 'trials';

/** Ten blocks, and all that rests on them: shares, worst case, ellipse, gauge. */
function saidBy(job: Job, options: PredictOptions, far: Far): string {
  const misfit = misfitModel(job);
  const under = startPredicting(job.name, misfit, sourcesOf(job, misfit.deviations), options);
  const tallies = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((block) => under.work(block));
  for (const tally of tallies) under.take(tally);
  const figures = tallies.map(({ bins, ...tally }) => ({
    ...tally,
    bins: Array.from(bins).join(),
  }));
  return JSON.stringify([figures, far === 'whole' ? under.finish('trials') : under.known()]);
}

/** The same, in the page, where the built modules are. */
const THERE = `async ([job, options, far]) => {
  const { misfitModel } = await import('${HOST}/dist/setup/misfit.js');
  const { sourcesOf } = await import('${HOST}/dist/sources/sources-of.js');
  const { startPredicting } = await import('${HOST}/dist/stackup/predicting.js');
  const misfit = misfitModel(job);
  const under = startPredicting(job.name, misfit, sourcesOf(job, misfit.deviations), options);
  const tallies = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map((block) => under.work(block));
  for (const tally of tallies) under.take(tally);
  const figures = tallies.map(({ bins, ...tally }) => ({ ...tally, bins: Array.from(bins).join() }));
  return JSON.stringify([figures, far === 'whole' ? under.finish('trials') : under.known()]);
}`;
