// The terminal's words for needs that are judged by one figure, or by a smallest and a largest one.
import { describe, expect, it } from 'vitest';
import { predictionText } from '../../src/cli/prediction-text.ts';
import type { Job } from '../../src/job/job.ts';
import type {
  Figures,
  PlainPrediction,
  Prediction,
  SourceLine,
} from '../../src/stackup/prediction.ts';
import { plainJob } from '../setup/plain-job.ts';

const FIGURES: Figures = {
  nominal: 3,
  mean: 2.96,
  sd: 0.08,
  interval95: [2.8, 3.1],
  shortest95: [2.81, 3.1],
  worst: [2.5, 3.4],
  worstLinear: [2.6, 3.4],
  sure: { mean: 0.003, sd: 0.003, low: 0.003, high: 0.003 },
  digits: { mean: 1, sd: 1, low: 1, high: 1 },
};

const web: PlainPrediction = {
  ...FIGURES,
  name: 'web',
  kind: 'web',
  shape: 'plain',
  unit: 'mm',
  sample: [],
  largest: null,
  limits: { low: 2.5, high: null },
  firstOrder: {
    mean: 2.96,
    sd: 0.08,
    chance: 0.999,
    off: [0, 0],
    tolerance: 0.005,
    agrees: true,
    timesBad: null,
    switching: [],
  },
  measured: null,
  together: { sum: 1, se: 0.01, isFelt: false },
  moments: 'known',
  chance: 0.999,
  chance95: [0.998, 0.9995],
  chanceSe: 0.0001,
  chanceSure: 0.0003,
  chanceDigits: 1,
  shares: [
    { source: 'blank thickness', share: 0.7, se: 0.01, first: 0.7, firstSe: 0.01, bad: null },
    { source: 'swarf', share: 0.2, se: 0.01, first: 0.2, firstSe: 0.01, bad: null },
    { source: 'bed lean X', share: 0, se: 0, first: 0, firstSe: 0, bad: null },
  ],
  recurring: { shop: 0, powerUp: 0, setup: 0, part: 0.7, placing: 0.2, feature: 0 },
};

const MEASURED: PlainPrediction['measured'] = {
  gaugeSd: 0.03,
  asIs: { accepted: 0.98, falseAccept: 0.0042, falseReject: 0.012 },
  guardMm: 0.06,
  guarded: { accepted: 0.94, falseAccept: 0.00001, falseReject: 0.05 },
};

const line = (name: string, words: string, text: string, because: string | null): SourceLine => ({
  name,
  words,
  text,
  recurs: 'part',
  because,
});

const jobIn = (units: 'mm' | 'inch'): Job => {
  const plain = plainJob();
  return { ...plain, shop: { ...plain.shop, units } };
};

function textOf(needs: readonly PlainPrediction[], units: 'mm' | 'inch' = 'mm'): string {
  const prediction: Prediction = {
    json: 1,
    job: 'test block',
    seed: 7,
    trials: 20_000,
    ended: 'trials',
    digitsAsked: 2,
    leftOut: [],
    assumed: ['swarf'],
    sources: [
      line('blank thickness', "the blank's thickness", '±0.15', null),
      line('swarf', 'swarf under the blank', 'half-normal 0.02', 'common practice, no source'),
      line('bed lean X', "the bed not level with the machine's X travel", '±0.2 per 200', null),
    ],
    needs,
    batch: {
      partCount: 1,
      trials: 20_000,
      onePart: 0.99,
      allGood: 0.99,
      allGoodSe: 0.001,
      expectedBad: 0.01,
      rest: null,
    },
  };
  return predictionText(jobIn(units), prediction);
}

/** The line that holds some words, its runs of blanks made one. */
function lineWith(text: string, words: string): string {
  const found = text.split('\n').find((one) => one.includes(words));
  if (found === undefined) throw new Error(`no line with ${words} in\n${text}`);
  return found.replace(/\s+/g, ' ').trim();
}

describe('a need judged by one figure', () => {
  it('has its limit, nominal, mean, interval, chance and verdict in one line under its name', () => {
    const lines = textOf([web]).split('\n');
    const at = lines.indexOf('web');
    expect(at).toBeGreaterThan(0);
    expect(lines[at + 1]!.replace(/\s+/g, ' ').trim()).toBe(
      '≥ 2.5 mm 3 2.96 2.80 to 3.10 99.9 % met',
    );
  });

  it.each([
    [{ low: 2.5, high: null }, '≥ 2.5 mm'],
    [{ low: null, high: 3.2 }, '≤ 3.2 mm'],
    [{ low: 2.5, high: 3.2 }, '2.5..3.2 mm'],
    [{ low: -0.1, high: 0.1 }, '±0.1 mm'],
  ])('says its limits %j as %s', (limits, words) => {
    expect(lineWith(textOf([{ ...web, limits }]), '2.80 to 3.10')).toMatch(
      new RegExp(`^${words.replaceAll('.', '\\.')} 3 `),
    );
  });

  it('is missed when too few parts are good', () => {
    const row = lineWith(textOf([{ ...web, chance: 0.42 }]), '2.80 to 3.10');
    expect(row).toMatch(/ 42 % missed$/);
  });

  it('names what makes it, largest first, and says which of it was assumed', () => {
    const text = textOf([web]);
    expect(lineWith(text, "the blank's thickness")).toBe("70 % the blank's thickness (±0.15)");
    expect(lineWith(text, 'swarf under')).toBe(
      '20 % swarf under the blank (half-normal 0.02, assumed)',
    );
    // Without a share it is not named.
    expect(text).not.toContain('the bed not level');
  });

  it('gives the worst case from least to greatest, and what a straight line is worth', () => {
    const text = textOf([web]).replace(/\s+/g, ' ');
    expect(text).toContain('Worst case found within all limits: 2.50 to 3.40 mm');
    expect(text).toContain('A straight-line estimate would do here.');
    const bent = textOf([
      {
        ...web,
        firstOrder: { ...web.firstOrder, agrees: false, timesBad: 7.9, switching: ['swarf'] },
      },
    ]).replace(/\s+/g, ' ');
    expect(bent).toContain(
      'A straight-line estimate would say 99.9 % good: there are at least 7 times as many bad parts as that. Do not rely on one here. What touches, or what counts, switches with swarf under the blank, which it cannot see.',
    );
  });

  it('shows the digits that are certain and no more, and how the trials ended', () => {
    const sure = { ...web.sure, mean: 0.0003, low: 0.03 };
    expect(lineWith(textOf([{ ...web, sure }]), 'met')).toBe(
      '≥ 2.5 mm 3 2.960 2.8 to 3.1 99.9 % met',
    );
    const said = textOf([{ ...web, measured: MEASURED }]).replace(/\s+/g, ' ');
    expect(said).toContain(
      'Measured with that gauge, 0.42 % of all parts are bad and pass, 1.2 % are good and thrown out; when only what reads at least 2.56 mm passes, under 0.01 % and 5 %.',
    );
  });

  it('has no causes when nothing is off, and none are made up of too few readings', () => {
    expect(textOf([{ ...web, shares: [] }])).toContain('  nothing is off');
    const few = textOf([{ ...web, moments: 'no mean' }]).replace(/\s+/g, ' ');
    expect(few).toContain('two readings of something have no mean');
    expect(lineWith(textOf([{ ...web, moments: 'no mean' }]), '2.80 to 3.10')).toContain(' none ');
  });

  it('is in inches in a shop that works in inches', () => {
    const text = textOf([{ ...web, nominal: 25.4, limits: { low: 12.7, high: null } }], 'inch');
    expect(lineWith(text, '≥ 0.5')).toMatch(/^≥ 0\.5 in 1 /);
    expect(text).toContain('figures in inches');
  });
});

describe('a need with a smallest and a largest figure', () => {
  const lip: PlainPrediction = {
    ...web,
    name: 'rim',
    kind: 'lip',
    limits: { low: 2.5, high: 3.6 },
    largest: { ...FIGURES, nominal: 3.2, mean: 3.25, interval95: [3.1, 3.5], worst: [3, 3.9] },
  };

  it('has a line for each, each with its own limit, and the verdict once', () => {
    const lines = textOf([lip, web]).split('\n');
    const at = lines.indexOf('rim');
    const [small, large, next] = [1, 2, 3].map((k) => lines[at + k]!.replace(/\s+/g, ' ').trim());
    expect(small).toBe('≥ 2.5 mm 3 2.96 2.80 to 3.10 99.9 % met');
    expect(large).toBe('≤ 3.6 mm 3.2 3.25 3.10 to 3.50');
    expect(next).toBe('web');
  });

  it('has its worst case from the smallest of one to the greatest of the other', () => {
    expect(textOf([lip]).replace(/\s+/g, ' ')).toContain(
      'found within all limits: 2.50 to 3.90 mm (a straight sum says 2.60 to 3.40 mm).',
    );
  });
});

describe('a turn', () => {
  const parallel: PlainPrediction = {
    ...web,
    name: 'slots parallel',
    kind: 'parallel',
    unit: 'mm per 100',
    nominal: 0,
    limits: { low: -0.3, high: 0.3 },
  };

  it('is told over 100 of the unit, and says so', () => {
    expect(lineWith(textOf([web, parallel]), '±0.3')).toMatch(/^±0\.3 mm 0 /);
    expect(textOf([web, parallel])).toContain('over 100 mm: slots parallel');
    expect(textOf([web])).not.toContain('over 100');
  });
});

describe('the table', () => {
  it('keeps within 80 columns, however long the names', () => {
    const long =
      'the front wall of the pocket for the movement, seen from where the dial will sit, all round';
    const [table = ''] = textOf([{ ...web, name: long }, web]).split('What makes it');
    for (const one of table.split('\n')) expect(one.length, one).toBeLessThanOrEqual(80);
  });

  it('has its columns one under the other', () => {
    const lines = textOf([
      web,
      { ...web, name: 'other', nominal: 123.456, limits: { low: 100, high: 130 } },
    ]).split('\n');
    const rows = lines.filter((one) => one.includes('2.80 to 3.10'));
    expect(rows).toHaveLength(2);
    expect(rows[0]!.indexOf('2.80 to 3.10') + 8).toBe(rows[1]!.indexOf('2.80 to 3.10') + 8);
    expect(rows[0]!.length).toBe(rows[1]!.length);
  });
});
