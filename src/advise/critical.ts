import type { Job, Need } from '../job/job.ts';
import type { Point } from '../plane/point.ts';

/** Where on the blank a need is judged: the middle of its features, or its point; null for what is judged nowhere in particular. */
export function placeOfNeed(job: Job, need: Need): Point<'blank'> | null {
  if (need.kind === 'misalignment') return need.at;
  if (need.kind === 'goes-on') return null;
  const names = 'features' in need ? need.features : [need.feature];
  const places = job.features.filter(({ name }) => names.includes(name)).map(({ at }) => at);
  return places.length === 0 ? null : middleOf(places);
}

/** Needs that hang on where cuts land in plan, and those that hang on heights. */
export const isAboutPlan = (need: Need): boolean =>
  need.kind !== 'web' && need.kind !== 'depth' && need.kind !== 'goes-on' && need.kind !== 'size';
export const isAboutHeight = (need: Need): boolean => need.kind === 'web' || need.kind === 'depth';

/** The middle of the places where these needs are judged; of the blank when there are none. */
export function criticalPlace(job: Job, isMeant: (need: Need) => boolean): Point<'blank'> {
  const places = job.needs.filter(isMeant).flatMap((need) => placeOfNeed(job, need) ?? []);
  const { widthMm, heightMm } = job.blank;
  return places.length === 0 ? { x: widthMm / 2, y: heightMm / 2 } : middleOf(places);
}

function middleOf(places: readonly Point<'blank'>[]): Point<'blank'> {
  const mean = (axis: 'x' | 'y'): number =>
    places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  return { x: mean('x'), y: mean('y') };
}
