import { describe, expect, it } from 'vitest';
import { dotPlot } from '../../src/report/dot-plot.ts';
import { landedBacks } from '../../src/report/landed.ts';
import { report } from '../../src/report/report.ts';
import { unitsOf } from '../../src/report/need-units.ts';
import { inputOf, numbersOf, wrongNumbers } from './an-input.ts';

const clock = inputOf('wall-clock');
const inch = inputOf('gauge-lid');

describe('the report', () => {
  it('tells every number with its unit, and as predict --json has it, in mm and in inches', () => {
    for (const input of [clock, inch]) {
      const page = report(input);
      expect(numbersOf(page).length).toBeGreaterThan(100);
      expect(wrongNumbers(input, page)).toEqual([]);
    }
    const texts = numbersOf(report(inch)).map(({ text }) => text);
    expect(texts.filter((text) => /\bmm\b/.test(text))).toEqual([]);
    expect(texts.some((text) => /\d.in$/.test(text))).toBe(true);
  });

  it('would notice a number that is not the one in the JSON, and one without its unit', () => {
    const page = report(clock);
    const other = page.replace(/(<data value=")[^"]*(" data-of="needs.0.mean")/, '$19$2');
    expect(wrongNumbers(clock, other)[0]).toMatch(/^needs.0.mean is 0.0/);
    const bare = page.replace(/(data-of="needs.1.limits.low">)[^<]*/, '$12.5');
    expect(wrongNumbers(clock, bare)).toContain('needs.1.limits.low: no unit in "2.5"');
  });

  it('gives the same bytes for the same input', () => {
    expect(report(clock)).toBe(report({ ...clock }));
  });

  it('names for each thing that can be off the file and line, or that nobody stated it', () => {
    const page = report(clock);
    const table = page.slice(page.indexOf('class="origins"'));
    expect(table.match(/<tr><th scope="row">/g)!.length).toBe(clock.prediction.sources.length);
    // jigs/shop.yaml has the lean of the Y axis in its eighth line.
    expect(table).toMatch(
      /Y axis leaning<\/th><td>±0\.3.mm per 200.mm<\/td><td>[^<]*<\/td><td>shop\.yaml, line 8</,
    );
    expect(table).toMatch(/swarf under the blank<.*?assumed<\/span> common practice, no source/);
    const { assumed } = clock.prediction;
    expect(table.match(/class="assumed"/g)!.length).toBe(assumed.length);
  });

  it('shows ways and advice when they are handed in, and nothing of them otherwise', () => {
    expect(report(clock)).not.toContain('What to do first');
    const [need] = clock.prediction.needs;
    const page = report({
      ...clock,
      comparison: {
        needs: [need!.name],
        ways: [{ name: 'two dowels', words: 'in the waste', isThisJob: false, chances: [need!] }],
      },
      advice: [
        {
          doThis: 'Fit better nuts.',
          because: 'Lost motion has the largest hand.',
          gain: {
            need: need!.name,
            before: { ...need!, chance: 0.5, chance95: [0.49, 0.51] },
            after: need!,
          },
        },
      ],
    });
    expect(page).toContain('two dowels');
    expect(page).toMatch(
      /Fit better nuts\.<\/b> Lost motion has the largest hand\. <span class="gain">shaft in the pocket: (49|50)/,
    );
  });
});

describe('where the back lands', () => {
  it('is drawn from the very trials of the prediction', () => {
    // Source: the prediction's own cloud, which the model of the need gave.
    const [back] = landedBacks(clock.job, clock.prediction.seed, 200);
    const need = clock.prediction.needs.find(({ kind }) => kind === 'concentric')!;
    if (need.shape !== 'radial') throw new Error('centres are judged by a vector');
    expect(back!.feature.name).toBe('movement pocket');
    back!.misses.forEach(([x, y], k) => {
      // The pocket stands over the shaft hole, so the front cut it is shown against is the hole.
      expect(x!).toBeCloseTo(need.cloud[k]![0], 12);
      expect(y!).toBeCloseTo(need.cloud[k]![1], 12);
    });
    expect(Math.max(...back!.misses.map(([x]) => Math.abs(x!)))).toBeGreaterThan(0.05);
  });
});

describe('the picture of a hundred parts', () => {
  it('has a hundred marks, as many of them crosses as miss', () => {
    const plain = inputOf('wall-clock-plain');
    for (const need of plain.prediction.needs) {
      const { html } = dotPlot(need, unitsOf(need, 'mm'));
      const dots = html.match(/<circle /g)?.length ?? 0;
      const crosses = html.match(/l1\.6 1\.6m0 -1\.6l-1\.6 1\.6/g)?.length ?? 0;
      expect(dots + crosses, need.name).toBe(100);
      // A few hundred trials are shown, all of them count: four standard errors of 400, and half a mark.
      const se = 100 * Math.sqrt((need.chance * (1 - need.chance)) / 400);
      expect(Math.abs(dots - 100 * need.chance), need.name).toBeLessThanOrEqual(4 * se + 1);
    }
    expect(plain.prediction.needs.some(({ chance }) => chance < 0.5)).toBe(true);
  });
});
