import { expect, it } from 'vitest';
import { advised } from '../../src/hold/advised.ts';
import { holdPlan } from '../../src/hold/plan.ts';
import { aFeature, aJob } from '../jig/a-job.ts';
import { aHolding } from './a-holding.ts';
import { inserts } from './plan-laws.ts';
import { expectRemediesDo, inputOf } from './remedies-laws.ts';

const window = aFeature({
  name: 'window',
  cut: 'profile-inside',
  shape: { kind: 'circle', diameterMm: 60 },
  depthMm: 24,
  through: true,
});

it('offers tabs or a skin for a piece that comes free, and each does hold it', () => {
  const job = aJob({ features: [window], onBed: { x: 140, y: 100 }, inserts });
  const input = inputOf(job, aHolding());
  const { frontUp } = advised(input, holdPlan(input));
  expect(frontUp.pieces[1]!.remedies.map(({ kind }) => kind)).toEqual(['tabs', 'skin']);
  // The shoe passes too low over the head of any screw there.
  expect(expectRemediesDo(input)).toBe(2);
});

it('offers a higher shoe where the shoe alone is in the way, and it does make room', () => {
  const dish = aFeature({
    shape: { kind: 'rectangle', widthMm: 180, heightMm: 110, cornerRadiusMm: 4 },
  });
  const job = aJob({ features: [dish], onBed: { x: 140, y: 100 }, inserts });
  const input = inputOf(job, aHolding());
  const plan = holdPlan(input);
  expect(plan.frontUp.layout).toBeNull();
  const kinds = advised(input, plan).frontUp.remedies.map(({ kind }) => kind);
  expect(kinds).toContain('shoe-higher');
  expect(expectRemediesDo(input)).toBeGreaterThan(0);
});

it('offers nothing where all is well', () => {
  const job = aJob({
    features: [aFeature({ shape: { kind: 'circle', diameterMm: 60 } })],
    onBed: { x: 140, y: 100 },
    inserts,
  });
  const input = inputOf(job, aHolding());
  expect(advised(input, holdPlan(input)).frontUp.remedies).toEqual([]);
});
