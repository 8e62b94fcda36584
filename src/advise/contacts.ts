import type { Edge, Job } from '../job/job.ts';
import { criticalPlace, isAboutPlan } from './critical.ts';
import { isAlongX, tenths } from './laid.ts';

/** Mirror images about the middle, far apart (bench practice 3: 60 to 70 % of the edge or more). */
export function buttonsOn(edgeMm: number): readonly [number, number] {
  const inMm = Math.round(Math.max(Math.min(10, edgeMm / 4), edgeMm * 0.1));
  return [inMm, tenths(edgeMm - inMm)];
}

/** The side button level with where the plan is judged, counted from the front-up corner. */
export function levelButton(job: Job, fence: Edge, frontUp: string): number {
  const { x, y } = criticalPlace(job, isAboutPlan);
  const { widthMm, heightMm } = job.blank;
  const [at, lengthMm, isHighEnd] = isAlongX(fence)
    ? [y, heightMm, frontUp.startsWith('far')]
    : [x, widthMm, frontUp.endsWith('right')];
  const mm = isHighEnd ? lengthMm - at : at;
  const in10 = Math.min(10, lengthMm / 4);
  return tenths(Math.min(lengthMm - in10, Math.max(in10, mm)));
}

/** The largest flat cutter that the job uses already, so that one radius serves. */
export function millOf(job: Job): string {
  const flat = job.features.map(({ cutter }) => cutter).filter(({ kind }) => kind === 'flat');
  const all = flat.length > 0 ? flat : job.shop.cutters.filter(({ kind }) => kind === 'flat');
  return (
    all.toSorted((a, b) => b.diameterMm - a.diameterMm)[0]?.name ?? job.shop.cutters[0]?.name ?? ''
  );
}
