import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { rs274Of } from '../../src/export/rs274.ts';
import { airCut } from '../../src/jig/program/air-cut.ts';
import { wayOf } from '../../src/jig/program/check.ts';
import type { Program } from '../../src/jig/program/program.ts';
import { all, boring, milling } from '../jig/program/some-programs.ts';
import { readRs274 } from './read-rs274.ts';
import { interpreted, rs274Missing } from './rs274-tool.ts';

const extremes = (numbers: readonly number[]): readonly number[] => [
  Math.min(...numbers),
  Math.max(...numbers),
];

function expectSafe(program: Program, text: string): void {
  const read = readRs274(text);
  expect(read.pauses).toBe(1);
  expect(read.endsStopped).toBe(true);
  expect(read.moves.length).toBeGreaterThan(10);
  expect(read.moves.at(-1)!.to.z).toBeCloseTo(program.safeMm, 3);
  for (const { fast, from, to, spindle, arc } of read.moves) {
    // Half a last digit of an inch program is 0.0001 mm.
    if (fast && (from.x !== to.x || from.y !== to.y))
      expect(Math.min(from.z!, to.z!)).toBeGreaterThan(program.safeMm - 2e-4);
    if (fast) expect(to.z).toBeGreaterThan(program.safeMm - 2e-4);
    if (program.spindle === 'stands still') expect(spindle).toBe(0);
    else if (!fast && to.z! < program.witness.at.z - 1e-3) expect(spindle).toBe(18000);
    if (arc !== null) expect(spindle).toBeGreaterThan(0);
  }
  const way = wayOf(program);
  for (const axis of ['x', 'y', 'z'] as const)
    extremes(read.moves.flatMap(({ to }) => to[axis] ?? [])).forEach((value, i) => {
      const arcs = program === boring && axis !== 'z' ? 4 : 1e-3;
      expect(Math.abs(value - extremes(way.map((p) => p[axis]))[i]!)).toBeLessThan(arcs);
    });
}

describe('a program for the router', () => {
  it('reads back as planned, safe at every move, in mm and in inches', () => {
    for (const program of all)
      for (const units of ['mm', 'inch'] as const) {
        const text = rs274Of(program, units);
        expect(readRs274(text).units).toBe(units);
        expectSafe(program, text);
      }
  });

  it('stays in the air with the spindle off as an air cut', () => {
    const air = airCut(milling);
    expectSafe(air, rs274Of(air, 'mm'));
    expect(
      Math.min(...readRs274(rs274Of(air, 'mm')).moves.flatMap(({ to }) => to.z ?? [])),
    ).toBeCloseTo(21, 6);
  });

  it('waits over the witness place, spindle off, before anything else', () => {
    const { moves } = readRs274(rs274Of(milling, 'mm'));
    const waits = moves.find((move) => !move.fast)!;
    expect(waits.spindle).toBe(0);
    expect(waits.to).toEqual(milling.witness.at);
    expect(waits.feedMmPerMin).toBe(300);
  });

  it('is the same text every time', () => {
    expect(rs274Of(milling, 'mm')).toBe(rs274Of(milling, 'mm'));
  });

  it('never lets a name become a move, whatever it holds', () => {
    const evil = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 120 }),
      fc.constantFrom(
        ')\nG0 Z-50 (',
        '%\nM3 S30000',
        ';G1 X0',
        '(MSG,\u2028G0 Z-9)',
        '#1=2',
        'O100 SUB',
        '\u0000\r\nM30',
        'é'.repeat(300),
      ),
    );
    const plain = JSON.stringify(readRs274(rs274Of(milling, 'mm')).moves);
    fc.assert(
      fc.property(evil, evil, evil, (a, b, c) => {
        const text = rs274Of(
          {
            ...milling,
            name: a,
            jobName: b,
            header: [c, a],
            cautions: [b],
            cutter: { ...milling.cutter, name: c },
            witness: { ...milling.witness, over: a },
            moves: [{ kind: 'note', words: b }, ...milling.moves],
          },
          'mm',
        );
        const read = readRs274(text);
        expect(JSON.stringify(read.moves)).toBe(plain);
        expect(read.comments.join('')).toMatch(/^[A-Za-z0-9 .-]+$/);
      }),
      { seed: 41, numRuns: 25 },
    );
  });

  it.skipIf(rs274Missing)(
    'is taken by the stand-alone interpreter of linuxcnc-uspace (Debian; skipped where missing)',
    () => {
      for (const program of [...all, airCut(boring)]) {
        const moves = interpreted(rs274Of(program, 'mm'));
        const own = readRs274(rs274Of(program, 'mm')).moves;
        expect(moves.map(({ fast }) => fast)).toEqual(own.map(({ fast }) => fast));
        moves.forEach(({ at }, i) => {
          const { x, y, z } = own[i]!.to;
          // It prints four decimals, and 0 for an axis that has not been moved yet.
          expect(Math.abs(at[0]! - (x ?? 0))).toBeLessThan(1e-4);
          expect(Math.abs(at[1]! - (y ?? 0))).toBeLessThan(1e-4);
          expect(Math.abs(at[2]! - z!)).toBeLessThan(1e-4);
        });
      }
    },
  );
});
