import { cutterAtFaceMm, isCutFromOutside } from '../job/cutting.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Feature, Job, Turn } from '../job/job.ts';
import { isInsidePath, toPathMm } from '../plane/path-distance.ts';
import type { Point } from '../plane/point.ts';
import { tenths } from './laid.ts';

/** Wood to leave between a dowel hole and a cut, mm, and hole middles from the blank's edge in diameters (bench practice 3). */
const [WOOD_MM, EDGE_DIAMETERS] = [3, 2] as const;
/** Two dowels nearer than this, in diameters, hold no angle. */
const APART_DIAMETERS = 4;

/** Thicker pins for thicker blanks, mm (bench practice 3). */
export const dowelDiameterMm = (thickMm: number): number => (thickMm < 25 ? 6 : 8);

/** Whether something of the blank is cut away round the part: then dowels can stand in the waste. */
export const hasWaste = (job: Job): boolean =>
  job.features.some(({ cut }) => cut === 'profile-outside');

/** Two places on the turn line as far apart as can be; null when cuts leave no room there. */
export function placesOnTurnLine(
  job: Job,
  turn: Turn,
  diameterMm: number,
): readonly Point<'blank'>[] | null {
  const { widthMm, heightMm } = job.blank;
  const alongY = turn === 'about-y';
  const lengthMm = alongY ? heightMm : widthMm;
  const at = (mm: number): Point<'blank'> =>
    alongY ? { x: widthMm / 2, y: mm } : { x: mm, y: heightMm / 2 };
  const edge = EDGE_DIAMETERS * diameterMm;
  const low = firstFree(job, diameterMm, edge, lengthMm / 2, at);
  const high = firstFree(job, diameterMm, edge, lengthMm / 2, (mm) => at(lengthMm - mm));
  if (low === null || high === null) return null;
  const apart = lengthMm - low - high;
  return apart < APART_DIAMETERS * diameterMm ? null : [at(low), at(lengthMm - high)];
}

/** Four places in pairs about the turn line, as far out as can be; null when cuts leave no room. */
export function placesInPairs(job: Job, diameterMm: number): readonly Point<'blank'>[] | null {
  const { widthMm, heightMm } = job.blank;
  const edge = EDGE_DIAMETERS * diameterMm;
  const four = (inX: number, inY: number): readonly Point<'blank'>[] => [
    { x: inX, y: inY },
    { x: widthMm - inX, y: inY },
    { x: inX, y: heightMm - inY },
    { x: widthMm - inX, y: heightMm - inY },
  ];
  for (let more = 0; more < Math.min(widthMm, heightMm) / 4; more++) {
    for (const [x, y] of [
      [edge, edge + more],
      [edge + more, edge],
    ] as const) {
      const places = four(tenths(x), tenths(y));
      if (places.every((place) => isFree(job, place, diameterMm))) return places;
    }
  }
  return null;
}

function firstFree(
  job: Job,
  diameterMm: number,
  from: number,
  to: number,
  at: (mm: number) => Point<'blank'>,
): number | null {
  for (let mm = from; mm < to; mm++) if (isFree(job, at(mm), diameterMm)) return mm;
  return null;
}

/** Whether a dowel hole there keeps its wood round it, and is in the waste when there is any. */
export function isFree(job: Job, place: Point<'blank'>, diameterMm: number): boolean {
  return job.features.every((feature) => {
    const path = featurePath(feature);
    const keepMm = diameterMm / 2 + WOOD_MM + grooveMm(feature);
    return !isInsidePath(place, path) && toPathMm(place, path) >= keepMm;
  });
}

/** How far a cut reaches out over its outline. */
const grooveMm = (feature: Feature): number =>
  isCutFromOutside(feature.cut) ? 2 * cutterAtFaceMm(feature) : 0;
