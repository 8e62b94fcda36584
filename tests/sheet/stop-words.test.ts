import { describe, expect, it } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import { writtenSpread } from '../../src/sheet/written-spread.ts';
import { clock, clockPlain, none } from './a-job.ts';
import { inputFor } from './an-input.ts';
import { realInput } from './real-input.ts';

/** What a reader sees: no markup, no style. */
const seen = (page: string): string =>
  page
    .replace(/<style>[^]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ');

const made = (how: StopsJob['stops']['made'], zeroed: StopsJob['zero']): StopsJob => ({
  ...clock,
  stops: { ...clock.stops, made: how },
  zero: zeroed,
});
const byHand = { kind: 'set-by-hand', angle: none, square: none, spacing: none } as const;
const onPins = { ...byHand, kind: 'on-bed-pins' } as const;
const kept = {
  frontUp: clockPlain.zero.frontUp,
  backUp: { ...clock.zero.backUp, xy: { kind: 'kept', how: 'held', extra: null } },
} as const;

describe('the two side stops of opposite corners', () => {
  it('are told to be one length apart, and what to do with a longer blank, however they are made', () => {
    for (const job of [clock, made(byHand, kept), made(onPins, kept)]) {
      const words = seen(benchSheet(inputFor(job)));
      expect(words).toContain(
        'The side stops stand 280 mm apart. A longer blank does not go in between: measure it (step 4); if it is longer, shorten it at the edge that is not marked (the right one), or write its length as the size and build again. Never force it, never shift a stop that was milled.',
      );
      expect(words).toMatch(/ 4 Measure between left and right edge/);
      expect(words).not.toMatch(/draw[^.]*back/);
    }
    expect(seen(benchSheet(inputFor(clockPlain)))).not.toContain('The side stops stand');
  });

  it('let the other one be drawn back only when set by hand and zero is touched again', () => {
    expect(seen(benchSheet(inputFor(made(byHand, clockPlain.zero))))).toContain(
      'mark the place of the second one on the bed, draw it back',
    );
    expect(seen(benchSheet(inputFor(made(onPins, clockPlain.zero))))).not.toMatch(/draw[^.]*back/);
  });
});

describe('the words on the stops', () => {
  it('agree in number', () => {
    expect(seen(benchSheet(inputFor(clockPlain)))).toMatch(
      /Screw the stop A \([^)]*\) to the bed where the picture shows it\./,
    );
    expect(seen(benchSheet(inputFor(clock)))).toMatch(
      /Screw the stops A \([^)]*\) and B \([^)]*\) to the bed where the picture shows them\./,
    );
  });

  it('say where an insert is wanting, with unit and corner', () => {
    const words = seen(benchSheet(inputFor(clockPlain)));
    // The fixture's screw stands at [98, -12] in the rectangle, whose corner is at [40, 40] on the bed.
    expect(words).toContain('no insert at X 138 mm, Y 28 mm from its near-left corner');
  });
});

describe('the sheet of an inch shop', () => {
  it('has no millimetre on it', () => {
    for (const name of ['wall-clock.yaml', 'wall-clock-plain.yaml']) {
      const words = seen(benchSheet(realInput(name, 'inch')));
      expect(words.match(/.{30}\d ?mm\b.{10}/g)).toBeNull();
      expect(words).toMatch(/\d+\.\d\d × \d+\.\d\d × \d+\.\d\d in/);
      expect(words).not.toMatch(/\(±[\d.]+\)|\[\d/);
    }
    // 1.5 / 25.4 = 0.05906, to three figures that count.
    expect(seen(benchSheet(realInput('wall-clock.yaml', 'inch')))).toContain('Mill 0.0591 in off');
  });

  // 0.3 / 25.4 = 0.01181; 200 / 25.4 = 7.874.
  it('reads spreads with a unit at each length', () => {
    expect(writtenSpread('±0.4', 'mm')).toBe('±0.4 mm');
    expect(writtenSpread('±0.3 per 200', 'mm')).toBe('±0.3 mm per 200 mm');
    expect(writtenSpread('±0.3 per 200', 'inch')).toBe('±0.0118 in per 7.874 in');
    expect(writtenSpread('0..25.4 mm', 'inch')).toBe('0 in..1 in');
    expect(writtenSpread('±0.2 95%', 'mm')).toBe('±0.2 mm 95%');
    expect(writtenSpread('half-normal 0.03', 'mm')).toBe('half-normal 0.03 mm');
    for (const text of ['±1/64 in', '±0.4 deg', '±0.1 %', 'anywhere', '±20 µm'])
      expect(writtenSpread(text, 'inch')).toBe(text);
  });
});
