import { expect, it } from 'vitest';
import { dense, MISS_MM } from './whole-dense.ts';
import { produced, wholeJob } from './whole-job.ts';

it('everything off at once, every need of 200 set-ups comes to what all its places tell', () => {
  for (let run = 1; run <= 200; run++) {
    const job = wholeJob(104729 * run);
    const found = produced(job, run);
    for (const [what, value] of dense(job, run))
      expect(Math.abs(found.get(what)! - value), `${what}, run ${run}`).toBeLessThan(MISS_MM);
  }
}, 600_000);
