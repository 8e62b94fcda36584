// Running a prediction: what is told meanwhile, and what is left when somebody stops it.
import { describe, expect, it } from 'vitest';
import { runOptions } from '../../src/cli/options.ts';
import { runPrediction, type Surroundings } from '../../src/cli/run-prediction.ts';
import { predictionText } from '../../src/cli/prediction-text.ts';
import { predictionJson } from '../../src/cli/json.ts';
import { predictJob } from '../../src/cli/predict-job.ts';
import type { Job } from '../../src/job/job.ts';
import { shopJob } from '../setup/shop-job.ts';

const job: Job = { ...shopJob(), parts: { ...shopJob().parts, count: 3 } };
const OPTIONS = { ...runOptions({ seed: 2, trials: 2000, threads: 1 }, 1) };

const whole = predictJob(job, { seed: 2, trials: 2000, digits: 2 });

/** Surroundings whose clock goes on by a tenth of a second each look, interrupted when a line matches. */
function watched(when: RegExp | null): Surroundings & { readonly lines: string[] } {
  const lines: string[] = [];
  let ms = 0;
  let isInterrupted = false;
  return {
    lines,
    now: () => (ms += 100),
    isInterrupted: () => isInterrupted,
    interrupted: new Promise(() => undefined),
    progress: (text) => {
      if (text === null) return;
      lines.push(text());
      if (when?.test(text()) === true) isInterrupted = true;
    },
    pause: () => Promise.resolve(),
  };
}

describe('a prediction that is run', () => {
  it('comes to what it comes to in one go, and tells trials, digits, shares, worst case and time left', async () => {
    const around = watched(null);
    const found = await runPrediction(job, OPTIONS, around);
    expect(found).toEqual(whole);
    expect(found.leftOut).toEqual([]);
    const told = around.lines.join('\n');
    expect(told).toMatch(/^\d+ trials, \d of 2 digits certain, about \d+ s left \(Ctrl-C/m);
    expect(told).toMatch(/trials done; what makes it: \d+ %, about \d+ (s|min) left \(Ctrl-C/);
    expect(told).toContain('trials done; the worst case: ');
    expect(told).toContain('trials done; batches of parts: ');
    // Within a part of the work it never goes back.
    for (const words of ['what makes it', 'batches of parts']) {
      const shares = [...told.matchAll(new RegExp(`${words}: (\\d+) %`, 'g'))].map(([, n]) =>
        Number(n),
      );
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
    }
  });

  it.each([
    [/digits certain/, ['shares', 'worst case', 'batches']],
    [/what makes it/, ['shares', 'worst case', 'batches']],
    [/the worst case/, ['worst case', 'batches']],
    [/batches of parts/, ['batches']],
  ] as const)(
    'stopped at %s leaves out what was not worked out, and says so',
    async (when, left) => {
      const around = watched(when);
      const found = await runPrediction(job, OPTIONS, around);
      const whole = predictJob(job, { seed: 2, trials: 2000, digits: 2 });
      expect([found.ended, found.leftOut]).toEqual(['interrupted', left]);
      // It went no further.
      expect(around.lines.filter((line) => when.test(line)).length).toBeLessThanOrEqual(2);
      const isAll = found.trials === whole.trials;
      expect(isAll).toBe(left.length < 3 || when.source === 'what makes it');
      const names = left as readonly string[];
      found.needs.forEach((need, k) => {
        if (isAll) expect(need.interval95).toEqual(whole.needs[k]!.interval95);
        expect(need.shares.length > 0).toBe(!names.includes('shares'));
        if (!names.includes('worst case')) expect(need.worst).toEqual(whole.needs[k]!.worst);
        // Corners only: never more than the search comes to.
        expect(need.worst[1]).toBeLessThanOrEqual(whole.needs[k]!.worst[1] + 1e-12);
      });
      expect(found.batch.allGood).toBeNull();
      const text = predictionText(job, found).replace(/\s+/g, ' ');
      expect(text).toContain('STOPPED BEFORE ITS END');
      expect(text.includes('not worked out, since it was stopped')).toBe(names.includes('shares'));
      expect(text.includes('at one corner of the limits, not searched for')).toBe(
        names.includes('worst case'),
      );
      expect(text).toContain('how they hang together was not worked out');
      expect(predictionJson(found)).not.toContain('NaN');
    },
  );

  it('stopped before the first trials are done says that nothing is known', async () => {
    const options = { ...OPTIONS, trials: 30_000 };
    await expect(runPrediction(job, options, watched(/the first trials/))).rejects.toMatchObject({
      message: expect.stringContaining('nothing is known') as string,
      code: 130,
    });
  });
});
