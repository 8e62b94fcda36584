// Every kind of program, read by our own reader and by an independent interpreter.
import { describe, expect, it } from 'vitest';
import { rs274Of } from '../../src/export/rs274.ts';
import { wayOf } from '../../src/jig/program/check.ts';
import { writtenClash } from '../../src/jig/program/read-back.ts';
import { readProgram } from '../../src/sweep/program/read.ts';
import { everyKind, wanted } from './every-program.ts';
import { interpreted, rs274Missing } from './rs274-tool.ts';

const answers = everyKind.map((job) => ({ job, ...wanted(job) }));
const programs = answers.flatMap(({ job, programs: all }) =>
  all.flatMap(({ cut, air }) => [cut.program, air].map((program) => ({ job, program, cut }))),
);

describe('every kind of program', () => {
  it('is made, none refused', () => {
    expect(answers.flatMap(({ refused }) => refused)).toEqual([]);
    expect([...new Set(programs.map(({ program }) => program.name))].sort()).toEqual(
      [
        'bore the dowel grid',
        'bore the dowel holes',
        'bore the pin holes',
        'combs in the waste, back up',
        'combs in the waste, front up',
        'cut the corner stop, near left from sheet',
        'cut the nest',
        'mill the stops',
        'skim the spoilboard',
        'test piece, back up',
        'test piece, front up',
      ].flatMap((name) => [name, `${name}, air cut`]),
    );
  });

  it('has in its head what a person must know', () => {
    for (const { program } of programs) {
      const head = rs274Of(program, 'mm').split('G21')[0]!;
      for (const wantedWord of ['For - ', 'On the bed - ', ' zero - ', 'Cutter - ', 'Cautions'])
        expect(head, program.name).toContain(wantedWord);
    }
  });

  it.each(['mm', 'inch'] as const)('reads back as planned, in %s', (units) => {
    for (const { job, program, cut } of programs) {
      const read = readProgram(rs274Of(program, units), { units });
      expect(writtenClash(job, program, cut.cutter, cut.bodies, read)).toBeNull();
    }
  });

  it.skipIf(rs274Missing)(
    'runs through the interpreter of linuxcnc-uspace: extents as planned, never fast below its safe height (Debian; skipped where missing)',
    () => {
      for (const { program } of programs) {
        // The tool ends with another code than 0 at its first error, and this call throws then.
        // Its first move, up, is told from the tool's own zero.
        const moves = interpreted(rs274Of(program, 'mm')).slice(1);
        const safeMm = program.safeMm - program.zeroHighMm;
        for (const { fast, at } of moves)
          if (fast) expect(at[2]!, program.name).toBeGreaterThan(safeMm - 1e-3);
        const way = wayOf(program);
        (['x', 'y', 'z'] as const).forEach((axis, k) => {
          const shift = axis === 'z' ? program.zeroHighMm : 0;
          const said = moves.map(({ at }) => at[k]! + shift);
          const planned = way.map((p) => p[axis]);
          for (const ends of [Math.min, Math.max]) {
            const off = Math.abs(
              said.reduce((a, b) => ends(a, b)) - planned.reduce((a, b) => ends(a, b)),
            );
            // Ends of arcs are told, not what they bulge to: half a hole less a cutter at most.
            const isRound = program.moves.some(({ kind }) => kind === 'arc') && axis !== 'z';
            expect(off, `${program.name} ${axis}`).toBeLessThan(isRound ? 2.1 : 1e-3);
          }
        });
      }
    },
    60_000,
  );
});
