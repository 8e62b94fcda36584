// Bundles what runs in the report's page, with what it uses of three, into one script that works from a file.
import { copyFileSync } from 'node:fs';
import { rolldown } from 'rolldown';

const OUT = 'dist/viewer';

const bundle = await rolldown({
  input: 'src/viewer/viewer.ts',
  platform: 'browser',
  tsconfig: '.config/tsconfig.viewer.json',
});
// No source map and no names of files: the page holds nothing of the place where it was made.
await bundle.write({ file: `${OUT}/viewer.js`, format: 'iife', minify: true });
await bundle.close();
copyFileSync('node_modules/three/LICENSE', `${OUT}/three-licence.txt`);
