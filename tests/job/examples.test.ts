import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assumptionsOf } from '../../src/job/assumptions.ts';
import { faultText } from '../../src/job/read.ts';
import { keyReference } from '../../src/job/schema/key-reference.ts';
import { jobSchema, schemaFiles, shopSchema } from '../../src/job/schema/published.ts';
import { newJobText, newShopText } from '../../src/job/starting.ts';
import { readFromDisk, readTexts } from './from-disk.ts';

const examples = [
  'chime-box',
  'clock-feet',
  'compass-cover',
  'enclosure-lid',
  'gauge-lid',
  'instrument-plate',
  'small-lids',
  'tray',
  'wall-clock',
  'wall-clock-plain',
].map((name) => `jigs/${name}.yaml`);
const jobFiles = [...examples, 'tests/job/every-shape.yaml'];
const shopFiles = ['jigs/shop.yaml', 'jigs/shop-inch.yaml', 'tests/job/every-shape-shop.yaml'];
const ajv = new Ajv({ strict: false });
const isJob = ajv.compile(jobSchema());
const isShop = ajv.compile(shopSchema());
const onDisk = (path: string): unknown => parse(readFileSync(path, 'utf8'));

describe('an example', () => {
  it.each(jobFiles)('%s reads without a fault', (path) => {
    const read = readFromDisk(path);
    expect(read.ok ? [] : read.faults.map(faultText)).toEqual([]);
  });

  it.each(examples)('%s reads without a note, but for the thin floor of the tray', (path) => {
    const read = readFromDisk(path);
    const notes = read.ok ? read.value.notes.map(({ message }) => message) : null;
    expect(notes).toEqual(
      path.includes('tray') ? [expect.stringMatching(/^the 4 mm that are left stand free/)] : [],
    );
  });

  it.each(examples)('%s says in its first line why it exists', (path) => {
    const [, why] = readFileSync(path, 'utf8').split('\n');
    expect(why).toMatch(/^# [A-Z].{40,}\.$/);
  });

  it('of every shape notes that three readings are few', () => {
    const read = readFromDisk('tests/job/every-shape.yaml');
    const notes = read.ok ? read.value.notes.map(({ message }) => message.split(' ')[0]) : [];
    expect(notes).toEqual(['the', 'bumps:']);
  });

  it('to start from reads without a fault or a note', () => {
    const read = readTexts(newJobText(), newShopText());
    expect(read.ok ? read.value.notes : read.faults.map(faultText)).toEqual([]);
  });
});

describe('the JSON Schema', () => {
  it('on disk is the one that is made from the reader', () => {
    for (const { name, text } of schemaFiles())
      expect(readFileSync(`jigs/schema/${name}`, 'utf8'), name).toBe(text);
  });

  it('lets every example pass', () => {
    for (const path of jobFiles)
      expect([path, isJob(onDisk(path)), isJob.errors]).toEqual([path, true, null]);
    for (const path of shopFiles)
      expect([path, isShop(onDisk(path)), isShop.errors]).toEqual([path, true, null]);
    expect(isJob(parse(newJobText()))).toBe(true);
    expect(isShop(parse(newShopText()))).toBe(true);
  });

  it('stops a misspelt key at every depth', () => {
    const job = readFileSync('jigs/wall-clock.yaml', 'utf8');
    for (const key of ['turn', 'depth', 'fence-touch', 'made', 'marked', 'within', 'pusher', 'xy'])
      expect([key, isJob(parse(job.replace(`${key}:`, `${key}x:`)))]).toEqual([key, false]);
    const shop = readFileSync('jigs/shop.yaml', 'utf8');
    for (const key of ['travel', 'lean', 'radius', 'thread', 'diameter', 'thick'])
      expect([key, isShop(parse(shop.replace(`${key}:`, `${key}x:`)))]).toEqual([key, false]);
  });

  it('says what most keys mean', () => {
    const described = JSON.stringify(jobSchema()).match(/"description"/g) ?? [];
    expect(described.length).toBeGreaterThan(80);
  });
});

describe('the key reference', () => {
  it('on disk is the one that is made from the schemas', () => {
    expect(readFileSync('jigs/KEYS.md', 'utf8')).toBe(keyReference());
  });

  it('has a row for every key of the examples', () => {
    const reference = keyReference();
    for (const key of ['front[ ].corner-radius', 'stops.corner.front-up', 'touch-off.< >.thick'])
      expect(reference).toContain(`\`${key}\``);
    // A row with nothing to say would be no help: each has a meaning, words, an example, or keys below it.
    expect(reference.match(/^\| .*\|$/gm)?.length).toBeGreaterThan(120);
  });
});

describe('what is assumed', () => {
  it('is told for the plain clock: only what neither file says', () => {
    const read = readFromDisk('jigs/wall-clock-plain.yaml');
    const assumed = read.ok ? assumptionsOf(read.value.job) : [];
    expect(assumed.map(({ what }) => what)).toEqual([
      'how square the left edge is to the lower',
      'left and right edges out of parallel',
      'lower and upper edges out of parallel',
      'crook of the edges',
      'bumps on the edges',
      'movement of the wood along X',
      'movement of the wood along Y',
      'thickness changing along X',
      'thickness changing along Y',
      'how far the middle stands over the edges',
      'the face on which the middle stands up',
      'chips under the blank',
      'fence turned',
      'side stop out of square to the fence',
      'how far a stop yields',
    ]);
    expect(assumed[0]).toEqual({
      what: 'how square the left edge is to the lower',
      text: '±0.3 per 200',
      because: 'edges: sawn; common practice, no source',
    });
  });

  it('includes the place on the bed and the machine when nothing is said of them', () => {
    const read = readTexts(newJobText(), newShopText());
    const assumed = read.ok ? assumptionsOf(read.value.job) : [];
    expect(assumed.map(({ what }) => what)).toContain(
      'where the front-up corner stands on the bed',
    );
    expect(assumed.map(({ what }) => what)).toContain('lean of the Y axis');
    expect(assumed.every(({ text, because }) => text !== '' && because !== '')).toBe(true);
  });
});
