// An independent interpreter of RS-274 and our reader go to the same places.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aProgram } from './a-program.ts';
import { expectSamePlaces } from './agree.ts';
import { interpreted, interpreterIsThere, reachedIn } from './interpreter.ts';

describe('an independent interpreter', () => {
  it.skipIf(!interpreterIsThere())('reads 300 programs as we do', () => {
    let places = 0;
    fc.assert(
      fc.property(aProgram, (text) => {
        const reached = reachedIn(interpreted(text));
        places += reached.length;
        expectSamePlaces(text, reached);
      }),
      { seed: 20, numRuns: 300 },
    );
    expect(places).toBeGreaterThan(3000);
  });
});
