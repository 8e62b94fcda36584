import fc from 'fast-check';
import { expect } from 'vitest';
import type { LinearProgramme } from '../../src/num/linear-programme.ts';
import { solved } from '../../src/num/linear-programme.ts';
import { otherLibrary } from './other-library.ts';

const figure = fc.integer({ min: -9, max: 9 });

const programme: fc.Arbitrary<LinearProgramme> = fc
  .record({ count: fc.integer({ min: 1, max: 7 }), rowCount: fc.integer({ min: 1, max: 7 }) })
  .chain(({ count, rowCount }) =>
    fc.record({
      gain: fc.array(figure, { minLength: count, maxLength: count }),
      rows: fc.array(
        fc.record({
          of: fc.array(figure, { minLength: count, maxLength: count }),
          is: fc.constantFrom('at-most' as const, 'at-most' as const, 'exactly' as const),
          value: fc.integer({ min: -20, max: 60 }),
        }),
        { minLength: rowCount, maxLength: rowCount },
      ),
    }),
  );

/** The programme in the words of the other library. */
function written({ gain, rows }: LinearProgramme): string {
  const sum = (of: readonly number[]): string =>
    of.map((value, k) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} x${k}`).join(' ');
  const lines = rows.map(
    ({ of, is, value }, k) => ` r${k}: ${sum(of)} ${is === 'at-most' ? '<=' : '='} ${value}`,
  );
  return ['Maximize', ` goal: ${sum(gain)}`, 'Subject To', ...lines, 'End'].join('\n');
}

/** Our answers are those of an independent library: best value, impossible, without end; how many had a best. */
export async function expectAsOtherLibrary(seed: number, numRuns: number): Promise<number> {
  const other = await otherLibrary();
  let best = 0;
  fc.assert(
    fc.property(programme, (one) => {
      const ours = solved(one);
      const theirs = other.solve(written(one));
      if (theirs.Status === 'Optimal') {
        best += 1;
        expect(ours.kind).toBe('best');
        if (ours.kind === 'best') {
          expect(ours.value).toBeCloseTo(theirs.ObjectiveValue, 6);
          expectKept(one, ours.x);
        }
      } else {
        // Without a best it may say impossible of what has no end: asked for any answer, it is right.
        const any = other.solve(written({ ...one, gain: one.gain.map(() => 0) }));
        expect(ours.kind).toBe(any.Status === 'Optimal' ? 'without-end' : 'impossible');
      }
    }),
    { seed, numRuns, endOnFailure: true },
  );
  return best;
}

function expectKept({ rows }: LinearProgramme, x: readonly number[]): void {
  for (const value of x) expect(value).toBeGreaterThan(-1e-7);
  for (const { of, is, value } of rows) {
    const sum = of.reduce((total, factor, k) => total + factor * x[k]!, 0);
    if (is === 'exactly') expect(sum).toBeCloseTo(value, 6);
    else expect(sum).toBeLessThan(value + 1e-6);
  }
}
