import { expect, it } from 'vitest';
import { paintFor } from '../../src/cli/colour.ts';

const red = (stream: { isTTY?: boolean }, environment: Record<string, string>): boolean =>
  paintFor(stream, environment)('bad', 'missed') !== 'missed';

it('colour is for a person at a terminal who did not refuse it (no-color.org)', () => {
  expect(red({ isTTY: true }, {})).toBe(true);
  expect(red({ isTTY: false }, {})).toBe(false);
  expect(red({}, {})).toBe(false);
  expect(red({ isTTY: true }, { NO_COLOR: '1' })).toBe(false);
  expect(red({ isTTY: true }, { NO_COLOR: '' })).toBe(true);
  expect(red({ isTTY: true }, { TERM: 'dumb' })).toBe(false);
  expect(red({}, { FORCE_COLOR: '1' })).toBe(true);
  expect(red({}, { FORCE_COLOR: '0' })).toBe(false);
  expect(red({}, { FORCE_COLOR: '1', NO_COLOR: '1' })).toBe(false);
});

it('a painted text keeps its words', () => {
  const painted = paintFor({ isTTY: true }, {})('good', 'met');
  expect(painted.replace(/\u001b\[\d+m/g, '')).toBe('met');
});
