import type { BoltWish, Holding } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { differenceOf, grown, intersectionOf } from '../plane/clip.ts';
import { mapped } from '../plane/move.ts';
import type { Outline } from '../plane/outline.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import type { Clash } from '../sweep/clash.ts';
import type { KeepClear } from '../sweep/keep-clear.ts';
import { pieceOf } from '../sweep/piece.ts';
import { boltPlaces, type BoltPlace } from './bolts.ts';
import { kerfOf } from './kerf.ts';
import { holdNumbers } from './numbers.ts';
import { strapPlaces, type StrapPlace } from './strap-place.ts';

/** Why a strap that a bolt can reach may not lie there. */
export type Refusal =
  | { readonly kind: 'struck'; readonly clash: Clash }
  | { readonly kind: 'hollow'; readonly feature: string }
  /** Of a part that is not a rectangle: its edge is not where the strap's nose comes down. */
  | { readonly kind: 'beside' }
  | { readonly kind: 'in-the-way'; readonly body: string };

export interface Refused {
  readonly place: StrapPlace;
  readonly because: Refusal;
}

export interface Candidates {
  readonly free: readonly StrapPlace[];
  readonly refused: readonly Refused[];
  /** Bolts that no strap of the shop can use for this blank. */
  readonly outOfReachCount: number;
}

export const holdMargin = { overMm: holdNumbers.overMm, besideMm: holdNumbers.besideMm };

/** A bolt is the wished one within this, mm. */
const SAME_BOLT_MM = 1;

export const isSameBolt = (a: BoltPlace['onBed'], b: BoltPlace['onBed']): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) <= SAME_BOLT_MM;

/** Every strap that can lie in a placing: in reach, over solid wood, clear of what stands and what moves. */
export function candidatesOf(
  job: Job,
  holding: Holding,
  placing: Placing,
  clear: KeepClear,
  standing: readonly Body[],
  wish: BoltWish,
): Candidates {
  const bolts = boltPlaces(job, holding).filter(
    ({ onBed }) => !wish.forbid.some((at) => isSameBolt(at, onBed)),
  );
  const hollows = hollowsOf(job, holding, placing);
  const { box, outline } = pieceOf(job, placing);
  const lying = { box, thickMm: job.blank.thickMm };
  const [free, refused]: [StrapPlace[], Refused[]] = [[], []];
  let outOfReachCount = 0;
  for (const bolt of bolts) {
    const places = holding.straps.flatMap((strap) => strapPlaces(lying, strap, bolt));
    if (places.length === 0) outOfReachCount += 1;
    for (const place of places) {
      const because = refusalOf(place, outline, hollows, clear, standing);
      if (because === null) free.push(place);
      else refused.push({ place, because });
    }
  }
  return { free: withoutWeaker(free), refused, outOfReachCount };
}

/** Of straps that press on the same place, the strongest: the others hold no better anywhere. */
function withoutWeaker(free: readonly StrapPlace[]): readonly StrapPlace[] {
  return free.filter(
    (one, k) =>
      !free.some(
        (other, j) =>
          j !== k &&
          Math.hypot(one.padAt.x - other.padAt.x, one.padAt.y - other.padAt.y) < SAME_BOLT_MM &&
          (other.leastN > one.leastN || (other.leastN === one.leastN && j < k)),
      ),
  );
}

interface Hollow {
  readonly feature: string;
  readonly outlines: readonly Outline<'layout'>[];
}

/** Where the blank does not lie solid on the bed in this placing, or will be cut away on top. */
function hollowsOf(job: Job, holding: Holding, placing: Placing): readonly Hollow[] {
  return job.features.flatMap((feature) => {
    const isUp = feature.face === placing.faceUp;
    const isCutBefore = placing.order === 'second' && !isUp;
    if (!isUp && !isCutBefore) return [];
    if (isCutBefore && holding.hasFiller && !feature.through) return [];
    const outlines = kerfOf(feature).map((outline) =>
      mapped<'blank', 'layout'>(
        outline,
        (p) => blankInLayout(job, placing.mirror, p),
        placing.mirror === 'none',
      ),
    );
    return [{ feature: feature.name, outlines }];
  });
}

function refusalOf(
  place: StrapPlace,
  lying: Outline<'layout'>,
  hollows: readonly Hollow[],
  clear: KeepClear,
  standing: readonly Body[],
): Refusal | null {
  if (differenceOf([place.pad], [lying]).length > 0) return { kind: 'beside' };
  const hollow = hollows.find(({ outlines }) => intersectionOf([place.pad], outlines).length > 0);
  if (hollow !== undefined) return { kind: 'hollow', feature: hollow.feature };
  const inWay = standing.find((other) => place.bodies.some((one) => areInTheWay(one, other)));
  if (inWay !== undefined) return { kind: 'in-the-way', body: inWay.name };
  const clash = clear(place.bodies, holdMargin).toSorted((a, b) => b.shortMm - a.shortMm)[0];
  return clash === undefined ? null : { kind: 'struck', clash };
}

/** A bar may pass over what is lower than it; what stands on the bed beside it needs room. */
const areInTheWay = (one: Body, other: Body): boolean =>
  other.highMm > one.lowMm &&
  intersectionOf(grown([one.outline], BETWEEN_MM, 0.05), [other.outline]).length > 0;

/** Between a clamp and what stands beside it, mm: room for a finger's width of error. Common practice. */
const BETWEEN_MM = 1;

/** Whether two straps can lie at once. */
export const fitTogether = (a: StrapPlace, b: StrapPlace): boolean =>
  a.bolt.onBed !== b.bolt.onBed &&
  a.bodies.every((one) =>
    b.bodies.every((other) => intersectionOf([one.outline], [other.outline]).length === 0),
  );
