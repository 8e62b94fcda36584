// Writes THIRD-PARTY.md: every package that a user's install brings along, with its licence in full.
// `node .config/third-party.mjs --check` only says whether the file is up to date (exit code 1: it is not).
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';

const lock = JSON.parse(readFileSync('package-lock.json', 'utf8'));
// Not installed with the program, but a piece of it is bundled into what is published.
const BUNDLED = ['node_modules/three'];
const shipped = Object.entries(lock.packages)
  .filter(
    ([path, { dev, optional }]) => path !== '' && ((!dev && !optional) || BUNDLED.includes(path)),
  )
  .map(([path]) => path)
  .sort();

const licenceOf = (path) => {
  const file = readdirSync(path).find((name) => /^(licen[cs]e|copying)(\.|-|$)/i.test(name));
  if (file !== undefined)
    return readFileSync(`${path}/${file}`, 'utf8').replaceAll('\r', '').trim();
  // Some packages keep it at the root of their repository and ship only the name.
  return null;
};

const parts = shipped.map((path) => {
  const { name, version, license, author, repository } = JSON.parse(
    readFileSync(`${path}/package.json`, 'utf8'),
  );
  const who = typeof author === 'string' ? author : author?.name;
  const where = typeof repository === 'string' ? repository : repository?.url;
  const text = licenceOf(path);
  return [
    `## ${name} ${version}`,
    '',
    `Licence: ${license}${who === undefined ? '' : `. Author: ${who}`}${where === undefined ? '' : `. Source: ${where.replace(/^git\+/, '')}`}`,
    '',
    ...(text === null
      ? ['The package ships no licence text; its package file names the licence above.']
      : ['```text', text.replaceAll('```', "'''"), '```']),
    '',
  ].join('\n');
});

const page = [
  '# Third-party software',
  '',
  'Made by `npm run notices`. Flipwright itself is under the licence in `LICENSE`; these packages come with an install, or are bundled into it.',
  '',
  ...parts,
].join('\n');

const FILE = 'THIRD-PARTY.md';
if (process.argv.includes('--check')) {
  const isThere = existsSync(FILE) && readFileSync(FILE, 'utf8') === page;
  if (!isThere) console.error(`${FILE} is not up to date: run npm run notices`);
  process.exitCode = isThere ? 0 : 1;
} else {
  writeFileSync(FILE, page);
  console.log(`wrote ${FILE}: ${parts.length} packages`);
}
