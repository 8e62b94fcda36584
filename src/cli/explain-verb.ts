import { HOW_WRITTEN } from '../job/schema/key-reference.ts';
import { explained, topKeys } from '../job/schema/explained.ts';
import type { KeyRow } from '../job/schema/key-rows.ts';
import { EXIT, Refusal } from './exit.ts';
import { columns, wrapped } from './lines.ts';
import type { Say } from './verbs.ts';

/** What a key of the files means, its unit, what is taken when it is left out, and a picture. */
export function explainVerb(key: string | null, json: boolean, say: Say): number {
  if (key === null) {
    say(json ? JSON.stringify({ json: 1, keys: topKeys() }, null, 2) : listText());
    return EXIT.good;
  }
  const found = explained(key);
  if (found.kind === 'unknown') {
    const hint =
      found.meant === null ? 'flipwright explain lists the keys' : `did you mean ${found.meant}?`;
    throw new Refusal(`${key}: no key of a job or shop file; ${hint}`);
  }
  if (json) say(JSON.stringify({ json: 1, keys: found.rows }, null, 2));
  else say(alike(found.rows).map(keyText).join('\n\n'));
  return EXIT.good;
}

interface Told extends KeyRow {
  /** Other places where the very same key stands. */
  readonly also: readonly string[];
}

/** Keys that say the same word for word (of the front and of the back) are told once. */
function alike(rows: readonly KeyRow[]): readonly Told[] {
  const told = new Map<string, Told>();
  for (const row of rows) {
    const same = JSON.stringify([row.means, row.words, row.unit, row.leftOut, row.examples]);
    const before = told.get(same);
    told.set(
      same,
      before === undefined ? { ...row, also: [] } : { ...before, also: [...before.also, row.path] },
    );
  }
  return [...told.values()];
}

function keyText(row: Told): string {
  const lines = [
    `${row.path}   (${row.file} file${row.isNeeded ? ', must be there' : ''})`,
    ...wrapped(`  ${row.means}`, '  '),
    ...(row.words.length > 0 ? wrapped(`  one of: ${row.words.join(', ')}`, '          ') : []),
    ...(row.unit === null ? [] : [`  unit: ${row.unit}`]),
    ...(row.leftOut === null ? [] : wrapped(`  left out: ${row.leftOut}`, '            ')),
    ...row.examples.flatMap((example) => wrapped(`  for example: ${example}`, '    ')),
    ...(row.also.length > 0 ? wrapped(`  also: ${row.also.join(', ')}`, '        ') : []),
    ...(row.sketch === null ? [] : ['', row.sketch]),
  ];
  return lines.join('\n');
}

const listText = (): string =>
  [
    'Keys of the job file and of the shop file; ask for one, or for one within it:',
    'flipwright explain blank.bevel',
    '',
    ...columns(
      topKeys().map(({ path, file, means }) => [`  ${path}`, file, shortened(means)]),
      [],
    ),
    '',
    ...wrapped(HOW_WRITTEN.replaceAll('`', '')),
  ].join('\n');

const shortened = (means: string): string => (means.length > 52 ? `${means.slice(0, 51)}…` : means);
