import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../src/sweep/program/read.ts';
import { expectAnswers, expectPlantedFound } from './fuzz-laws.ts';

describe('any text at all', () => {
  it('gets an answer, and no line with places goes untold', () => {
    expect(expectAnswers(5, 400)).toBeGreaterThan(50);
  });

  it('with nonsense in it is found out, at the line of the nonsense', () => {
    expectPlantedFound(6, 60);
  });

  it('is read at 200 000 lines with its progress told', () => {
    const lines = Array.from({ length: 200_000 }, (_, k) => `G1 X${k % 300} Y${(k * 7) % 180} Z-1`);
    const told: number[] = [];
    const program = readProgram(`G21 G0 X0 Y0 Z5 F600\n${lines.join('\n')}\nM2\n`, {
      units: 'mm',
      onLines: (done) => told.push(done),
    });
    expect(program.moves).toHaveLength(200_001);
    expect(program.isSound).toBe(true);
    expect(told).toHaveLength(20);
  });
});
