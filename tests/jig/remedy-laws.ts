import fc from 'fast-check';
import { expect } from 'vitest';
import { stopsOf } from '../../src/jig/stops.ts';
import type { AboveTip, Band, StopsJob } from '../../src/job/job.ts';
import { evenly } from '../plane/evenly.ts';
import { aFeature, aJob, placed } from './a-job.ts';

export const outline = aFeature({
  name: 'outline',
  shape: { kind: 'rectangle', widthMm: 260, heightMm: 160, cornerRadiusMm: 5 },
  cut: 'profile-outside',
  through: true,
  depthMm: 24,
});

export function withBand(job: StopsJob, band: Band): StopsJob {
  return { ...job, stops: { ...job.stops, band } };
}

export function hung(job: StopsJob, key: keyof AboveTip, fromMm: number): StopsJob {
  const { machine } = job.shop;
  const thing = machine.aboveTip[key];
  const aboveTip = { ...machine.aboveTip, [key]: thing && { ...thing, fromMm } };
  return { ...job, shop: { ...job.shop, machine: { ...machine, aboveTip } } };
}

export const made = (job: StopsJob): boolean => stopsOf(job, placed(job)).kind === 'made';

/** The job after each of the ways that a hint offers, as it would be written in the files. */
export function followed(job: StopsJob, wouldFit: string): readonly StopsJob[] {
  const jobs: StopsJob[] = [];
  const height = /^height: ([\d.]+)/.exec(wouldFit);
  if (height !== null) jobs.push(withBand(job, { kind: 'plain', heightMm: Number(height[1]) }));
  const touch = /touch-height: ([\d.]+)/.exec(wouldFit);
  if (touch !== null) jobs.push(withBand(job, { kind: 'narrow', touchHeightMm: Number(touch[1]) }));
  const keys = { 'collet-nut': 'colletNut', spindle: 'spindle', 'dust-shoe': 'dustShoe' } as const;
  const raised = [...wouldFit.matchAll(/(collet-nut|spindle|dust-shoe): \{from: ([\d.]+)\}/g)];
  if (raised.length > 0)
    jobs.push(
      raised.reduce((one, [, key, mm]) => hung(one, keys[key as 'spindle'], Number(mm)), job),
    );
  return jobs;
}

/** Whatever a hint says makes the stops; how many ways were said, and how often there was none. */
export function expectTrueRemedies(
  seed: number,
  numRuns: number,
): { readonly hints: number; readonly silent: number } {
  let [hints, silent] = [0, 0];
  fc.assert(
    fc.property(
      evenly(4, 20),
      fc.constantFrom<Band['kind']>('plain', 'narrow'),
      fc.constantFrom('set-by-hand' as const, 'milled-in-place' as const),
      evenly(5, 25),
      evenly(5, 30),
      (heightMm, kind, how, shoeMm, nutMm) => {
        const band: Band =
          kind === 'plain' ? { kind, heightMm } : { kind, touchHeightMm: heightMm };
        const plain = aJob({ features: [outline], made: how, stops: { band } });
        const job = hung(hung(plain, 'dustShoe', shoeMm), 'colletNut', nutMm);
        const found = stopsOf(job, placed(job));
        if (found.kind === 'made' || !found.because.includes(' passes ')) return;
        const ways = followed(job, found.wouldFit);
        hints += ways.length;
        if (ways.length === 0) silent += 1;
        for (const way of ways) expect(made(way), found.wouldFit).toBe(true);
      },
    ),
    { seed, numRuns },
  );
  return { hints, silent };
}
