// Running trials: threads, time, Ctrl-C. The built program, as a user runs it.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Prediction } from '../../src/stackup/prediction.ts';
import { progressText } from '../../src/cli/progress-text.ts';
import { flipwright, JIGS, MAIN, type Ran } from './run.ts';

const CLOCK = join(JIGS, 'wall-clock-plain.yaml');

describe('trials', { timeout: 60_000 }, () => {
  it('come to the same bytes with one thread and with eight', () => {
    const [one, eight] = ['1', '8'].map(
      (threads) =>
        flipwright(['predict', CLOCK, '--json', '--trials', '104000', '--threads', threads]).out,
    );
    expect(one).toContain('"trials": 102400');
    expect(eight).toBe(one);
  });

  it('end when the time is up, and say so', () => {
    const { out } = flipwright(['predict', CLOCK, '--json', '--digits', '4', '--seconds', '1']);
    const { ended, digitsAsked } = JSON.parse(out) as Prediction;
    expect([ended, digitsAsked]).toEqual(['seconds', 4]);
  });

  it.each([
    ['trials', 'wall-clock-plain.yaml', '4'],
    ['what comes after them, or trials', 'chime-box.yaml', '1'],
  ])('end on Ctrl-C with what is known by then, marked: %s', async (_what, jig, digits) => {
    // A busy machine may take seconds to start the program and to try the first blanks: later then.
    for (const afterMs of [3000, 9000, 27_000]) {
      const { out, err, code, endedMs } = await interrupted(jig, digits, afterMs);
      if (afterMs < 27_000 && (code === null || err.includes('nothing is known'))) continue;
      expect(code).toBe(130);
      expect(out).toContain('good parts');
      expect(out).toContain('STOPPED BEFORE ITS END');
      expect(out).toContain('not searched for');
      // Half a second on a quiet machine; others may be at work on this one.
      expect(endedMs).toBeLessThan(2000);
      return;
    }
  });
});

/** A run stopped by the signal that Ctrl-C sends, and how long it then took to end. */
async function interrupted(
  jig: string,
  digits: string,
  afterMs: number,
): Promise<Ran & { readonly endedMs: number }> {
  const run = spawn(process.execPath, [MAIN, 'predict', join(JIGS, jig), '--digits', digits]);
  let [out, err, sentAt] = ['', '', Infinity];
  run.stdout.on('data', (bytes: Buffer) => (out += bytes.toString()));
  run.stderr.on('data', (bytes: Buffer) => (err += bytes.toString()));
  const code = new Promise<number | null>((done) => run.on('close', done));
  const timer = setTimeout(() => {
    sentAt = performance.now();
    run.kill('SIGINT');
  }, afterMs);
  const ended = await code;
  clearTimeout(timer);
  return { out, err, code: ended, endedMs: performance.now() - sentAt };
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
