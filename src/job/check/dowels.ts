import { hypotenuse } from '../../num/elementary.ts';
import { isInsidePath } from '../../plane/path-distance.ts';
import type { Point } from '../../plane/point.ts';
import { featurePath } from '../feature-path.ts';
import type { Blank, DowelHoles, Turn } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { featureOfCopy } from '../resolve/repeat.ts';
import { said } from '../text/said.ts';
import { checkFenceAndDowel } from './fence-and-dowel.ts';
import type { Known } from './job.ts';

const [FEWEST, MOST] = [2, 4] as const;
/** A hole that falls on another when it is turned over may be off it by this much, mm. */
const SAME_PLACE_MM = 0.01;

/** Dowels must be in the blank, apart, fall on each other when it is turned over, and not be cut away before. */
export function checkDowels(context: Context, known: Known): void {
  const { raw, locating } = known;
  if (locating === null) return;
  if (locating.locating === 'fence-and-dowel' && raw.stops?.dowel !== undefined) {
    const { dowel } = locating.fenceAndDowel;
    checkPlaces(context, known, dowel, () => [raw.stops!.dowel!, 'at']);
    checkFenceAndDowel(context, known, locating.fenceAndDowel);
    return;
  }
  if (locating.locating !== 'dowels' || raw.dowels === undefined) return;
  const { dowels } = locating;
  const list = raw.dowels.at;
  const { length } = dowels.at;
  if (length < FEWEST || length > MOST) {
    fault(
      context,
      [raw.dowels, 'at'],
      `there ${length === 1 ? 'is 1 dowel' : `are ${length} dowels`}, and ${FEWEST} to ${MOST} locate a blank`,
      length < FEWEST
        ? 'write two places, far apart, or stops with a dowel'
        : 'keep the two to four that are farthest apart',
    );
    return;
  }
  checkPlaces(context, known, dowels, (k) => [list, k]);
  if (raw.turn !== undefined) checkMirror(context, list, dowels, raw.turn);
}

type PlaceOf = (k: number) => readonly [object, string | number];

function checkPlaces(
  context: Context,
  { raw, blank, features, copies }: Known,
  { at, diameterMm }: DowelHoles,
  placeOf: PlaceOf,
): void {
  const first = raw.first ?? 'front';
  const cutAway = features
    .filter(({ feature, raw: written }) => !context.spoilt.has(written) && feature.face === first)
    .flatMap(({ feature }) => copies.map((copy) => featureOfCopy(feature, copy)))
    .filter(({ through, cut }) => through && cut !== 'profile-outside');
  at.forEach((place, k) => {
    if (blank !== null) checkInBlank(context, place, diameterMm / 2, blank, placeOf(k));
    const near = at.findIndex((other, j) => j < k && apart(place, other) < diameterMm);
    if (near >= 0)
      fault(
        context,
        placeOf(k),
        `this dowel is ${said(apart(place, at[near]!))} mm from another, and they are ${said(diameterMm)} mm thick`,
        'set them as far apart as the blank allows',
      );
    const hole = cutAway.find((feature) => isInsidePath(place, featurePath(feature)));
    if (hole !== undefined)
      fault(
        context,
        placeOf(k),
        `${hole.name} is cut right through there in the first placing, so nothing is left to put on the dowel`,
        'name a place that is still there, as in the waste',
      );
  });
}

function checkInBlank(
  context: Context,
  place: Point<'blank'>,
  radiusMm: number,
  { widthMm, heightMm }: Blank,
  where: readonly [object, string | number],
): void {
  const isIn =
    place.x >= radiusMm &&
    place.x <= widthMm - radiusMm &&
    place.y >= radiusMm &&
    place.y <= heightMm - radiusMm;
  if (isIn) return;
  fault(
    context,
    where,
    `a dowel hole at [${said(place.x)}, ${said(place.y)}] is not within the blank, which is ${said(widthMm)} by ${said(heightMm)} mm`,
    `stay ${said(radiusMm)} mm or more, half its diameter, inside every edge`,
  );
}

/** Turned over, each hole must fall on one: on the line, in pairs about it, or both. */
function checkMirror(context: Context, list: object, { at }: DowelHoles, turn: Turn): void {
  const axis = turn === 'about-y' ? 'x' : 'y';
  const along = at.map((place) => place[axis]);
  const lineMm = (Math.min(...along) + Math.max(...along)) / 2;
  const lonely = at.findIndex((place) => {
    const turned = { ...place, [axis]: 2 * lineMm - place[axis] };
    return !at.some((other) => apart(turned, other) <= SAME_PLACE_MM);
  });
  if (lonely < 0) return;
  const turned = { ...at[lonely]!, [axis]: 2 * lineMm - at[lonely]![axis] };
  fault(
    context,
    [list, lonely],
    `turned ${turn} about ${axis} = ${said(lineMm)}, half-way between the outermost dowels, this hole comes to [${said(turned.x)}, ${said(turned.y)}], where there is no dowel`,
    `set the dowels on one line along ${axis === 'x' ? 'Y' : 'X'}, or in pairs on both sides of it`,
  );
}

const apart = (one: Point<'blank'>, other: Point<'blank'>): number =>
  hypotenuse(one.x - other.x, one.y - other.y);
