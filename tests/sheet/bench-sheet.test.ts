import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import { holdPlan } from '../../src/hold/plan.ts';
import { aHolding } from '../hold/a-holding.ts';
import { clock } from './a-job.ts';
import { inputFor } from './an-input.ts';
import { someJobs } from './some-jobs.ts';

describe('the bench sheet', () => {
  it('is the same bytes for the same input', () => {
    for (const job of Object.values(someJobs))
      expect(benchSheet(inputFor(job))).toBe(benchSheet(structuredClone(inputFor(job))));
  });

  it('needs no script, no network and no other file', () => {
    for (const job of Object.values(someJobs)) {
      const page = benchSheet(inputFor(job));
      expect(page).not.toMatch(/<script|<link|<img|@import|url\((?!#)|\son\w+=/i);
      expect(page.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
      expect(page).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
  });

  it('tells its seed, its trials and its version, and no date', () => {
    const page = benchSheet(inputFor(clock));
    expect(page).toContain('Flipwright 0.1.0');
    expect(page).toContain('100\u2009000 trials, seed 7');
    expect(page.replaceAll('w3.org/2000', '')).not.toMatch(/\b20\d\d\b/);
  });

  it('puts the cautions before anything else', () => {
    const page = benchSheet(inputFor(clock));
    expect(page.indexOf('Cautions first')).toBeLessThan(page.indexOf('<svg'));
  });

  it('puts a strike at the head of the cautions', () => {
    const input = inputFor(clock);
    const [one, ...others] = input.clearances;
    const struck = { ...one!, lowestMm: one!.bodyTopMm - 3, feature: 'dial recess' };
    const page = benchSheet({ ...input, clearances: [struck, ...others] });
    expect(page).toContain('Do not run this job as it stands');
    expect(page).toContain('STRIKES');
    expect(benchSheet(input)).not.toContain('STRIKES');
  });

  it('says that clamps are not planned, or plans them, or says not to cut', () => {
    expect(benchSheet(inputFor(clock))).toContain('Clamps are not planned on this sheet');
    const holding = aHolding();
    const { placings } = inputFor(clock);
    const plan = holdPlan({
      job: clock,
      holding,
      placings,
      standingOf: () => ({ frontUp: [], backUp: [] }),
      programs: { frontUp: null, backUp: null },
    });
    const none = {
      ...plan,
      frontUp: { ...plan.frontUp, verdict: { ...plan.frontUp.verdict!, isHeld: false } },
    };
    const page = benchSheet({ ...inputFor(clock), hold: { plan: none, notes: ['a note'] } });
    expect(page).not.toContain('Clamps are not planned');
    expect(page).toContain('Do not cut yet');
    expect(page).toContain('Holding down');
    expect(page).toContain('a note');
    expect(page.match(/holding down, (front|back) up, from above/g)).toHaveLength(2);
  });

  it('lets no name break out of the page', () => {
    const tags = (page: string): number => page.match(/<\/?[a-z]/gi)?.length ?? 0;
    const plain = tags(benchSheet(inputFor(clock)));
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.constantFrom('<b>', '"\'>', '&lt;'), (a, b) => {
        const name = a + b;
        const job = {
          ...clock,
          name,
          features: clock.features.map((feature, i) => ({ ...feature, name: `${name}${i}` })),
          needs: clock.needs.map((need) => ({ ...need, name })),
          shop: { ...clock.shop, name },
        };
        expect(tags(benchSheet(inputFor(job)))).toBe(plain);
      }),
      { seed: 1, numRuns: 20 },
    );
  });
});
