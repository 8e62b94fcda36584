import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sdOf } from '../../src/num/spread-of.ts';
import { withGauge } from '../../src/cli/gauge-option.ts';
import { runOptions } from '../../src/cli/options.ts';
import { JIGS } from './run.ts';

const gaugeSd = (gauge: string, job = 'wall-clock.yaml'): number =>
  sdOf(withGauge(runOptions({ seed: 1, gauge }, 1), join(JIGS, job)).gauge!);

describe('--gauge', () => {
  it('takes a spread, or the name of a gauge of the shop', () => {
    // A rectangle of half-width a has sd a / sqrt 3 (GUM 4.3.7).
    expect(gaugeSd('±0.03')).toBeCloseTo(0.03 / Math.sqrt(3), 12);
    expect(gaugeSd('0.02 sd')).toBe(0.02);
    expect(gaugeSd('caliper')).toBe(gaugeSd('±0.03'));
    expect(gaugeSd('dial')).toBeCloseTo(0.01 / Math.sqrt(3), 12);
    // The shop in inches has another caliper: plus or minus a thousandth.
    expect(gaugeSd('caliper', 'gauge-lid.yaml')).toBeCloseTo(0.0254 / Math.sqrt(3), 12);
    expect(withGauge(runOptions({ seed: 1 }, 1), 'none.yaml').gauge).toBeUndefined();
  });

  it.each([
    [
      'calipr',
      /--gauge calipr: not in .*shop\.yaml; did you mean caliper\?; gauges there: caliper, square, dial; or write/,
    ],
    ['laser', /--gauge laser: not in .*shop\.yaml; gauges there: caliper, square, dial; or write/],
    ['square', /--gauge square: good to 0\.02 per 100 in .*shop\.yaml, which is not for lengths/],
    ['±0.03 furlongs', /--gauge: /],
    ['toString', /--gauge toString: not in/],
  ])('refuses %s and names what there is', (gauge, message) => {
    expect(() => gaugeSd(gauge)).toThrow(message);
  });
});
