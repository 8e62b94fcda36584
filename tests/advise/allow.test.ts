import { describe, expect, it } from 'vitest';
import { allowances, type Allowance } from '../../src/advise/allow/allow.ts';
import { COMMON_GAUGES, feelerFor, gaugeFor, shopGauges } from '../../src/advise/allow/gauges.ts';
import { spreadTold, toldScale } from '../../src/advise/allow/told-size.ts';
import { yieldsOf, type Wish } from '../../src/advise/allow/yields.ts';
import { allowText } from '../../src/cli/allow-text.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { toTheEnd, variantsOfTexts } from './a-bench.ts';
import { exactShop, smallJob, withBlank } from './small-job.ts';

/** Only the length is off: at the same corner it misaligns by as much (registration.md 2), and 0.2 mm is the limit. */
const LIMIT = 0.2;
const jobWith = (length: string) =>
  variantsOfTexts(withBlank(smallJob({}), { size: `[${length}, 120 ±0, 20 ±0]` }), exactShop())
    .whole.job;
const LUCK = { seed: 3, trials: 3000 };
const EACH: Wish = { kind: 'each-need', share: 0.95 };

function widthIn({ each }: Allowance) {
  const found = each.find(({ group }) => group.id === 'blank width')!;
  if (found.verdict.kind !== 'up to') throw new Error(found.verdict.kind);
  return found.verdict;
}

describe('the largest spread of one source', () => {
  it('is that of the quantile, for limits only known', () => {
    // Uniform within ±a: P(|d| <= L) = L / a, so a = L / share (JCGM 101 table 1).
    const job = jobWith('200 ±0.1');
    const found = widthIn(toTheEnd(allowances(job, LUCK, EACH)));
    const exact = LIMIT / 0.95 / 0.1;
    // A tenth of the figure is lost by rounding down at most; four standard errors by luck.
    expect(found.by).toBeLessThan(exact + 4 * found.sure);
    expect(found.by).toBeGreaterThan(0.95 * exact - 4 * found.sure);
    expect(found.sure / found.by).toBeLessThan(0.02);
  });

  it('yields less the larger it is', () => {
    const job = jobWith('200 ±0.3');
    const misfit = misfitModel(job);
    const yields = yieldsOf(misfit, sourcesOf(job, misfit.deviations), LUCK, EACH);
    const chances = [0, 0.5, 1, 2, 4].map(
      (by) => yields(new Map([['blank width', by]]), 'all tried').chance.value,
    );
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    expect(chances[0]).toBe(1);
    expect(chances.at(-1)).toBeLessThan(0.2);
  });
});

describe('what is told', () => {
  it('says when even a perfect thing would not do, and how much all of it must shrink', () => {
    // At 50 mm from the level of the button a lean shifts by 100 times itself (registration.md 2): up to 1 mm, as the length.
    const needs = 'needs:\n  - {name: corner, misalignment: [100, 10], within: 0.2}';
    const job = variantsOfTexts(
      withBlank(smallJob({ needs, machine: 'lean: ±2 per 200' }), {
        size: '[200 ±1, 120 ±0, 20 ±0]',
      }),
      exactShop(),
    ).whole.job;
    const luck = { seed: 1, trials: 2000 };
    const found = toTheEnd(allowances(job, luck, { kind: 'each-need', share: 0.95 }));
    const verdicts = found.each.map(({ group, verdict }) => `${group.id}: ${verdict.kind}`);
    expect(verdicts).toContain('blank width: not enough');
    expect(verdicts).toContain('machine lean: not enough');
    // The sum of two equal uniforms, ±c each: P(|sum| <= L) = 1 - (1 - L / 2c)^2, so 2c = L / (1 - sqrt 0.05).
    const exact = 0.2 / (1 - Math.sqrt(0.05)) / 2;
    expect(Math.abs(found.together!.by - exact)).toBeLessThan(
      4 * found.together!.sure + 0.01 * exact,
    );
    const text = allowText(found, COMMON_GAUGES, luck.trials, luck.seed);
    expect(text).toContain('No one thing is enough');
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('names the coarsest gauge that would do, and the finest that would not', () => {
    // ±0.1 mm is 0.058 sd: a caliper's 0.03 is finer, a rule's 0.25 is not.
    const fit = gaugeFor(COMMON_GAUGES, 'length', 200, 0.1 / Math.sqrt(3))!;
    expect(fit.does!.words).toBe('a caliper');
    expect(fit.doesNot!.words).toBe('a steel rule');
    const own = [
      ...shopGauges({ 'long caliper': '±0.06', square: '0.02 per 100' }),
      ...COMMON_GAUGES,
    ];
    expect(gaugeFor(own, 'length', 200, 0.1 / Math.sqrt(3))!.does!.words).toBe('your long caliper');
    expect(gaugeFor(COMMON_GAUGES, 'none', 200, 1)).toBeNull();
    expect([0.01, 0.05, 0.07].map(feelerFor)).toEqual([null, 0.05, 0.05]);
  });

  it('is rounded down, with its unit', () => {
    const source = sourcesOf(jobWith('200 ±0.4'), misfitModel(jobWith('200 ±0.4')).deviations).find(
      ({ id }) => id === 'blank width',
    )!;
    const by = toldScale(source, 0.4599);
    expect(by).toBeLessThanOrEqual(0.4599);
    expect(spreadTold(source, by, 'mm')).toBe('±0.183 mm');
    expect(spreadTold(source, 1, 'inch')).toBe('±0.0157 in');
  });
});
