import { describe, expect, it } from 'vitest';
import { faultText } from '../../src/job/fault.ts';
import { readReadings } from '../../src/job/readings/readings-file.ts';
import { pieceReadOf } from '../../src/measure/piece-readings.ts';
import { schemeChanges, schemeOf } from '../../src/measure/scheme.ts';
import { webField, type Web } from '../../src/measure/webs.ts';
import { ok } from '../../src/num/result.ts';
import { plainJob } from '../setup/plain-job.ts';

const LINES = [
  '{along: x, at: [20, 4], t1: 12.07, t2: 11.75}',
  '{along: x, at: [260, 4], t1: [12.06, 12.08], t2: 11.77}',
  '{along: x, at: [140, 176], t1: 11.99, t2: 11.84}',
  '{along: y, at: [4, 30], t1: 11.86, t2: 11.97}',
];

function read(lines: readonly string[], more = '') {
  const text = `flipwright-readings: 1\ntest-piece:\n  gauge: digital caliper\n${more}  turns:\n    - combs:\n${lines.map((line) => `        - ${line}\n`).join('')}`;
  const file = readReadings(
    { name: 'r.yaml', bytes: new TextEncoder().encode(text) },
    '2026-11-25',
    () => ok({}),
  );
  if (!file.ok) return { faults: file.faults.map(faultText), piece: null };
  const { raw, context } = file.value;
  const piece = pieceReadOf(context, raw['test-piece']!, plainJob());
  return { faults: context.faults.map(faultText), piece };
}

describe('readings of a test piece', () => {
  it('come in with the mean of repeats and what the gauge allows', () => {
    const { faults, piece } = read(LINES);
    expect(faults).toEqual([]);
    const [first, second] = piece!.turns[0]!.combs;
    expect(first).toMatchObject({ along: 'x', at: { x: 20, y: 4 }, t1Mm: 12.07, t2Mm: 11.75 });
    // DIN 862 up to 100 mm: 0.02 either way, rectangular.
    expect(first!.sdMm).toBeCloseTo(0.02 / Math.sqrt(3), 9);
    expect(second!.t1Mm).toBeCloseTo(12.07, 9);
    expect(second!.sdMm).toBeGreaterThan(first!.sdMm);
    expect(piece).toMatchObject({ wallMm: 12, webMm: 4, cutter: null });
  });

  it.each([
    ['t1: 12.07', 't1: 22.07', /r\.yaml:6:\d+: a wall of 22\.07 mm is nowhere near the 12 mm/],
    [
      't1: 12.07',
      't1: 12.37',
      /the two walls of this comb come to 24\.12 mm, those of the others to 23\.8\d mm/,
    ],
    ['[20, 4]', '[320, 4]', /320, 4 is not on the blank of 280 by 180/],
    ['t1: 12.07', 't1: []', /t1 has no reading/],
    ['t1: 12.07', 't1: abc', /abc/],
    ['along: x', 'along: z', /along/],
  ])('with %s written %s are refused with their line', (from, to, message) => {
    const { faults } = read([LINES[0]!.replace(from, to), ...LINES.slice(1)]);
    expect(faults.join('\n')).toMatch(message);
    for (const fault of faults) expect(fault).toMatch(/^r\.yaml:\d+:\d+: /);
  });

  it('say what is wrong with the file itself', () => {
    expect(read(LINES, '  cuter: flat 6\n').faults.join()).toMatch(
      /cuter is not known; did you mean cutter/,
    );
    const bytes = new TextEncoder().encode('flipwright-readings: 1\nmeasured: 2026-12-01\n');
    const late = readReadings({ name: 'r.yaml', bytes }, '2026-11-25', () => ok({}));
    expect(late.ok ? [] : late.faults.map(faultText).join()).toMatch(
      /measured 2026-12-01 is after today/,
    );
  });
});

describe('webs at the corners', () => {
  const web = (x: number, y: number, webMm: number): Web => ({ at: { x, y }, webMm, sdMm: 0.01 });
  it('tell level, leans and twist apart, exactly', () => {
    const at = (x: number, y: number) =>
      web(
        x,
        y,
        4 +
          0.1 +
          0.001 * (x - 140) -
          0.0005 * (y - 90) +
          0.02 * ((x - 140) / 132) * ((y - 90) / 82),
      );
    const field = webField([at(8, 8), at(272, 8), at(8, 172), at(272, 172)], 4)!;
    expect(field.level.value).toBeCloseTo(0.1, 12);
    expect(field.perX!.value).toBeCloseTo(0.001, 12);
    expect(field.perY!.value).toBeCloseTo(-0.0005, 12);
    expect(field.twistMm!.value).toBeCloseTo(0.04, 12);
    // Four readings of one level: half the sd of one.
    expect(field.level.sd).toBeCloseTo(0.005, 12);
  });

  it('tell no more than there are', () => {
    expect(webField([], 4)).toBeNull();
    const one = webField([web(10, 10, 4.05)], 4)!;
    expect(one).toMatchObject({ perX: null, perY: null, twistMm: null });
    expect(one.level.value).toBeCloseTo(0.05, 12);
    expect(webField([web(0, 0, 4), web(100, 0, 4.1)], 4)!.perX!.value).toBeCloseTo(0.001, 12);
  });
});

describe('what a correction holds for', () => {
  it('is the same job only, and says what was changed', () => {
    const job = plainJob();
    expect(schemeChanges(schemeOf(job), schemeOf(plainJob()))).toEqual([]);
    const other = plainJob({
      stops: { ...job.stops, band: { kind: 'plain', heightMm: 10 } },
      blank: { ...job.blank, thickMm: 20 },
      zero: {
        ...job.zero,
        backUp: { ...job.zero.backUp, xy: { kind: 'kept', how: 're-homed', extra: null } },
      },
    });
    expect(schemeChanges(schemeOf(job), schemeOf(other))).toEqual([
      { key: 'thickness', was: '24', is: '20' },
      { key: 'height', was: 'stop 8 high', is: 'stop 10 high' },
      { key: 'back-up zero', was: 'kept, held', is: 'kept, re-homed' },
    ]);
  });
});
