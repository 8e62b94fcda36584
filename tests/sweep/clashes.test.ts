import { describe, expect, it } from 'vitest';
import { keepClearOf } from '../../src/sweep/keep-clear.ts';
import { readProgram } from '../../src/sweep/program/read.ts';
import { aJob, flat6, placed } from '../jig/a-job.ts';
import { expectClashesAsSampled, expectFeaturesAsProgram } from './clash-laws.ts';

describe('keeping clear', () => {
  it('finds every clash that sampling finds, and no other', () => {
    expect(expectClashesAsSampled(31, 40)).toBeGreaterThan(10);
  });

  it('finds the same for drilled holes as for the program that drills them', () => {
    expect(expectFeaturesAsProgram(32, 40)).toBeGreaterThan(8);
  });

  it('tells place, height, by how much, and the line', () => {
    const job = aJob();
    const text = 'G21 F600\nG0 X0 Y50 Z10\nG1 X100 Z-4\nG0 Z10\nM2\n';
    const read = readProgram(text, { units: 'mm' });
    const cuts = { by: 'program' as const, program: read, cutterOf: () => flat6 };
    const clamp = {
      name: 'clamp 1',
      lowMm: 24,
      highMm: 36,
      outline: [
        { x: 90, y: 40 },
        { x: 110, y: 40 },
        { x: 110, y: 60 },
        { x: 90, y: 60 },
      ],
    };
    const clear = keepClearOf(job, placed(job).frontUp, cuts);
    const [cutter] = clear([clamp], { overMm: 2, besideMm: 3 });
    expect(cutter).toEqual({
      placing: 'front-up',
      body: 'clamp 1',
      what: 'cutter',
      kind: 'strikes',
      at: { x: 100, y: 50 },
      heightMm: 20,
      shortMm: 18,
      during: { by: 'line', line: 3, lineCount: 2 },
    });
    // The nut hangs 30 above: 50 over a clamp of 36 is clear.
    expect(clear([clamp], { overMm: 2, besideMm: 3 }).map(({ what }) => what)).toEqual([
      'cutter',
      'dust shoe',
    ]);
  });
});
