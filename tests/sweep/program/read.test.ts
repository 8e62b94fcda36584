import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { placesAlong } from '../../../src/sweep/program/along.ts';
import { readProgram } from '../../../src/sweep/program/read.ts';
import { expectSamePlaces } from './agree.ts';
import { reachedIn } from './interpreter.ts';

const read = (...lines: string[]) => readProgram(`${lines.join('\n')}\n`, { units: 'mm' });
/** After lines that make everything known; findings of the first two lines are left out. */
const after = (...lines: string[]) => {
  const program = read('G21 G90 G17 F500', 'G0 X0 Y0 Z0', ...lines, 'M2');
  return { ...program, found: program.findings.filter(({ line }) => line > 2) };
};
const ends = (program: ReturnType<typeof read>) =>
  program.moves.map(({ to }) => [to.x, to.y, to.z].map((v) => Number(v.toFixed(4))));

describe('a program', () => {
  it('goes where an independent interpreter says it goes (recorded answers)', () => {
    // Recorded from the stand-alone interpreter of Debian's linuxcnc-uspace 2.9.0.
    const folder = join(import.meta.dirname, 'recorded');
    const programs = readdirSync(folder).filter((name) => name.endsWith('.ngc'));
    expect(programs.length).toBe(8);
    for (const name of programs) {
      const words = readFileSync(join(folder, name.replace('.ngc', '.txt')), 'utf8');
      expectSamePlaces(readFileSync(join(folder, name), 'utf8'), reachedIn(words));
    }
  });

  it('is read whatever its blanks and capitals are', () => {
    // RS274/NGC: `G0X +0. 12 34Y 7` is the same as `G0 x+0.1234 Y7`.
    expect(ends(after('G0X +0. 12 34Y 7'))).toEqual(ends(after('g0 x+0.1234 Y7')));
    expect(ends(after('G0X +0. 12 34Y 7')).at(-1)).toEqual([0.1234, 7, 0]);
  });

  it('drills as the controller’s manual says', () => {
    // RS274/NGC, from (1, 2, 3): G81 absolute, and three holes relative.
    const one = after('G0 X1 Y2 Z3', 'G90 G98 G81 X4 Y5 Z1.5 R2.8');
    expect(ends(one).slice(2)).toEqual([
      [4, 5, 3],
      [4, 5, 2.8],
      [4, 5, 1.5],
      [4, 5, 3],
    ]);
    const three = after('G0 X1 Y2 Z3', 'G91 G98 G81 X4 Y5 Z-0.6 R1.8 L3');
    const bottoms = three.moves.filter(({ kind }) => kind === 'feed').map(({ to }) => to);
    expect(bottoms.map(({ x, y }) => [x, y])).toEqual([
      [5, 7],
      [9, 12],
      [13, 17],
    ]);
    for (const { z } of bottoms) expect(z).toBeCloseTo(4.2, 12);
    expect(three.moves.at(-1)!.to.z).toBeCloseTo(4.8, 12);
  });

  it('takes arcs by the controller’s rule, and no others', () => {
    const good = after('G2 X1 Y1 I1 F10', 'G2 X0 Y1 I1 J0.5 F25', 'G3 X0 Y0 I1 J-0.5 F25');
    expect(good.found.filter(({ line }) => line === 3)).toEqual([]);
    // From (0, 0) radii 5 and 13.89: refused.
    const bad = after('G17 G2 X10 Y16 I3 J4 Z-1');
    expect(bad.found).toEqual([
      {
        line: 3,
        kind: 'wrong',
        message: "the arc's radius is 5.000 mm at its start and 13.892 mm at its end",
      },
    ]);
    expect(bad.isSound).toBe(false);
    // 0.4 mm of 1000 is less than a thousandth; 0.6 mm is more than 0.5.
    expect(after('G2 X2000.4 Y0 I1000').isSound).toBe(true);
    expect(after('G2 X2000.6 Y0 I1000').isSound).toBe(false);
    expect(after('G2 X20.004 Y0 I10').isSound).toBe(true);
    expect(after('G2 X20.012 Y0 I10').isSound).toBe(false);
  });

  it('goes round the right way, all the way', () => {
    const quarter = after('G1 X10', 'G3 X0 Y10 I-10').moves.at(-1)!;
    const places = placesAlong(quarter, 0.001);
    for (const { x, y } of places) {
      expect(Math.hypot(x, y)).toBeCloseTo(10, 9);
      expect(Math.min(x, y)).toBeGreaterThan(-1e-9);
    }
    const round = placesAlong(after('G1 X10', 'G2 I-10').moves.at(-1)!, 0.001);
    expect(Math.min(...round.map(({ x }) => x))).toBeCloseTo(-10, 2);
    expect(round[1]!.y).toBeLessThan(0);
    const long = placesAlong(after('G1 X10', 'G3 X0 Y10 R-10').moves.at(-1)!, 0.001);
    expect(Math.max(...long.map(({ x, y }) => x + y))).toBeCloseTo(20 + 10 * Math.SQRT2, 2);
  });

  it('reads inches, and a unit that changes half-way with a warning', () => {
    expect(ends(read('G20 G0 X1 Y0 Z0', 'M2'))).toEqual([[25.4, 0, 0]]);
    const { found, moves } = after('G20 G1 X1 F10');
    expect(moves.at(-1)).toMatchObject({ to: { x: 25.4 }, feedMmPerMin: 254 });
    expect(found[0]!.message).toBe('the units change in the middle of the program');
  });

  it('keeps G92 and other zeros apart, and says so', () => {
    const shifted = after('G0 X10', 'G92 X0', 'G0 X5', 'G92.1', 'G0 X5');
    expect(ends(shifted).slice(1)).toEqual([
      [10, 0, 0],
      [15, 0, 0],
      [5, 0, 0],
    ]);
    expect(shifted.found[0]!.message).toContain('G92 moves the zero');
    const other = after('G55', 'G0 X1 Y1 Z1');
    expect(other.moves.at(-1)!.zero).toBe('G55');
    expect(other.found.map(({ message }) => message)[0]).toContain('G55 counts from another zero');
  });

  it('ends at M2 or at the second %, and says what stands after it', () => {
    const done = read('%', 'G21 G0 X1 Y1 Z1', '%', 'G0 X99');
    expect(done.moves).toHaveLength(1);
    expect(done.findings.at(-1)).toMatchObject({ line: 4, kind: 'beware' });
    expect(read('%', 'G21 G0 X1 Y1 Z1').isSound).toBe(false);
    expect(read('G21 G0 X1 Y1 Z1').findings.at(-1)!.message).toContain('no end');
  });

  it.each([
    ['G1 X1 E5', 'not-understood', 'E is not a word of a three-axis router'],
    ['O100 sub', 'not-understood', 'S stands without a number'],
    ['O100', 'not-understood', 'O is a subprogram or its name'],
    ['#1=5', 'not-understood', '"#" is not a word of a program'],
    ['G1 X[1+2]', 'not-understood', 'X takes a parameter or a sum'],
    ['G1 X#1', 'not-understood', 'X takes a parameter or a sum'],
    ['G41 D1', 'not-understood', 'G41 is not known here'],
    ['G10 L2 P1 X0', 'not-understood', 'G10 is not known here'],
    ['G38.2 Z-10', 'not-understood', 'G38.2 is not known here'],
    ['M98 P1', 'not-understood', 'M98 is not known here'],
    ['G1.5 X1', 'not-understood', 'G1.5 is not known here'],
    ['G18 G81 X1 Z-1 R1', 'not-understood', 'G81 in another plane than G17'],
    ['G1 X1e3', 'not-understood', 'E is not a word'],
    ['G1 X1.2.3', 'not-understood', 'X has a number with two points'],
    ['G1 X--1', 'not-understood', 'X stands without a number'],
    ['G1 X99999999', 'not-understood', 'no machine here can mean'],
    ['G1 X1 (never closed', 'wrong', 'a remark is opened with ( and not closed'],
    ['G1 G2 X1 I1', 'wrong', 'two codes of one kind (motion): G1 and G2'],
    ['G1 X1 X2', 'wrong', 'X is there twice'],
    ['G1 X1 I2', 'wrong', 'I is used by nothing in this line'],
    ['G2 X1', 'wrong', 'the arc has neither a centre nor a radius'],
    ['G2 X5 R1', 'wrong', 'R 1 is too small for ends 5 mm apart'],
    ['G2 R1', 'wrong', 'G2 has no places'],
    ['G2 X0 Y0 R1', 'wrong', 'ends where it starts'],
    ['G2 X5 I2.5 R2.5', 'wrong', 'both R and a centre'],
    ['G90.1 G2 X5 I2.5', 'wrong', 'under G90.1 the arc needs both words'],
    ['G2 X5 K1', 'wrong', 'K has no place in G2 in this plane'],
    ['G80 X5', 'wrong', 'G80 ends a cycle and moves nothing'],
    ['G81 X1 Z-1', 'wrong', 'G81 needs an R'],
    ['G83 X1 Z-1 R1', 'wrong', 'G83 needs a Q above 0'],
    ['G81 X1 Z5 R1', 'wrong', 'R is below Z'],
    ['G28 G1 X1', 'wrong', 'G28 and G1 both want the places'],
    ['M6', 'wrong', 'no T has named one'],
    ['F-5', 'wrong', 'the feed -5 is negative'],
    ['G28', 'beware', 'G28 goes to a place that the machine keeps'],
    ['G53 G0 Z0', 'beware', 'G53 counts from the machine itself'],
    ['/G1 X5', 'beware', 'a machine may leave it out'],
    ['G43 H1', 'beware', 'G43 sets a tool length'],
  ] as const)('says of %s that it is %s: %s', (line, kind, message) => {
    const { found, isSound } = after(line);
    expect(found[0]).toMatchObject({ line: 3, kind });
    expect(found[0]!.message).toContain(message);
    expect(isSound).toBe(kind === 'beware');
  });

  it('does not cut from nowhere, without a feed, or without a way to go', () => {
    expect(read('G21 G1 X1 Y1 F100', 'M2').findings[0]!.message).toContain('where Z is');
    expect(read('G21 G0 X1 Y1 Z1', 'G1 X2', 'M2').findings.at(-1)!.message).toContain('feed');
    expect(read('X1 Y1', 'M2').findings[0]!.message).toContain('nothing (G0, G1, G2, G3)');
    expect(read('').findings.at(-1)).toMatchObject({ line: 1, kind: 'wrong' });
  });
});
