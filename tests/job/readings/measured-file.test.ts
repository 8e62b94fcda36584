import { describe, expect, it } from 'vitest';
import { faultText, noteText } from '../../../src/job/fault.ts';
import { readJob } from '../../../src/job/read.ts';
import {
  measuredName,
  readMeasured,
  type MeasuredHeights,
  type MeasuredSource,
} from '../../../src/job/readings/measured-file.ts';
import { measuredText } from '../../../src/job/readings/measured-text.ts';
import { JOB, otherwise, SHOP } from '../sound.ts';

const LEAN: MeasuredSource = {
  of: 'machine.lean',
  value: 0.12 / 200,
  sd: 0.02 / 200,
  dof: 9,
  measured: '2026-11-20',
  because: 'two diagonals: "near" and far',
  was: '±0.3 per 200',
};
const BED: MeasuredSource = {
  ...LEAN,
  of: 'bed.lean-x',
  value: -0.05 / 200,
  dof: Infinity,
  was: '±0.2 per 200',
};

const bytes = (text: string) => new TextEncoder().encode(text);
const readWith = (measured: string, shop = SHOP, job = JOB) =>
  readJob(
    { name: 'job.yaml', bytes: bytes(job) },
    new Map([
      ['shop.yaml', bytes(shop)],
      ['shop.measured.yaml', bytes(measured)],
    ]),
  );
const soundWith = (measured: string, shop = SHOP, job = JOB) => {
  const read = readWith(measured, shop, job);
  if (!read.ok) throw new Error(read.faults.map(faultText).join('\n'));
  return read.value;
};

describe('the measured file', () => {
  it('is read back as it was written, beside whatever the shop file is called', () => {
    const text = measuredText([], [LEAN, BED]);
    const read = readMeasured({ name: 'm.yaml', bytes: bytes(text) });
    expect(read.faults).toEqual([]);
    expect(read.sources.map(({ of }) => of)).toEqual(['bed.lean-x', 'machine.lean']);
    const lean = read.sources[1]!;
    expect(lean).toMatchObject({ because: LEAN.because, was: LEAN.was, dof: 9 });
    expect(lean.value).toBeCloseTo(LEAN.value, 9);
    expect(read.sources[0]!.dof).toBe(Infinity);
    expect(measuredName('shops/garage.yml')).toBe('shops/garage.measured.yaml');
    const newer = { ...LEAN, value: 0, measured: '2026-12-01' };
    expect(measuredText(read.sources, [newer])).toContain('value: 0 per 200');
    expect(measuredText(read.sources, [newer])).toContain('of: bed.lean-x');
  });

  it('stands in for what was assumed, and the job counts with it', () => {
    const { job, notes } = soundWith(measuredText([], [LEAN, BED]));
    expect(notes).toEqual([]);
    const { lean } = job.shop.machine;
    expect(lean).toMatchObject({
      distribution: { kind: 'scaled-t', dof: 9 },
      recurs: 'shop',
      origin: { kind: 'stated', file: 'shop.measured.yaml' },
    });
    expect(lean.text).toBe('0.12 per 200, sd 0.02 per 200, measured 2026-11-20');
    expect(job.shop.bed.leanX.distribution).toMatchObject({ kind: 'normal' });
    expect(job.shop.bed.leanY.origin.kind).toBe('assumed');
  });

  it('gives way to a shop file that says something else by now, and to the job', () => {
    const measured = measuredText([], [LEAN]);
    const stated = (text: string) => otherwise(SHOP, '  travel:', `  lean: ${text}\n  travel:`);
    expect(
      soundWith(measured, stated('±0.3 per 200')).job.shop.machine.lean.distribution.kind,
    ).toBe('scaled-t');
    const edited = soundWith(measured, stated('±0.1 per 200'));
    expect(edited.job.shop.machine.lean.text).toBe('±0.1 per 200');
    expect(edited.notes.map(noteText)).toEqual([
      'shop.measured.yaml:5:1: machine.lean was measured when the shop file said ±0.3 per 200; it says ±0.1 per 200 by now, and that counts',
    ]);
    const own = soundWith(measured, SHOP, `${JOB}machine: {lean: ±0.05 per 200}\n`);
    expect(own.job.shop.machine.lean.text).toBe('±0.05 per 200');
    expect(own.notes).toEqual([]);
  });

  it('does not count for a bed that was re-surfaced since', () => {
    const shop = otherwise(SHOP, 'bed:', 'bed:\n  resurfaced: 2026-11-21');
    const { job, notes } = soundWith(measuredText([], [LEAN, BED]), shop);
    expect(job.shop.bed.leanX.origin.kind).toBe('assumed');
    expect(job.shop.machine.lean.distribution.kind).toBe('scaled-t');
    expect(notes.map(noteText)[0]).toContain('before the board was re-surfaced on 2026-11-21');
  });

  it.each([
    [
      'of: machine.lean',
      'of: machine.leen',
      /5:9: machine\.leen is not measured; did you mean machine\.lean\?/,
    ],
    ['value: 0.12 per 200', 'value: 0.12', /6:12: value 0\.12 is not a slope/],
    ['measured: 2026-11-20', 'measured: 2026-02-30', /2026-02-30 is not a date/],
    ['sd: 0.02 per 200', 'sd: -0.02 per 200', /sd -0\.02 per 200 is not a slope of 0 or more/],
    ['    was', '    wos', /the key wos is not known; did you mean was\?/],
    ['dof: 9', 'dof: 0', /dof 0 is below 1/],
  ])('says what is wrong when %s is written %s', (from, to, message) => {
    const read = readWith(otherwise(measuredText([], [LEAN]), from, to));
    expect(read.ok ? [] : read.faults.map(faultText).join('\n')).toMatch(message);
  });
});

describe('heights of the bed in the measured file', () => {
  const LEVEL: MeasuredSource = { ...BED, value: 0 };
  const THREE: readonly MeasuredSource[] = [
    { ...BED },
    { ...LEVEL, of: 'bed.lean-y' },
    { ...LEVEL, of: 'bed.unevenness', was: '±0.05' },
  ];
  const HEIGHTS: MeasuredHeights = {
    points: [
      [50, 50, 0],
      [550, 50, 0.1],
      [50, 350, -0.05],
      [550, 350, 0.12],
      [300, 200, 0.2],
    ].map(([x, y, heightMm]) => ({ at: { x: x!, y: y! }, heightMm: heightMm! })),
    gaugeSdMm: 0.006,
    unevenSdMm: 0.08,
    reachMm: 250,
    measured: '2026-11-20',
    because: '5 heights',
    was: 'three figures',
  };

  it('are read back as they were written, and stand in for lean and unevenness', () => {
    const text = measuredText([], THREE, HEIGHTS);
    const { heights, faults } = readMeasured({ name: 'm.yaml', bytes: bytes(text) });
    expect(faults).toEqual([]);
    expect(heights).toMatchObject(HEIGHTS);
    const { bed } = soundWith(text).job.shop;
    expect(bed.heights!.points).toHaveLength(5);
    expect(bed.leanX.distribution.kind).toBe('exactly');
  });

  it('count no longer when the shop says something else of the bed, or the board was re-surfaced', () => {
    const text = measuredText([], THREE, HEIGHTS);
    const said = (line: string): string => otherwise(SHOP, 'bed:\n', `bed:\n  ${line}\n`);
    const other = soundWith(text, said('lean-x: ±0.1 per 200'));
    expect(other.job.shop.bed.heights).toBeUndefined();
    expect(other.notes.map(noteText).join()).toMatch(/says ±0\.1 per 200 by now/);
    const skimmed = said('resurfaced: 2026-11-21');
    expect(soundWith(text, skimmed).job.shop.bed.heights).toBeUndefined();
  });

  it('are refused when they fix no bed', () => {
    const few = { ...HEIGHTS, points: HEIGHTS.points.slice(0, 3) };
    const faultsOf = (heights: MeasuredHeights): string =>
      readMeasured({ name: 'm.yaml', bytes: bytes(measuredText([], THREE, heights)) })
        .faults.map(faultText)
        .join();
    expect(faultsOf(few)).toMatch(/m\.yaml:\d+:1: 3 heights are too few for a bed/);
    const line = HEIGHTS.points.map((one, k) => ({ ...one, at: { x: 10 * k, y: 20 * k } }));
    expect(faultsOf({ ...HEIGHTS, points: line })).toMatch(/on one line/);
  });
});
