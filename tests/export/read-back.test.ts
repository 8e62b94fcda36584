import { describe, expect, it } from 'vitest';
import { rs274Of } from '../../src/export/rs274.ts';
import { airCut } from '../../src/jig/program/air-cut.ts';
import type { Program } from '../../src/jig/program/program.ts';
import { writtenClash } from '../../src/jig/program/read-back.ts';
import { bodiesOf } from '../../src/jig/stops.ts';
import { readProgram } from '../../src/sweep/program/read.ts';
import { long6 } from '../jig/a-job.ts';
import { all, milledJob, milling, partsOf } from '../jig/program/some-programs.ts';

const bodies = partsOf(milledJob).flatMap(bodiesOf);

const clashOf = (program: Program, text: string, standing = bodies) =>
  writtenClash(milledJob, program, long6, standing, readProgram(text, { units: 'mm' }));

describe('the written text of a program, read back', () => {
  it('is sound for every program, its air cut, and both units', () => {
    for (const program of all)
      for (const one of [program, airCut(program)])
        for (const units of ['mm', 'inch'] as const)
          expect(clashOf(one, rs274Of(one, units), program === milling ? bodies : [])).toBeNull();
  });

  const text = rs274Of(milling, 'mm');
  const dive = /^G1 Z10( F600)?$/m;

  it.each([
    ['a line that nobody understands', text.replace('G17', 'G68 X1'), /has in line \d+: G68/],
    ['a fast move into the bed', text.replace(dive, 'G0 Z10'), /goes fast below its safe height/],
    ['a place that is off', text.replaceAll(/ X277\b/g, ' X270'), /off its plan along X/],
    [
      'a word in inches',
      text.replace('G21', 'G20'),
      /off its plan along X|beyond the travel|more than the/,
    ],
  ])('is refused for %s', (_what, changed, because) => {
    expect(changed).not.toBe(text);
    expect(clashOf(milling, changed)?.because).toMatch(because);
  });

  it('is refused when something stands in its way that the plan did not know', () => {
    const clamp = {
      name: 'strap',
      outline: [
        { x: 26, y: 6 },
        { x: 34, y: 6 },
        { x: 34, y: 14 },
        { x: 26, y: 14 },
      ],
      lowMm: 0,
      highMm: 40,
    };
    expect(clashOf(milling, text, [...bodies, clamp])?.because).toMatch(/would strike the strap/);
  });
});
