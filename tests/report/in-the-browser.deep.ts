import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { report } from '../../src/report/report.ts';
import { changedInput } from './an-input.ts';

const CHROMIUM = '/usr/bin/chromium';
const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];
// Off CI a contributor may have no browser; on CI a missing one must be seen as a failure.
const isMissing = !existsSync(CHROMIUM) && process.env['CI'] === undefined;
const viewer = (): { code: string; notices: { name: string; licence: string }[] } => ({
  code: readFileSync('dist/viewer/viewer.js', 'utf8'),
  notices: [{ name: 'three', licence: readFileSync('dist/viewer/three-licence.txt', 'utf8') }],
});

describe.skipIf(isMissing)('the report in a browser (skipped: no chromium here)', () => {
  let browser: Browser;
  const pages = new Map<string, string>();
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
    // Stops in mm, and inches turned about X with the back first.
    for (const name of ['wall-clock', 'gauge-lid'])
      pages.set(name, report({ ...changedInput(name, (job) => job, true), viewer: viewer() }));
  }, 300_000);
  afterAll(async () => {
    await browser.close();
  });

  /** Opens the page from a file, and says what went wrong on it. */
  async function opened(
    name: string,
    look: { readonly colorScheme?: 'light' | 'dark'; readonly javaScriptEnabled?: boolean },
    use: (page: Page, faults: string[]) => Promise<void>,
  ): Promise<void> {
    const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
    try {
      const file = join(folder, 'report.html');
      writeFileSync(file, pages.get(name)!);
      const context = await browser.newContext({ viewport: { width: 1100, height: 900 }, ...look });
      const page = await context.newPage();
      const faults: string[] = [];
      page.on('console', (message) => {
        // A driver's own word on how fast a picture is read back is none of ours.
        if (message.type() === 'error') faults.push(message.text());
      });
      page.on('pageerror', (error) => faults.push(error.message));
      page.on('request', (request) => {
        if (!request.url().startsWith('file:')) faults.push(`asked for ${request.url()}`);
      });
      await page.goto(pathToFileURL(file).href);
      await use(page, faults);
      expect(faults).toEqual([]);
      await context.close();
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }

  for (const name of ['wall-clock', 'gauge-lid'])
    for (const colorScheme of ['light', 'dark'] as const)
      it(`is readable and quiet: ${name}, ${colorScheme}`, async () => {
        await opened(name, { colorScheme }, async (page) => {
          const wide = await page.evaluate<boolean>(
            'document.documentElement.scrollWidth > document.documentElement.clientWidth',
          );
          expect(wide).toBe(false);
          const texts = await page.evaluate<TextBox[]>(READ_TEXTS);
          expect(texts.length).toBeGreaterThan(40);
          expect(texts.filter(({ inside }) => !inside).map(({ words }) => words)).toEqual([]);
          expect(overlaps(texts)).toEqual([]);
          const pairs = await page.evaluate<Pair[]>(READ_COLOURS);
          expect(pairs.length).toBeGreaterThan(200);
          // WCAG 2.2, 1.4.3: 4.5 for text, 3 for large text.
          const dim = pairs.filter(
            (pair) => contrast(pair.ink, pair.ground) < (pair.large ? 3 : 4.5),
          );
          expect(dim.map(({ words, ink, ground }) => `${words}: ${ink} on ${ground}`)).toEqual([]);
        });
      }, 60_000);

  it('turns the solids by keys, mouse and buttons, and changes the placing', async () => {
    await opened('wall-clock', {}, async (page) => {
      const canvas = page.locator('#view canvas');
      const said = (what: string): Promise<string | null> => canvas.getAttribute(`data-${what}`);
      await canvas.scrollIntoViewIfNeeded();
      await canvas.focus();
      const before = await canvas.screenshot();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowUp');
      expect(await said('turn')).toBe('-18.0');
      expect(await said('above')).toBe('48.0');
      await page.keyboard.press('2');
      expect(await said('placing')).toBe('1');
      await page.waitForTimeout(300);
      expect((await canvas.screenshot()).equals(before)).toBe(false);
      const box = (await canvas.boundingBox())!;
      await page.mouse.move(box.x + 300, box.y + 200);
      await page.mouse.down();
      await page.mouse.move(box.x + 250, box.y + 200);
      await page.mouse.up();
      expect(await said('turn')).toBe('2.0');
      await page.getByRole('button', { name: 'From above' }).click();
      expect(await said('above')).toBe('90.0');
      await page.getByRole('button', { name: 'Dark page' }).click();
      expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
      expect(await page.locator('.stills').isVisible()).toBe(false);
    });
  }, 60_000);

  it('is reached by the keyboard alone, and shows where one is', async () => {
    await opened('wall-clock', {}, async (page) => {
      const wanted = await page
        .locator('a:visible, button:visible, canvas, input:visible, summary:visible')
        .count();
      const reached = new Set<string>();
      for (let k = 0; k < wanted + 3; k++) {
        await page.keyboard.press('Tab');
        reached.add(await page.evaluate<string>(WHERE_AM_I));
      }
      expect(reached.size).toBeGreaterThanOrEqual(wanted);
      expect([...reached].some((one) => one.startsWith('CANVAS'))).toBe(true);
      expect([...reached].filter((one) => one.endsWith('none 0px'))).toEqual([]);
    });
  }, 60_000);

  it('shows still pictures without scripts, and prints them', async () => {
    await opened('wall-clock', { javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('.still svg').count()).toBe(2);
      expect(await page.locator('.still').first().isVisible()).toBe(true);
      expect(await page.locator('#view canvas').isVisible()).toBe(false);
      expect(await page.locator('#theme').isVisible()).toBe(false);
      const pdf = await page.pdf({ format: 'A4' });
      const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;
      expect(sheets).toBeGreaterThan(3);
      expect(sheets).toBeLessThan(20);
    });
    await opened('wall-clock', {}, async (page) => {
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.still').first().isVisible()).toBe(true);
      expect(await page.locator('#view canvas').isVisible()).toBe(false);
    });
  }, 60_000);

  it('is not larger than two megabytes', () => {
    for (const page of pages.values()) expect(Buffer.byteLength(page)).toBeLessThan(2e6);
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

interface Pair {
  readonly words: string;
  readonly ink: string;
  readonly ground: string;
  readonly large: boolean;
}

/** Every stretch of text outside drawings with its colour and that of the nearest ground that has one. */
const READ_COLOURS = `(() => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found = [];
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const at = node.parentElement;
    if (node.textContent.trim() === '' || at.closest('svg,script,style,.skip') || !at.checkVisibility()) continue;
    let under = at;
    while (under && /, 0\\)$|transparent/.test(getComputedStyle(under).backgroundColor)) under = under.parentElement;
    const look = getComputedStyle(at);
    const px = parseFloat(look.fontSize);
    found.push({ words: node.textContent.trim().slice(0, 40), ink: look.color, ground: getComputedStyle(under ?? document.documentElement).backgroundColor, large: px >= 24 || (px >= 18.66 && Number(look.fontWeight) >= 700) });
  }
  return found;
})()`;

const WHERE_AM_I = `(() => {
  const at = document.activeElement;
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  const place = [...document.querySelectorAll('*')].indexOf(at);
  return at.tagName + ' ' + place + ' ' + outlineStyle + ' ' + outlineWidth;
})()`;

/** Source: WCAG 2.2, definitions of relative luminance and contrast ratio. */
function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)].sort((x, y) => y - x) as [number, number];
  return (a + 0.05) / (b + 0.05);
}

function luminance(css: string): number {
  const [r, g, b] = css.match(/[\d.]+/g)!.map((channel) => {
    const c = Number(channel) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

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
