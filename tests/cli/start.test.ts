// The built program, run with plain node: named imports that only work under a bundler die here.
// Every verb's own run is in the deep tests.
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { flipwright, JIGS } from './run.ts';

it('the built program starts, checks a job and says in words what is wrong with an order', () => {
  const checked = flipwright(['check', join(JIGS, 'wall-clock-plain.yaml')]);
  expect(checked.err).toBe('');
  expect(checked.out).toContain('nothing is wrong');
  expect(checked.code).toBe(1);
  const slip = flipwright(['predcit', join(JIGS, 'wall-clock-plain.yaml')]);
  expect(slip.code).toBe(2);
  expect(slip.err).toContain('Did you mean predict?');
}, 60_000);
