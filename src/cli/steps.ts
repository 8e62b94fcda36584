import type { Tell } from './compare-verb.ts';

/** Progress is told on a terminal only, and not more often than that. */
const EACH_MS = 100;

/** Tells on one line how many of what are tried, and lets Ctrl-C have its turn. */
export function steps(what: string): Tell {
  let toldAt = -Infinity;
  return async (step) => {
    if (process.stderr.isTTY) {
      const now = performance.now();
      if (step === null) process.stderr.write('\r\u001b[2K');
      else if (now - toldAt > EACH_MS) {
        toldAt = now;
        process.stderr.write(`\r\u001b[2K${what} ${step.done} of about ${step.all}`);
      }
    }
    await new Promise((go) => {
      setImmediate(go);
    });
  };
}
