import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Job } from '../../src/job/job.ts';
import type { ReportInput } from '../../src/report/report-input.ts';
import { report } from '../../src/report/report.ts';
import { inputOf } from './an-input.ts';

/** The same job with other names, everywhere alike. */
function renamed(job: Job, as: (name: string) => string): Job {
  return {
    ...job,
    name: as(job.name),
    features: job.features.map((feature) => ({ ...feature, name: as(feature.name) })),
    needs: job.needs.map((need) => ({
      ...need,
      name: as(need.name),
      ...('features' in need ? { features: need.features.map(as) as [string, string] } : {}),
      ...('feature' in need ? { feature: as(need.feature) } : {}),
    })),
  };
}

const NASTY = [
  '<',
  '>',
  '"',
  "'",
  '&',
  '</script>',
  '<!--',
  '<img src=x onerror=alert(1)>',
  ']]>',
  '\u0000',
  '\ud800',
  '${x}',
  '</style>',
];

it('shows any name as it is, and never as markup', () => {
  const tags = (page: string): number => page.match(/<[a-z!/]/gi)!.length;
  const clock = inputOf('wall-clock');
  const named = (as: (name: string) => string): ReportInput => ({
    ...clock,
    job: renamed(clock.job, as),
    prediction: {
      ...clock.prediction,
      job: as(clock.prediction.job),
      needs: clock.prediction.needs.map((need) => ({ ...need, name: as(need.name) })),
    },
  });
  const usual = tags(report(named((name) => name)));
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...NASTY, 'a', ' ', 'é'), { maxLength: 6 }), (pieces) => {
      const page = report(named((name) => `${name} ${pieces.join('')}`));
      expect(tags(page)).toBe(usual);
    }),
    { seed: 9, numRuns: 5 },
  );
});
