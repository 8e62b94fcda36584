import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assumptionsOf } from '../../src/job/assumptions.ts';
import { restingMoisture } from '../../src/job/wood/emc.ts';
import { acrossPerPercent } from '../../src/job/wood/movement.ts';
import { reachedShare } from '../../src/job/wood/rest.ts';
import { materialOf } from '../../src/job/wood/species.ts';
import { faultsOf, jobOf, readTexts } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

describe('the moisture that wood comes to rest at', () => {
  // Source: Wood Handbook (FPL-GTR-282), table 4-2, moisture in % at 5, 10, ... 95 % humidity.
  it.each([
    [4.4, '1.4 2.6 3.7 4.6 5.5 6.3 7.1 7.9 8.7 9.5 10.4 11.3 12.3 13.5 14.9 16.5 18.5 21.0 24.3'],
    [21.1, '1.3 2.5 3.5 4.5 5.4 6.2 6.9 7.7 8.5 9.2 10.1 11.0 12.0 13.1 14.4 16.0 17.9 20.5 23.9'],
    [26.7, '1.3 2.4 3.5 4.4 5.3 6.1 6.8 7.6 8.3 9.1 9.9 10.8 11.7 12.9 14.2 15.7 17.7 20.2 23.6'],
  ])('is as in the table at %d C', (celsius, row) => {
    const figures = row.split(' ').map(Number);
    expect(figures).toHaveLength(19);
    figures.forEach((percent, index) => {
      // Half a unit of the table's last digit, and a little for its own rounding of the temperature.
      expect(Math.abs(restingMoisture((index + 1) / 20, celsius) - percent)).toBeLessThan(0.055);
    });
  });

  it('is as others work it out from the same equation', () => {
    // The equation in degrees Fahrenheit (Simpson 1973, FPL-RP-229), 140 F and 55 %: 8.38.
    expect(restingMoisture(0.55, 60)).toBeCloseTo(8.38, 1);
    expect(restingMoisture(0, 20)).toBe(0);
  });
});

describe('how far wood moves across the grain', () => {
  // Source: Wood Handbook, chapter 13, table 13-5, and its example of a white fir board 232 mm wide from 8
  // to 11 %; the others from the coefficients of the table: width x coefficient x change, by hand.
  it.each([
    ['white fir', 'flat-sawn', 232, 3, 1.705],
    ['red oak', 'flat-sawn', 300, 4, 4.428],
    ['walnut', 'flat-sawn', 200, 2, 1.096],
    ['walnut', 'quarter-sawn', 200, 2, 0.76],
    ['cherry', 'flat-sawn', 200, 2, 0.992],
    ['cherry', 'quarter-sawn', 200, 2, 0.504],
    ['beech', 'flat-sawn', 200, 2, 1.724],
    ['beech', 'quarter-sawn', 200, 2, 0.76],
  ] as const)('%s, %s, %d mm wide, by %d %%: %d mm', (name, board, widthMm, percent, mm) => {
    const material = materialOf(name);
    expect(material).toMatchObject({ kind: 'wood', isKnown: true });
    const per = material.kind === 'wood' ? acrossPerPercent(material.species, board) : NaN;
    expect(widthMm * per * percent).toBeCloseTo(mm, 3);
  });

  it('goes by the name that people use, whatever its spelling', () => {
    expect(materialOf('Douglas-fir')).toEqual(materialOf('douglas fir'));
    expect(materialOf('Birch plywood')).toEqual({ kind: 'sheet', name: 'Birch plywood' });
    expect(materialOf('MDF')).toEqual({ kind: 'sheet', name: 'MDF' });
    expect(materialOf('acrylic')).toEqual({ kind: 'dry', name: 'acrylic' });
    expect(materialOf('constructor')).toMatchObject({ isKnown: false });
  });
});

describe('how much of a change a board goes through', () => {
  it('begins with the square root of the time, as diffusion into a thick slab does', () => {
    // Crank, equation 4.20: 2 sqrt(D t / (pi l^2)); with the slab's slowest time tau = 4 l^2 / (pi^2 D).
    for (const hours of [0.5, 2, 8])
      expect(reachedShare(hours, 25)).toBeCloseTo((4 / Math.PI ** 1.5) * Math.sqrt(hours / 168), 3);
  });

  it('ends with 1 - 8 / pi^2 exp(-t / tau), grows with time and falls with thickness', () => {
    expect(reachedShare(3 * 168, 25)).toBeCloseTo(1 - (8 / Math.PI ** 2) * Math.exp(-3), 9);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 8000, noNaN: true }),
        fc.double({ min: 3, max: 100, noNaN: true }),
        (hours, thickMm) => {
          const share = reachedShare(hours, thickMm);
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
          expect(reachedShare(hours * 1.1, thickMm)).toBeGreaterThanOrEqual(share);
          expect(reachedShare(hours, thickMm * 1.1)).toBeLessThanOrEqual(share);
        },
      ),
      { seed: 1 },
    );
  });
});

describe('between the placings', () => {
  const WAIT = 'between-placings: {hours: 504, humidity: 45..60 %}';
  const waiting = (blank: string, wait = WAIT) =>
    otherwise(
      otherwise(JOB, 'edges: sawn', `edges: sawn${blank.replace(/^|, /g, '\n  ')}`),
      'turn: about-y',
      `turn: about-y\n${wait}`,
    );
  const blankOf = (blank: string, wait = WAIT) => jobOf(waiting(blank, wait), SHOP).blank;
  const largest = (blank: string, wait = WAIT) => {
    const { movementX, movementY } = blankOf(blank, wait);
    return [movementX, movementY].map(({ distribution }) =>
      distribution.kind === 'triangular' ? distribution.high : 0,
    );
  };
  // The equation at 20 C between 45 and 60 %, and what 504 h do to 18 mm.
  const moisture = restingMoisture(0.6, 20) - restingMoisture(0.45, 20);
  const share = reachedShare(504, 18);

  it('is its coefficient times the change of moisture times what it goes through, either way', () => {
    const [x, y] = largest('material: ash, grain: along-x');
    expect(y).toBeCloseTo(0.00274 * moisture * share, 12);
    expect(x).toBeCloseTo(5e-5 * moisture * share, 12);
    expect(largest('material: ash, grain: along-y')).toEqual([y, x]);
    expect(largest('material: ash, grain: along-x, board: quarter-sawn')[1]).toBeCloseTo(
      0.00169 * moisture * share,
      12,
    );
  });

  it('is across the grain both ways when no grain is given, and the most of all woods when no wood is', () => {
    const [x, y] = largest('material: ash');
    expect(x).toBe(y);
    expect(largest('material: yew')[0]).toBeCloseTo(0.00431 * moisture * share, 12);
    const told = (blank: string) => {
      const read = readTexts(waiting(blank), SHOP);
      return read.ok ? read.value.notes.map(({ message }) => message) : [];
    };
    expect(told('material: yew')).toEqual([
      'yew is not in the table of woods, so it is taken to move as American beech, the most of them; movement: says it yourself',
    ]);
    expect(told('grain: along-x')).toEqual([
      'no material is given, so it is taken to move as American beech, the most of them; movement: says it yourself',
    ]);
    expect(told('material: ash')).toEqual([]);
  });

  it('is 1e-4 for each % of humidity in sheet goods, and nothing in plastic', () => {
    for (const blank of ['material: MDF', 'material: walnut, grain: sheet'])
      for (const strain of largest(blank)) expect(strain).toBeCloseTo(1e-4 * 15 * share, 12);
    expect(blankOf('material: acrylic').movementX.distribution).toEqual({
      kind: 'exactly',
      value: 0,
    });
  });

  it('is shown as an estimate', () => {
    expect(blankOf('material: ash, grain: along-x').movementY).toMatchObject({
      recurs: 'part',
      text: '±0.687 % triangular',
      origin: {
        kind: 'assumed',
        because: '504 h in air of 45..60 %; white ash, flat-sawn, grain along-x; an estimate',
      },
    });
    const job = jobOf(waiting('material: ash'), SHOP);
    expect(assumptionsOf(job).map(({ what }) => what)).toContain('movement of the wood along X');
  });

  it('counts the temperature, in either unit', () => {
    const warm = 'between-placings: {hours: 504, humidity: 45..60 %, temperature: 86 F}';
    const same = 'between-placings: {hours: 504, humidity: 45..60 %, temperature: 30 °C}';
    expect(largest('material: ash', warm)[0]).toBeCloseTo(largest('material: ash', same)[0]!, 12);
    const steady = 'between-placings: {hours: 504, humidity: 50 %}';
    expect(largest('material: ash', steady)).toEqual([0, 0]);
  });

  it('is noted where the coefficients do not hold', () => {
    const damp = 'between-placings: {hours: 20, humidity: 60..85 %}';
    const read = readTexts(waiting('material: ash', damp), SHOP);
    expect(read.ok && read.value.notes.map(({ message }) => message)).toEqual([
      'wood comes to rest at 11.0 to 18.0 % moisture there, and how it moves is known from 6 to 14 %',
    ]);
  });

  it.each([
    [
      'hours: 0, humidity: 45..60 %',
      '13:27: hours 0 is not between 0 and 8760; write hours such as 20',
    ],
    ['hours: 20', '13:19: between-placings: humidity is missing; write humidity: 45..60 %'],
    [
      'hours: 20, humidity: 60..45 %',
      '13:41: humidity 60..45 % runs from the larger to the smaller; write 45..60 %',
    ],
    [
      'hours: 20, humidity: 45..60',
      '13:41: humidity 45..60 is not a humidity; write the driest and the dampest such as 45..60 %',
    ],
    [
      'hours: 20, humidity: 45..99 %',
      '13:41: humidity 45..99 % is damper than wood is kept; write at most 95 %',
    ],
    [
      'hours: 20, humidity: 45..60 %, temperature: 20',
      '13:64: temperature 20 is not a temperature; write a temperature such as 20 C or 68 F',
    ],
    [
      'hours: 20, humidity: 45..60 %, temperature: 99 C',
      '13:64: temperature 99 C is no temperature of a shop; write 0 C to 60 C',
    ],
  ])('with %s is refused', (words, expected) => {
    expect(faultsOf(waiting('material: ash', `between-placings: {${words}}`), SHOP)).toEqual([
      `job.yaml:${expected}`,
    ]);
  });

  it('is said once', () => {
    expect(faultsOf(waiting('movement: {x: 0}'), SHOP)).toEqual([
      'job.yaml:7:13: movement says how far the blank moves, and between-placings says it too; take one of them out',
    ]);
  });
});
