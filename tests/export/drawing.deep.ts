import { existsSync } from 'node:fs';
import { chromium as browserType } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { svgOf } from '../../src/export/svg.ts';
import { plateDrawing } from '../../src/jig/plate/plate-drawing.ts';
import { aPlate } from './a-plate.ts';
import { skippedWithout } from './in-folder.ts';

const drawing = plateDrawing(aPlate);

describe('a drawing as SVG', () => {
  const chromium = '/usr/bin/chromium';
  it.skipIf(skippedWithout(existsSync(chromium)))(
    'is drawn at its true size by a browser (Debian; skipped where missing)',
    async () => {
      const browser = await browserType.launch({
        executablePath: chromium,
        args: [
          '--no-sandbox',
          '--disable-gpu',
          '--disable-quic',
          '--no-first-run',
          '--disable-background-networking',
        ],
      });
      try {
        const page = await browser.newPage();
        await page.setContent(
          svgOf(drawing)
            .replace(/<\?xml[^>]*\?>/, '')
            .replace(/stroke="#[0-9a-f]*"/g, 'stroke="none"'),
        );
        const size = async (wanted: string): Promise<readonly number[]> => {
          const box = (await page.locator(wanted).boundingBox())!;
          return [box.width, box.height].map((px) => (px * 25.4) / 96);
        };
        // A browser's 96 px are an inch. Lines are drawn without width: their boxes would count it.
        const all = await size('svg');
        expect(all[0]).toBeCloseTo(100, 1);
        expect(all[1]).toBeCloseTo(50, 1);
        const hole = await size('#through circle >> nth=0');
        expect(hole[0]).toBeCloseTo(6, 1);
        const slot = await size('#through path >> nth=1');
        expect(slot[0]).toBeCloseTo(15 + 6.6, 1);
        expect(slot[1]).toBeCloseTo(6.6, 1);
      } finally {
        await browser.close();
      }
    },
    30_000,
  );
});
