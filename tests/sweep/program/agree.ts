import { expect } from 'vitest';
import { readProgram } from '../../../src/sweep/program/read.ts';
import type { Move } from '../../../src/sweep/program/program.ts';
import type { Reached } from './interpreter.ts';

/**
 * Our moves and the interpreter's go to the same places, in the same order; strokes up and down at one
 * place (pecks) count as one visit, of which the lowest and the last height are compared.
 */
export function expectSamePlaces(text: string, reached: readonly Reached[]): void {
  const program = readProgram(text, { units: 'mm' });
  expect(program.findings.filter(({ kind }) => kind !== 'beware')).toEqual([]);
  const ours = visits(program.moves.map(placed));
  const theirs = visits(reached);
  expect(ours.length).toBe(theirs.length);
  ours.forEach((our, k) => {
    const their = theirs[k]!;
    expect(our.kind).toBe(their.kind);
    for (const axis of ['x', 'y', 'z', 'lowZ'] as const)
      // Four decimals of an inch are 0.0025 mm.
      expect(Math.abs(our[axis] - their[axis])).toBeLessThan(0.003);
  });
}

const placed = ({ kind, arc, to }: Move): Reached => ({
  kind: arc === null ? kind : 'arc',
  ...to,
});

interface Visit extends Reached {
  readonly lowZ: number;
}

function visits(all: readonly Reached[]): readonly Visit[] {
  const made: Visit[] = [];
  for (const one of all) {
    const last = made.at(-1);
    const same =
      last !== undefined &&
      one.kind !== 'arc' &&
      last.kind !== 'arc' &&
      Math.hypot(one.x - last.x, one.y - last.y) < 0.004;
    if (!same) made.push({ ...one, lowZ: one.z });
    else made[made.length - 1] = { ...last, z: one.z, lowZ: Math.min(last.lowZ, one.z) };
  }
  return made;
}
