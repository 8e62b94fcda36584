import type { Surroundings } from './run-prediction.ts';

/** Progress is told on a terminal only, of what takes longer than this, and not more often than that. */
const WORTH_TELLING_MS = 1000;
const EACH_MS = 200;

/**
 * The clock, the terminal and Ctrl-C of this program. The first Ctrl-C ends the work, a second one the
 * program.
 */
export function processSurroundings(): Surroundings & { readonly leave: () => void } {
  let isInterrupted = false;
  let toldAt = -Infinity;
  let interrupt = (): void => undefined;
  const interrupted = new Promise<void>((done) => {
    interrupt = done;
  });
  const onInterrupt = (): void => {
    isInterrupted = true;
    interrupt();
    process.removeListener('SIGINT', onInterrupt);
  };
  process.on('SIGINT', onInterrupt);
  const tell = (text: string): void => {
    if (process.stderr.isTTY) process.stderr.write(`\r\u001b[2K${text}`);
  };
  return {
    now: () => performance.now(),
    isInterrupted: () => isInterrupted,
    interrupted,
    progress: (text, sinceMs) => {
      if (text === null) {
        if (toldAt > 0) tell('');
        return;
      }
      if (sinceMs < WORTH_TELLING_MS || sinceMs - toldAt < EACH_MS) return;
      toldAt = sinceMs;
      tell(text());
    },
    pause: () =>
      new Promise((go) => {
        setImmediate(go);
      }),
    leave: () => process.removeListener('SIGINT', onInterrupt),
  };
}
