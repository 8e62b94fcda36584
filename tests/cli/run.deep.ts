// Running trials: threads, time, Ctrl-C. The built program, as a user runs it.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Prediction } from '../../src/stackup/prediction.ts';
import { progressText } from '../../src/cli/progress-text.ts';
import { flipwright, JIGS, MAIN } from './run.ts';

const CLOCK = join(JIGS, 'wall-clock-plain.yaml');

describe('trials', { timeout: 60_000 }, () => {
  it('come to the same bytes with one thread and with three', () => {
    const [one, three] = ['1', '3'].map(
      (threads) =>
        flipwright(['predict', CLOCK, '--json', '--trials', '104000', '--threads', threads]).out,
    );
    expect(one).toContain('"trials": 102400');
    expect(three).toBe(one);
  });

  it('end when the time is up, and say so', () => {
    const { out } = flipwright(['predict', CLOCK, '--json', '--digits', '4', '--seconds', '1']);
    const { ended, digitsAsked } = JSON.parse(out) as Prediction;
    expect([ended, digitsAsked]).toEqual(['seconds', 4]);
  });

  it('end on Ctrl-C with what is known by then, marked', async () => {
    // A busy machine may take seconds to start the program, and before that Ctrl-C just ends it.
    for (const afterMs of [1500, 6000, 20_000]) {
      const { out, code } = await interrupted(afterMs);
      if (code === null && afterMs < 20_000) continue;
      expect(code).toBe(1);
      expect(out).toContain('good parts');
      expect(out).toContain('STOPPED BEFORE ITS END');
      return;
    }
  });
});

/** A run that wants more digits than there is time for, stopped by the signal that Ctrl-C sends. */
async function interrupted(
  afterMs: number,
): Promise<{ readonly out: string; readonly code: number | null }> {
  const run = spawn(process.execPath, [MAIN, 'predict', CLOCK, '--digits', '4']);
  let out = '';
  run.stdout.on('data', (bytes: Buffer) => (out += bytes.toString()));
  const code = new Promise<number | null>((done) => run.on('close', done));
  setTimeout(() => run.kill('SIGINT'), afterMs);
  const ended = await code;
  return { out, code: ended };
}

describe('the progress line', () => {
  it('tells trials, digits and the time left', () => {
    const progress = {
      blocks: 4,
      trials: 40_960,
      likelyTrials: 409_600,
      digits: 1,
      digitsAsked: 2,
    };
    expect(progressText(progress, 2000)).toBe(
      '40960 trials, 1 of 2 digits certain, about 18 s left (Ctrl-C ends with what is known)',
    );
    expect(progressText({ ...progress, likelyTrials: 4_096_000 }, 2000)).toContain(
      'about 4 min left',
    );
  });
});
