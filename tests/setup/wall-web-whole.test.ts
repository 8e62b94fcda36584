import { expect, it } from 'vitest';
import { dense, MISS_MM } from './whole-dense.ts';
import { produced, wholeJob } from './whole-job.ts';

it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])(
  'everything off at once, every need of set-up %i comes to what all its places tell',
  (run) => {
    const job = wholeJob(7919 * run);
    const found = produced(job, run);
    for (const [what, value] of dense(job, run))
      expect(Math.abs(found.get(what)! - value), what).toBeLessThan(MISS_MM);
  },
);
