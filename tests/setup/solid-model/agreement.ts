import type { Edge, StopsJob, Need } from '../../../src/job/job.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import { deviationKey } from '../../../src/setup/deviation.ts';
import { misfitModel } from '../../../src/setup/misfit.ts';
import { comeTo } from '../come-to.ts';
import { misalign, type Off } from '../misalign.ts';
import { apart, askedOf, roundingMm } from '../second-model/agreement.ts';
import { allOff, randomsOf } from '../second-model/all-off.ts';
import type { SetUp } from '../second-model/set-ups.ts';
import { leastSolidWeb, solidDepth } from './solid-depth.ts';
import { grooveSize } from './solid-groove.ts';
import { solidTurnOver } from './solid-lands.ts';
import type { ThickJob } from './thick-jobs.ts';

/** How far apart the production model and the solid on its stops are, mm, and how far they may be. */
export function solidAgreement(setUp: SetUp): { apartMm: number; allowedMm: number } {
  const { job, at } = setUp;
  const off = askedOf(job, notRocking(job, allOff(setUp)));
  const model = solidTurnOver(job, off);
  const [front, back] = [model.lands('front', 'front', at), model.lands('back', 'back', at)];
  return {
    apartMm: apart(misalign(job, off, at), [back.x - front.x, back.y - front.y]),
    allowedMm: roundingMm(job, off),
  };
}

/** Edges that lie against a fence arm hollow or straight: one that bulges can rest anywhere, so nothing is to be found. */
function notRocking(job: StopsJob, off: Off): Off {
  if (job.stops.fenceTouch.kind !== 'arm') return off;
  const { frontUp, backUp } = placingsOf(job);
  const key = (edge: Edge): string => `crook/${edge}`;
  return Object.fromEntries(
    Object.entries(off).map(([name, value]) =>
      name === key(frontUp.base.edge) || name === key(backUp.base.edge)
        ? [name, -Math.abs(value)]
        : [name, value],
    ),
  );
}

/**
 * Production takes the edge of a V groove as lines and arcs through landed places, with a cutter that still opens it by more
 * than half of what it should: nearly closed, its corners strayed by 0.1 mm in one of 2000 grooves.
 */
const GROOVE_MM = 1e-6;
const EXACT_MM = 1e-9;

/** How far apart every depth, web and groove of a job is by both models, mm, and how far it may be. */
export function thicknessAgreement({
  job,
  seed,
}: ThickJob): readonly { readonly apartMm: number; readonly allowedMm: number }[] {
  const feature = (name: string) => job.features.find((one) => one.name === name)!;
  return job.needs.map((need, index) => {
    const next = randomsOf(seed + index);
    const keys = misfitModel({ ...job, needs: [need] }).deviations.map(deviationKey);
    const off = Object.fromEntries(
      keys.map((key) => [key, sizeOf(need, key) * luckFor(key, next())]),
    );
    const [production] = comeTo(job, need, off);
    if (need.kind === 'depth') {
      const one = feature(need.feature);
      const apartMm = Math.abs(production! - solidDepth(job, off, one)(one.at));
      return { apartMm, allowedMm: EXACT_MM };
    }
    if (need.kind === 'size') {
      const size = grooveSize(job, off, feature(need.feature), need.along);
      return { apartMm: Math.abs(production! - size), allowedMm: GROOVE_MM };
    }
    if (need.kind !== 'web') throw new Error(`${need.kind} is no thickness`);
    const [one, other] = need.features.map(feature);
    const web = leastSolidWeb(job, off, one!, other!);
    return { apartMm: Math.abs(production! - web), allowedMm: EXACT_MM };
  });
}

/** From -1 to 1; humps and swarf are never negative. */
const luckFor = (key: string, share: number): number =>
  key === 'cup' || key.startsWith('swarf') ? share : 2 * share - 1;

/** Largest size of what is off, mm or tangent; far beyond any shop's. */
const sizeOf = (need: Need, key: string): number => {
  // Across the width of one groove production takes the depth as a plane, so a cup is left out of those.
  if (key === 'cup' && need.kind === 'size') return 0;
  // The edge of a groove as lines and arcs strays with the square of how the cone leans.
  if (/^(thickness-taper|bed-lean)/.test(key)) return need.kind === 'size' ? 0.004 : 0.02;
  if (/^(cup-side|cup|swarf)/.test(key)) return 1;
  if (!/^(thickness|bed-height|z-touch|cutter-radius|push-off|tip-flat)/.test(key)) return 0;
  return need.kind === 'size' ? 0.2 : 0.5;
};
