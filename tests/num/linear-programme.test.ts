import { describe, expect, it } from 'vitest';
import { solved } from '../../src/num/linear-programme.ts';
import { expectAsOtherLibrary } from './linear-programme-laws.ts';

describe('a linear programme', () => {
  it('is answered as an independent library answers it', async () => {
    expect(await expectAsOtherLibrary(41, 40)).toBeGreaterThan(5);
  });

  it('does not go in circles where the plain rule does', () => {
    // E. M. L. Beale, Naval Research Logistics Quarterly 2 (1955): cycles; best value 1/20. Value from memory.
    const answer = solved({
      gain: [3 / 4, -150, 1 / 50, -6],
      rows: [
        { of: [1 / 4, -60, -1 / 25, 9], is: 'at-most', value: 0 },
        { of: [1 / 2, -90, -1 / 50, 3], is: 'at-most', value: 0 },
        { of: [0, 0, 1, 0], is: 'at-most', value: 1 },
      ],
    });
    expect(answer).toMatchObject({ kind: 'best', value: expect.closeTo(0.05, 12) as number });
  });
});
