import { describe, expect, it } from 'vitest';
import { expectTrueRemedies } from './remedy-laws.ts';

describe('what would fit, when something strikes a stop, by the hundreds', () => {
  it('makes the stops, whichever way of it is followed', () => {
    const { hints, silent } = expectTrueRemedies(52, 300);
    expect(hints).toBeGreaterThan(150);
    expect(silent).toBeLessThan(hints);
  });
});
