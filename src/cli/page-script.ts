import { readFileSync } from 'node:fs';
import type { ViewerScript } from '../report/report-input.ts';

/** The report's own script, bundled beside the built program, with the licences of what is in it. */
export function pageScript(): ViewerScript {
  const read = (name: string): string =>
    readFileSync(new URL(`../viewer/${name}`, import.meta.url), 'utf8');
  return {
    code: read('viewer.js'),
    notices: [{ name: 'three', licence: read('three-licence.txt') }],
  };
}
