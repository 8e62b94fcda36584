import { existsSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import type { SheetInput } from '../../src/sheet/sheet-input.ts';
import { inputFor } from './an-input.ts';
import { bedInputFor, bedJobs } from './bed-jobs.ts';
import { realInput } from './real-input.ts';
import { someJobs } from './some-jobs.ts';

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

describe.skipIf(isMissing)('the bench sheet in a browser (skipped: no chromium here)', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
  }, 60_000);
  afterAll(async () => {
    await browser.close();
  });

  const sheets: readonly (readonly [string, () => SheetInput])[] = [
    ...Object.entries(someJobs).map(([name, job]) => [name, () => inputFor(job)] as const),
    ...Object.entries(bedJobs).map(([name, job]) => [name, () => bedInputFor(job)] as const),
    ...['wall-clock.yaml', 'wall-clock-plain.yaml'].map(
      (name) => [name, () => realInput(name, 'mm', 'predicted')] as const,
    ),
  ];
  for (const [name, input] of sheets)
    it(`keeps the words of every drawing apart and inside it: ${name}`, async () => {
      const page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
      const faults: string[] = [];
      page.on('console', (message) => faults.push(message.text()));
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('request', (request) => faults.push(`asked for ${request.url()}`));
      await page.setContent(benchSheet(input()));
      const texts = await page.evaluate<TextBox[]>(READ_TEXTS);
      const wide = await page.evaluate<boolean>(
        'document.documentElement.scrollWidth > document.documentElement.clientWidth',
      );
      await page.close();
      expect(faults).toEqual([]);
      expect(wide).toBe(false);
      expect(texts.length).toBeGreaterThan(25);
      expect(texts.filter((text) => !text.inside).map((text) => text.words)).toEqual([]);
      expect(overlaps(texts)).toEqual([]);
    });
});

interface TextBox {
  readonly drawing: number;
  readonly words: string;
  readonly inside: boolean;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Runs in the page, where there are no types of ours; half a pixel is what a browser rounds. */
const READ_TEXTS = `[...document.querySelectorAll('svg')].flatMap((svg, drawing) => {
  const s = svg.getBoundingClientRect();
  return [...svg.querySelectorAll('text')].map((text) => {
    const { left, right, top, bottom } = text.getBoundingClientRect();
    const inside = left >= s.left - 0.5 && right <= s.right + 0.5 && top >= s.top - 0.5 && bottom <= s.bottom + 0.5;
    return { drawing, words: text.textContent, inside, left, right, top, bottom };
  });
})`;

function overlaps(texts: readonly TextBox[]): string[] {
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => a.drawing === b.drawing)
      .filter((b) => Math.min(a.right, b.right) > Math.max(a.left, b.left))
      .filter((b) => Math.min(a.bottom, b.bottom) > Math.max(a.top, b.top))
      .map((b) => `${a.words} over ${b.words}`),
  );
}
