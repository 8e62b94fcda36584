import { describe, expect, it } from 'vitest';
import type { Source } from '../../src/sources/source.ts';
import { chanceOf } from '../../src/stackup/chance.ts';
import { clauseEight } from '../../src/stackup/clause-eight.ts';
import { straightOf, straightVector } from '../../src/stackup/first-order.ts';
import type { Model } from '../../src/stackup/model.ts';
import { toleranceOf } from '../../src/stackup/digits.ts';
import type { FirstOrder } from '../../src/stackup/prediction.ts';
import { normalShareBelow } from '../../src/num/textbook.ts';
import { FIRST, modelOfFunction, normal, rectangular, tried } from './a-model.ts';

const sourceFor = (id: string, deviation: number): Source => ({
  id,
  words: id,
  text: '',
  distribution: normal(0, 1),
  recurs: 'part',
  origin: { kind: 'stated' } as unknown as Source['origin'],
  deviations: [deviation],
});

/** First order of a model's one result, judged by an upper limit. */
function judged(model: Model, high: number, trials = 50_000): FirstOrder {
  const line = straightOf(model);
  const { meanX: mean, varX } = straightVector(model, line, 0, 0);
  const sd = Math.sqrt(varX);
  const asked = { ...FIRST, questions: [{ lowest: 0, highest: 0, low: null, high }] };
  const totals = tried(model, trials, asked);
  return clauseEight(
    { mean, sd, chance: normalShareBelow((high - mean) / sd) },
    [mean - 1.959964 * sd, mean + 1.959964 * sd],
    totals.figure(0),
    chanceOf(totals.good[0]!, totals.trials()),
    line,
    [0],
    model.inputs.map((_, k) => sourceFor(`source ${k}`, k)),
  );
}

describe('first order', () => {
  it('is good enough for a sum of normals, and no contact switches', () => {
    const found = judged(
      modelOfFunction([normal(0, 1), normal(0, 2)], ([a, b]) => [a! + b!]),
      4,
    );
    expect(found).toMatchObject({ agrees: true, timesBad: null, switching: [] });
  });

  it('is not for the mass calibration of JCGM 101, 9.3, with the differences the standard tells', () => {
    const model = modelOfFunction(
      [normal(1.234, 0.0538516), rectangular(1.1, 1.3), rectangular(7000, 9000)],
      ([dm, ra, rW]) => [dm! + 100_000 * (ra! - 1.2) * (1 / rW! - 1 / 8000)],
    );
    const { agrees, off, tolerance } = judged(model, 1.4);
    // u = 0.075: one digit is 0.08, so 0.005; exact differences 0.044 at both ends (tests/reference 1.2).
    expect(tolerance).toBeCloseTo(toleranceOf(0.075, 1), 12);
    expect(agrees).toBe(false);
    for (const end of off) expect(Math.abs(end - 0.044)).toBeLessThan(0.004);
  });

  it('tells too few bad parts where a contact switches, and names what switches it', () => {
    // abs(x) + y: the slope at x = 0 is nil, so first order sees y alone. Bad beyond 2.5: exactly
    // P(abs(x) + y > 2.5) against P(y > 2.5); by 400 steps of y (derived here).
    const [sx, sy, high] = [1, 0.7, 2.5];
    let exact = 0;
    for (let k = 0; k < 4000; k++) {
      const y = -5 * sy + (10 * sy * (k + 0.5)) / 4000;
      const density = Math.exp((-y * y) / (2 * sy * sy)) / (sy * Math.sqrt(2 * Math.PI));
      const beyond = high > y ? 2 * normalShareBelow((y - high) / sx) : 1;
      exact += density * beyond * ((10 * sy) / 4000);
    }
    const firstBad = 1 - normalShareBelow(high / sy);
    const found = judged(
      modelOfFunction([normal(0, sx), normal(0, sy)], ([x, y]) => [Math.abs(x!) + y!]),
      high,
    );
    expect(found.switching).toEqual(['source 0']);
    expect(found.agrees).toBe(false);
    // At least that many times: below the truth, and within four standard errors of it.
    const truth = exact / firstBad;
    expect(truth).toBeGreaterThan(20);
    expect(found.timesBad).toBeLessThanOrEqual(truth);
    expect(found.timesBad).toBeGreaterThan(truth * (1 - 4 / Math.sqrt(50_000 * exact)));
  });

  it('does not take a bend for a corner', () => {
    const found = judged(
      modelOfFunction([normal(0, 1), normal(0, 1)], ([x, y]) => [x! * x! + y!]),
      8,
    );
    expect(found.switching).toEqual([]);
    expect(found.agrees).toBe(false);
  });
});
