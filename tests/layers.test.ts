// The architecture: which room may import what. Change this table first, on purpose.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Row {
  readonly rooms: readonly string[];
  /** Packages, each spoken to in the one file named beside it. */
  readonly packages: Readonly<Record<string, readonly string[]>>;
}

const TABLE: Readonly<Record<string, Row>> = {
  num: { rooms: [], packages: { jstat: ['textbook.ts'] } },
  plane: { rooms: ['num'], packages: { 'clipper2-ts': ['clip.ts'] } },
  job: {
    rooms: ['num', 'plane'],
    packages: { yaml: [], zod: [], 'fastest-levenshtein': [] },
  },
  setup: { rooms: ['num', 'plane', 'job'], packages: {} },
  sweep: { rooms: ['num', 'plane', 'job', 'setup'], packages: {} },
  sources: { rooms: ['num', 'job', 'setup'], packages: {} },
  stackup: { rooms: ['num', 'plane', 'setup', 'sources'], packages: {} },
  measure: { rooms: ['num', 'plane', 'job', 'setup', 'sources'], packages: {} },
  verdict: { rooms: ['num', 'plane', 'job', 'setup', 'sweep', 'sources', 'stackup'], packages: {} },
  advise: {
    rooms: ['num', 'plane', 'job', 'setup', 'sources', 'stackup', 'verdict'],
    packages: {},
  },
  jig: {
    rooms: ['num', 'plane', 'job', 'setup', 'sweep'],
    packages: { '@jscad/modeling': ['solid.ts'] },
  },
  hold: { rooms: ['num', 'plane', 'job', 'setup', 'sweep'], packages: {} },
  export: { rooms: ['num', 'plane', 'jig'], packages: { '@jscad/stl-serializer': ['stl.ts'] } },
  sheet: {
    rooms: [
      'num',
      'plane',
      'job',
      'setup',
      'sweep',
      'sources',
      'stackup',
      'verdict',
      'advise',
      'measure',
      'hold',
      'jig',
      'export',
    ],
    packages: { 'd3-scale': [] },
  },
  // Draws with the sheet's means (words with units, safe markup, plans of the hold-downs), so that both say the same
  // of the same thing; the sheet knows nothing of the report.
  report: {
    rooms: [
      'num',
      'plane',
      'job',
      'setup',
      'sweep',
      'sources',
      'stackup',
      'verdict',
      'hold',
      'jig',
      'sheet',
    ],
    packages: {},
  },
  // Runs in the report's page: what it shows is handed to it as plain numbers.
  viewer: { rooms: [], packages: { three: ['solids.ts'] } },
  cli: {
    rooms: [
      'num',
      'plane',
      'job',
      'setup',
      'sweep',
      'sources',
      'stackup',
      'verdict',
      'advise',
      'measure',
      'hold',
      'jig',
      'export',
      'sheet',
      'report',
    ],
    packages: { commander: ['command-line.ts'] },
  },
};

/** Rooms whose numbers must have the same bits in every engine, and what differs between engines. */
const SAME_BITS = ['plane', 'job', 'setup', 'sources', 'stackup'];
const OF_THE_ENGINE =
  /Math\.(?:a?sinh?|a?cosh?|a?tanh?|atan2|pow|exp|expm1|log|log2|log10|log1p|hypot|cbrt)\b/;

/** Rooms that may use the clock, files, the console and `node:`. */
const OUTSIDE = ['cli'];
/** Rooms that run in a page. */
const IN_A_PAGE = ['viewer'];

const SRC = join(import.meta.dirname, '..', 'src');

interface Found {
  readonly room: string;
  readonly file: string;
  readonly name: string;
  readonly text: string;
}

function filesOf(room: string, folder = join(SRC, room)): readonly Found[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesOf(room, path);
    if (!entry.name.endsWith('.ts')) return [];
    return [
      {
        room,
        file: path.slice(SRC.length + 1),
        name: entry.name,
        text: readFileSync(path, 'utf8'),
      },
    ];
  });
}

function importsOf(text: string): readonly string[] {
  const pattern = /(?:from\s+|import\s*\(\s*|import\s+)['"]([^'"]+)['"]/g;
  return [...text.matchAll(pattern)].map((match) => match[1]!);
}

/** Everything in `found` that the table does not allow. */
function breaches(found: Found, table = TABLE): readonly string[] {
  const row = table[found.room]!;
  const wrong: string[] = [];
  for (const name of importsOf(found.text)) {
    if (name.startsWith('.')) {
      const target = join('/', found.file, '..', name).split(/[\\/]/)[1]!;
      if (target !== found.room && !row.rooms.includes(target))
        wrong.push(`${found.file} imports room ${target}`);
    } else if (name.startsWith('node:')) {
      if (!OUTSIDE.includes(found.room)) wrong.push(`${found.file} imports ${name}`);
    } else {
      const only = row.packages[name];
      if (only === undefined) wrong.push(`${found.file} imports package ${name}`);
      else if (only.length > 0 && !only.includes(found.name))
        wrong.push(`${found.file} speaks to ${name}; only ${only.join(', ')} may`);
    }
  }
  if (!OUTSIDE.includes(found.room)) {
    const code = found.text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
    for (const word of [
      'Math.random',
      'Date.now',
      'new Date',
      'console.',
      'process.',
      ...(IN_A_PAGE.includes(found.room) ? [] : ['document.', 'window.']),
    ]) {
      if (code.includes(word)) wrong.push(`${found.file} uses ${word}`);
    }
  }
  if (SAME_BITS.includes(found.room) && OF_THE_ENGINE.test(found.text))
    wrong.push(`${found.file} takes from the engine what num/elementary.ts has`);
  return wrong;
}

describe('the house', () => {
  const rooms = readdirSync(SRC, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'types')
    .map((entry) => entry.name);

  it('has no room that is not in the table, and none that is empty', () => {
    for (const room of rooms) {
      expect(TABLE, `room ${room}`).toHaveProperty(room);
      expect(filesOf(room).length, `files in ${room}`).toBeGreaterThan(0);
    }
  });

  it('lets each room import only what its row allows', () => {
    const all = rooms.flatMap((room) => filesOf(room));
    expect(all.length).toBeGreaterThan(30);
    expect(all.flatMap((found) => breaches(found))).toEqual([]);
  });

  it('speaks to each package in one file', () => {
    const speakers = new Map<string, string[]>();
    for (const found of rooms.flatMap((room) => filesOf(room))) {
      for (const name of new Set(importsOf(found.text))) {
        if (name.startsWith('.') || name.startsWith('node:')) continue;
        speakers.set(name, [...(speakers.get(name) ?? []), found.file]);
      }
    }
    for (const [name, files] of speakers) expect(files, `who imports ${name}`).toHaveLength(1);
  });

  it('has no file over 300 lines', () => {
    const long = rooms
      .flatMap((room) => filesOf(room))
      .filter(({ text }) => text.split('\n').length > 300)
      .map(({ file }) => file);
    expect(long).toEqual([]);
  });

  it('would notice a breach', () => {
    const planted: Found = {
      room: 'num',
      file: join('num', 'planted.ts'),
      name: 'planted.ts',
      text: "import { seatOf } from '../setup/seat.ts';\nimport fs from 'node:fs';\nimport z from 'zod';\nMath.random();",
    };
    expect(breaches(planted)).toHaveLength(4);
    const engines = { ...planted, room: 'setup', file: join('setup', 'planted.ts') };
    expect(breaches({ ...engines, text: 'Math.atan2(1, 2);' })).toHaveLength(1);
    expect(breaches({ ...engines, text: 'Math.sqrt(Math.max(1, 2));' })).toEqual([]);
  });
});
