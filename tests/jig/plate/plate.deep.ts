import fc from 'fast-check';
import { describe, it } from 'vitest';
import { expectLawfulPlate } from './laws.ts';
import { somePlates } from './some-plates.ts';

describe('plates of any kind', () => {
  it('are closed, of the volume of their outlines, and let their pins through', async () => {
    await fc.assert(
      fc.asyncProperty(somePlates, async (plate) => {
        await expectLawfulPlate(plate);
      }),
      { seed: 52, numRuns: 2000 },
    );
  });
});
