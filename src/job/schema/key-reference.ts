import { jobRows, shopRows, type KeyRow } from './key-rows.ts';
import { sketches } from './sketches.ts';

/** How values are written; said once for all keys. */
export const HOW_WRITTEN = [
  'Lengths: mm, or with a unit (`1/4 in`, `3/8"`, `1 1/2 in`, `25 thou`, `5 µm`). Slopes: `0.3 per 200` or `0.4 deg`.',
  'Spreads: `±0.4`, `±0.4 triangular`, `±0.2 95%`, `0.05 sd`, `half-normal 0.03`, `0..0.2`, `arcsine ±0.1`, `{readings: [0.04, -0.01, 0.02]}`, `{gauge: caliper}`, `{spread: ±0.3, recurs: setup}`; `0` switches a source off.',
].join(' ');

/** The key reference, Markdown: every key of both files, what it means, unit, what is taken, an example. */
export const keyReference = (): string =>
  [
    '# Keys',
    '',
    'Made from the schemas in `schema/`; a test keeps it up to date. **Bold**: must be there (when the group it stands in is). `[ ]`: each of a list. `< >`: a name of your own. `flipwright explain KEY` tells the same in the terminal.',
    '',
    HOW_WRITTEN,
    '',
    '## Job file',
    '',
    ...table(jobRows()),
    '',
    '## Shop file',
    '',
    'A job file may hold any of these too; what it says counts for that job.',
    '',
    ...table(shopRows()),
    '',
    '## Sketches',
    '',
    'Angles and gaps are drawn far too large. From above, X to the right, unless said.',
    '',
    ...sketches().flatMap(({ keys, lines }) => [
      keys.map((key) => `\`${key}\``).join(', '),
      '',
      '```text',
      lines,
      '```',
      '',
    ]),
  ].join('\n');

const table = (of: readonly KeyRow[]): readonly string[] => [
  '| key | means | unit | left out | for example |',
  '|---|---|---|---|---|',
  ...of.map((row) => {
    const key = row.isNeeded ? `**\`${row.path}\`**` : `\`${row.path}\``;
    const words = row.words.map((word) => `\`${word}\``).join(', ');
    const means = [row.means, words].filter((part) => part !== '').join(': ');
    const examples = row.examples.map((one) => `\`${one}\``).join(', ');
    return `| ${key} | ${means} | ${row.unit ?? ''} | ${row.leftOut ?? ''} | ${examples} |`;
  }),
];
