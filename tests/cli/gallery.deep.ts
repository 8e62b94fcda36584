import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flipwright, JIGS, withFolder } from './run.ts';

const GALLERY = join(JIGS, '..', 'exports', 'gallery');
const NAMES = ['wall-clock-plain', 'wall-clock'];

describe('the gallery', () => {
  // `npx vitest run --config .config/vitest.config.ts tests/cli/gallery -u` writes it anew; look at it then.
  it.each(NAMES)('holds the sheet of %s as the program makes it now', async (name) => {
    const sheet = withFolder((out) => {
      const { code, err } = flipwright(['build', join(JIGS, `${name}.yaml`), '--out', out]);
      expect(err).toBe('');
      expect(code).toBe(0);
      return readFileSync(join(out, name, 'bench-sheet.html'), 'utf8');
    });
    await expect(sheet).toMatchFileSnapshot(join(GALLERY, `${name}.html`));
  });
});
