// Where a straight-line estimate understates scrap it is said, with by how much; where it would do, that is said.
import { describe, expect, it } from 'vitest';
import { predictionText } from '../../src/cli/prediction-text.ts';
import { predictJob } from '../../src/cli/predict-job.ts';
import type { Job, Spread } from '../../src/job/job.ts';
import type { NeedPrediction } from '../../src/stackup/prediction.ts';
import { plainJob, spread } from '../setup/plain-job.ts';

const NEED = { kind: 'misalignment', name: 'corner', at: { x: 70, y: 120 } } as const;
const plain = plainJob();

/** Out of square under a side arm: it touches at one end of the arm or at the other, so the miss is one-sided. */
const armed = (squareSpread: Spread, within: number): Job => ({
  ...plain,
  needs: [{ ...NEED, withinMm: within }],
  stops: { ...plain.stops, sideTouch: { kind: 'arm', fromMm: 20, toMm: 160 } },
  blank: { ...plain.blank, squareSpread },
});

/** The zero found off by a normal error and kept: what comes of it is a straight sum. */
const touched = (sd: number, within: number): Job => ({
  ...plain,
  needs: [{ ...NEED, withinMm: within }],
  zero: {
    ...plain.zero,
    frontUp: {
      ...plain.zero.frontUp,
      xy: {
        kind: 'stops',
        at: null,
        tool: { name: 'paper', spread: spread({ kind: 'normal', mean: 0, sd }) },
      },
    },
  },
});

function told(job: Job): { readonly need: NeedPrediction; readonly text: string } {
  const prediction = predictJob(job, { seed: 1, trials: 20_000 });
  return {
    need: prediction.needs[0]!,
    text: predictionText(job, prediction).replace(/\s+/g, ' '),
  };
}

describe('a straight-line estimate', () => {
  it('is said to see too little of the bad parts where a contact switches, how many times, and what switches', () => {
    const square = spread({ kind: 'normal', mean: 0, sd: 0.0006 });
    const { need, text } = told(armed(square, 0.15));
    // The miss is |alpha| (160 - 20) at first order of the geometry; bad beyond 0.15 of 0.14 per 0.001 (derived):
    // |z| > 1.786, which is 7.4 %; a straight line through 0 has no slope there and says none are bad.
    const bad = 1 - need.chance;
    expect(Math.abs(bad - 0.0741)).toBeLessThan(4 * need.chanceSe + 0.003);
    expect(need.firstOrder.chance).toBeGreaterThan(0.999);
    expect(need.firstOrder.switching).toEqual(['blank square']);
    const [, times] = /at least ([\d.]+) times as many bad parts as that/.exec(text) ?? [];
    // At least: the fewest bad parts that the trials allow over one in ten thousand, which stands for none.
    expect(Number(times)).toBeGreaterThan(bad / 1e-4 / 1.2);
    expect(Number(times)).toBeLessThanOrEqual(bad / 1e-4);
    expect(text).toContain('Do not rely on one here. What touches, or what counts, switches with');
    expect(text).not.toContain('would do here');
  });

  it.each([0.02, 0.05, 0.12])('is said to do where it does: a zero off by %d sd', (sd) => {
    const { need, text } = told(touched(sd, 0.1));
    expect(need.firstOrder).toMatchObject({ agrees: true, timesBad: null });
    expect(text).toContain('A straight-line estimate would do here.');
    expect(text).not.toMatch(/times as many|[Dd]o not rely|switches with/);
  });

  it('never both: it would do, or it is said why not', () => {
    for (const job of [
      armed(spread({ kind: 'rectangular', low: -0.001, high: 0.001 }), 0.05),
      armed(spread({ kind: 'rectangular', low: -0.001, high: 0.001 }), 0.4),
      touched(0.05, 0.3),
    ]) {
      const { need, text } = told(job);
      const { agrees, timesBad } = need.firstOrder;
      if (agrees) expect(timesBad).toBeNull();
      expect(text.includes('would do here')).toBe(agrees);
      expect(/[Dd]o not rely on one here/.test(text)).toBe(!agrees);
      expect(text.includes('times as many bad parts')).toBe(timesBad !== null);
    }
  });
});
