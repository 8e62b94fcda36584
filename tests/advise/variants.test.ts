import { describe, expect, it } from 'vitest';
import { gainOf } from '../../src/advise/estimate.ts';
import { editText, type Edit } from '../../src/job/edit.ts';
import { readJob } from '../../src/job/read.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { startPredicting } from '../../src/stackup/predicting.ts';
import { aBench, variantsFromDisk } from './a-bench.ts';

const MIDDLE: readonly Edit[] = [
  { path: ['zero', 'front-up', 'xy'], value: 'middle' },
  { path: ['zero', 'back-up'], value: { xy: 'middle', z: 'top' } },
];
const PLAIN: readonly Edit[] = [
  { path: ['stops', 'touch-height'], value: null },
  { path: ['stops', 'height'], value: 8 },
  { path: ['stops', 'side-touch'], value: { arm: [20, 120] } },
  { path: ['machine', 'lean'], value: '±0.1 per 200' },
];
const CALIPERED: readonly Edit[] = [{ path: ['blank', 'size', 0], value: '280 ±0.03' }];
const NOT_THERE: readonly Edit[] = [
  { path: ['stops', 'dowel', 'height'], value: null },
  { path: ['bed', 'lean-x'], value: 0 },
  { path: ['jig', 'template'], value: null },
];
const OTHER_NEED: readonly Edit[] = [{ path: ['needs', 0, 'within'], value: 0.4 }];

/** A job without the lines on which its figures stand. */
const withoutLines = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, one: unknown) => (key === 'line' ? 0 : one)));

describe('a variant', () => {
  const clock = variantsFromDisk('jigs/wall-clock.yaml');

  it.each([
    ['of nothing', []],
    ['of the zero', MIDDLE],
    ['of stops and machine', PLAIN],
    ['of the size', CALIPERED],
    ['of what is not there', NOT_THERE],
    ['of a need', OTHER_NEED],
    ['of all', [...MIDDLE, ...PLAIN, ...CALIPERED, ...OTHER_NEED]],
  ] as const)('%s is the job that its text gives', (_, edits) => {
    const quick = clock.read(edits);
    const bytes = new TextEncoder().encode(clock.text(edits));
    const slow = readJob({ name: clock.jobFile.name, bytes }, clock.files);
    expect(quick.ok && slow.ok).toBe(true);
    if (quick.ok && slow.ok)
      expect(withoutLines(quick.value.job)).toEqual(withoutLines(slow.value.job));
  });

  it('keeps the remarks of the file, but not those behind what it replaces', () => {
    const text = clock.text(PLAIN);
    expect(text).toContain('# places from the blank');
    expect(text).toContain('height: 8\n');
    expect(text).not.toContain('one button');
    expect(text).toContain(
      '# wall-clock.yaml with stops: {height: 8, side-touch: {arm: [20, 120]}}; machine: {lean: ±0.1 per 200}; take out stops: touch-height',
    );
  });

  it('is refused in words when it cannot be meant', () => {
    const bench = aBench(clock);
    const high = bench.tryOut([{ path: ['stops', 'touch-height'], value: 30 }]);
    expect(high).toMatchObject({
      kind: 'impossible',
      because: expect.stringContaining('above the edge') as string,
    });
    const need = bench.tryOut([
      { path: ['needs', 0, 'concentric'], value: ['shaft hole', 'no such'] },
    ]);
    expect(need).toMatchObject({ kind: 'impossible', because: 'no feature is called no such' });
  });

  it('leaves the file itself as it was', () => {
    clock.read([...PLAIN, ...CALIPERED]);
    const again = clock.read([]);
    expect(again.ok && again.value.job.blank.widthMm).toBe(280.5);
    const read = clock.read(MIDDLE);
    expect(read.ok && read.value.job.locating === 'stops' && read.value.job.stops.band.kind).toBe(
      'narrow',
    );
  });

  it('comes out as predict says, trial for trial', () => {
    const clockPlain = variantsFromDisk('jigs/wall-clock-plain.yaml');
    const variant = aBench(clockPlain, 2000, 3).tryOut(MIDDLE);
    if (variant.kind !== 'possible') throw new Error(variant.because);
    const misfit = misfitModel(variant.job);
    const sources = sourcesOf(variant.job, misfit.deviations);
    const under = startPredicting('clock', misfit, sources, { seed: 3, trials: 2000, digits: 4 });
    const good = [...variant.outcome.needs, null].map(() => 0);
    for (let block = 0; block < under.task.mostBlocks; block++)
      under.work(block).good.forEach((count, q) => (good[q]! += count));
    expect(good.map((count) => count / 2000)).toEqual([
      ...variant.outcome.needs.map(({ chance }) => chance.value),
      variant.outcome.all.value,
    ]);
  });
});

describe('a gain', () => {
  it('counts the trials that changed, with the standard error of their mean', () => {
    const before = Uint8Array.from([1, 0, 0, 1, 0, 0, 1, 1, 0, 0]);
    const after = Uint8Array.from([1, 1, 1, 0, 0, 1, 1, 1, 0, 0]);
    const { value, se } = gainOf(before, after);
    expect(value).toBeCloseTo(0.2, 12);
    const differences = [0, 1, 1, -1, 0, 1, 0, 0, 0, 0];
    const variance = differences.reduce((sum, d) => sum + (d - 0.2) ** 2, 0) / 10;
    expect(se).toBeCloseTo(Math.sqrt(variance / 10), 12);
  });

  it('is never nil with certainty', () => {
    const all = new Uint8Array(100).fill(1);
    expect(gainOf(all, all)).toEqual({ value: 0, se: 0.01 });
  });
});

describe('an edit in words', () => {
  it('reads as it is written in the file', () => {
    expect(editText({ path: ['zero', 'back-up', 'xy'], value: 'middle' })).toBe(
      'zero: {back-up: {xy: middle}}',
    );
    expect(editText({ path: ['stops', 'fence-touch'], value: [30, 250] })).toBe(
      'stops: {fence-touch: [30, 250]}',
    );
    expect(editText({ path: ['blank', 'size', 2], value: '18 ±0.03' })).toBe(
      'blank: {size: […, …, 18 ±0.03]}',
    );
    expect(editText({ path: ['stops', 'height'], value: null })).toBe('take out stops: height');
  });
});
