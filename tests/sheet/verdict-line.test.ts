import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { verdictLine } from '../../src/sheet/verdict-line.ts';
import { clock } from './a-job.ts';
import { predictionFor } from './a-prediction.ts';

describe('the verdict', () => {
  it('names the least sure need when all are good enough', () => {
    expect(verdictLine(predictionFor(clock, [0.9964, 0.9931]), 0.99, 'mm')).toBe(
      'Good enough: the least sure of 2 needs, “corner check”, comes out within 0.25 mm for 99.3 % of parts (wanted: 99 %).',
    );
  });

  it('says what is missing, and how many more are', () => {
    expect(verdictLine(predictionFor(clock, [0.851, 0.93]), 0.99, 'mm')).toBe(
      'Not good enough yet: “shaft in the pocket” comes out within 0.2 mm for 85 % of parts, and 99 % is wanted. One other need falls short too.',
    );
  });

  it('is honest about a job without needs', () => {
    expect(verdictLine({ ...predictionFor(clock, []), needs: [] }, 0.99, 'mm')).toBe(
      'The job names no need, so nothing is predicted.',
    );
  });

  it('shows only numbers of the prediction, to the digits it shows', () => {
    const chance = fc.double({ min: 0.001, max: 0.9994, noNaN: true });
    fc.assert(
      fc.property(chance, chance, (a, b) => {
        const prediction = predictionFor(clock, [a, b]);
        const line = verdictLine(prediction, 0.99, 'mm');
        const least = prediction.needs.find((need) => need.chance === Math.min(a, b))!;
        const shown = /within ([\d.]+) mm for ([\d.]+) %/.exec(line)!;
        expect(Number(shown[1])).toBe(least.limits.high);
        expect(Math.abs(Number(shown[2]) / 100 - least.chance)).toBeLessThanOrEqual(
          // Two digits of the smaller side, rounded down.
          Math.max(0.001, 0.11 * Math.min(least.chance, 1 - least.chance)),
        );
        expect(line.startsWith('Good')).toBe(Math.min(a, b) >= 0.99);
      }),
      { seed: 1 },
    );
  });
});
