import fc from 'fast-check';
import { expect } from 'vitest';
import { readProgram } from '../../../src/sweep/program/read.ts';
import { aProgram } from './a-program.ts';

const word = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.constantFrom('G0', 'G1', 'G2', 'G3', 'G81', 'G91', 'G20', 'M2', 'F9'),
  },
  {
    weight: 6,
    arbitrary: fc
      .tuple(
        fc.constantFrom(...['X', 'Y', 'Z', 'I', 'J', 'K', 'R', 'Q', 'L', 'P', 'T', 'S', 'N', 'H']),
        fc.integer({ min: -30, max: 30 }),
      )
      .map(([l, v]) => `${l}${v}`),
  },
  { weight: 2, arbitrary: fc.string({ maxLength: 6 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('(', ')', ';', '%', '/', '#1', '[2]', 'G92', 'G53', 'G28', '\u0000'),
  },
);
const line = fc.array(word, { maxLength: 6 }).map((words) => words.join(' '));
const anything = fc.oneof(
  fc.array(line, { maxLength: 20 }).map((lines) => lines.join('\n')),
  fc
    .array(line, { maxLength: 20 })
    .map((lines) => ['G21 F100', 'G0 X0 Y0 Z5', ...lines].join('\n')),
  fc.string({ maxLength: 300, unit: 'binary' }),
);

/** Whatever the text is, an answer comes, its numbers are finite, and a line with places is told or gone. */
export function expectAnswers(seed: number, numRuns: number): number {
  let moved = 0;
  fc.assert(
    fc.property(anything, (text) => {
      const program = readProgram(text, { units: 'mm' });
      moved += program.moves.length;
      for (const { from, to, arc } of program.moves) {
        for (const spot of [from, to])
          if (spot !== null) expect(Number.isFinite(spot.x + spot.y + spot.z)).toBe(true);
        if (arc !== null) expect(Number.isFinite(arc.sweepRad + arc.startRadiusMm)).toBe(true);
      }
      const told = new Set([
        ...program.moves.map((move) => move.line),
        ...program.findings.map((finding) => finding.line),
      ]);
      const over = program.findings.find(({ message }) => message.includes('stands after'));
      text.split('\n').forEach((one, k) => {
        const bare = one.replace(/\([^()]*\)/g, '').replace(/;.*/, '');
        const ended = over !== undefined && k + 1 >= over.line;
        const isComment = one.includes('(') || one.includes(';') || one.includes('%');
        const setsZero = /G\s*9\s*2/i.test(bare);
        if (/[XYZ]\s*[-+]?\d/i.test(bare) && !ended && !isComment && !setsZero)
          expect(told.has(k + 1), `line ${k + 1}: ${one}`).toBe(true);
      });
    }),
    { seed, numRuns },
  );
  return moved;
}

/** A line of nonsense put anywhere into a good program is found, at its line. */
export function expectPlantedFound(seed: number, numRuns: number): void {
  const nonsense = fc.constantFrom('G1 X1 W2', 'G5 X1', 'hello', 'X#4', '$H', 'G1 X..', 'M999');
  fc.assert(
    fc.property(aProgram, nonsense, fc.nat(), (text, planted, where) => {
      const lines = text.split('\n');
      const at = where % (lines.length - 2);
      lines.splice(at, 0, planted);
      const { findings, isSound } = readProgram(lines.join('\n'), { units: 'mm' });
      expect(isSound).toBe(false);
      expect(
        findings.some((found) => found.line === at + 1 && found.kind === 'not-understood'),
      ).toBe(true);
    }),
    { seed, numRuns },
  );
}
