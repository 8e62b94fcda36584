import type { Cutter, Job } from '../../job/job.ts';
import { betweenOutlinesMm } from '../../plane/distance.ts';
import { arc, type Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';
import type { Body } from '../../sweep/body.ts';
import { overheadOf, type Overhead } from '../../sweep/overhead.ts';
import { cannot, mm, type Cannot } from '../answer.ts';
import { layoutOnBed } from '../../setup/place.ts';
import { roundingMm, stopNumbers } from '../numbers.ts';
import type { Place, Program } from './program.ts';

/** One straight piece of the way of the cutter's tip, layout frame and height above the bed, mm. */
export interface Leg {
  readonly from: Point<'layout'>;
  readonly to: Point<'layout'>;
  readonly lowMm: number;
}

/**
 * Why a program must not be written, or null: it leaves the travel, goes through the spoilboard, or
 * the cutter, nut or spindle would strike a body. Taken for granted: the travel begins over the bed's
 * near-left corner, and the dust shoe is off where a caution says so.
 */
export function programClash(
  job: Job,
  program: Program,
  cutter: Cutter,
  bodies: readonly Body[],
): Cannot | null {
  return legsClash(job, program, legsOf(program), cutter, bodies);
}

/** The same for any way of the tip, planned or read back; places of it are off by up to `slackMm`. */
export function legsClash(
  job: Job,
  program: Pick<Program, 'name' | 'safeMm'>,
  legs: readonly Leg[],
  cutter: Cutter,
  bodies: readonly Body[],
  slackMm = roundingMm,
): Cannot | null {
  return (
    outOfTravel(job, program, legs, slackMm) ??
    legs.reduce<Cannot | null>(
      (found, leg) => found ?? strikeOn(job, program, cutter, leg, bodies, slackMm),
      null,
    )
  );
}

/** Every place of the way in order, arcs as chords. */
export function wayOf(program: Program): readonly Place[] {
  const { witness, safeMm } = program;
  let here: Place = { ...witness.at, z: safeMm };
  const way: Place[] = [here, witness.at, here];
  const go = (to: Place): void => {
    here = to;
    way.push(to);
  };
  for (const move of program.moves)
    switch (move.kind) {
      case 'note':
        break;
      case 'up':
        go({ ...here, z: safeMm });
        break;
      case 'over':
        go({ x: move.x, y: move.y, z: safeMm });
        break;
      case 'cut':
        go(move.to);
        break;
      case 'arc':
        for (const place of chordsOf(here, move)) go(place);
        break;
    }
  return way;
}

function chordsOf(
  from: Place,
  { to, centre, turn }: Extract<Program['moves'][number], { kind: 'arc' }>,
): readonly Place[] {
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const end = Math.atan2(to.y - centre.y, to.x - centre.x);
  const full = 2 * Math.PI;
  const ahead = turn === 'counter-clockwise' ? end - start : start - end;
  const isFull = from.x === to.x && from.y === to.y;
  const angle = isFull ? full : ((ahead % full) + full) % full;
  const sweep = turn === 'counter-clockwise' ? angle : -angle;
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const places = arc(centre.x, centre.y, radius, start, start + sweep, stopNumbers.chordMm);
  return places
    .map((p, i) => ({ ...p, z: from.z + ((to.z - from.z) * i) / (places.length - 1) }))
    .slice(1);
}

function legsOf(program: Program): readonly Leg[] {
  const way = wayOf(program);
  const onLayout = (p: Place): Point<'layout'> => ({
    x: p.x + program.zeroAt.x,
    y: p.y + program.zeroAt.y,
  });
  return way.slice(1).map((to, i) => ({
    from: onLayout(way[i]!),
    to: onLayout(to),
    lowMm: Math.min(way[i]!.z, to.z),
  }));
}

function outOfTravel(
  job: Job,
  program: Pick<Program, 'name' | 'safeMm'>,
  legs: readonly Leg[],
  slackMm: number,
): Cannot | null {
  const { travelMm } = job.shop.machine;
  const lowestMm = -mostOf(legs.map((leg) => -leg.lowMm));
  if (program.safeMm - lowestMm > travelMm.z + slackMm)
    return cannot(
      `${program.name}: goes from ${mm(program.safeMm)} down to ${mm(lowestMm)}, more than the ${mm(travelMm.z)} that Z travels`,
      'lower stops, or a shallower cut',
    );
  const thickMm = job.shop.bed.spoilboard.thickMm;
  if (lowestMm < -thickMm - slackMm)
    return cannot(
      `${program.name}: goes ${mm(-lowestMm)} into a spoilboard ${mm(thickMm)} thick`,
      `a depth of ${mm(thickMm)} or less`,
    );
  const places = legs.map(({ to }) => layoutOnBed(job, to));
  for (const axis of ['x', 'y'] as const) {
    const beyondMm = mostOf(places.map((p) => Math.max(-p[axis], p[axis] - travelMm[axis])));
    if (beyondMm > slackMm)
      return cannot(
        `${program.name}: the cutter would go ${mm(beyondMm)} beyond the travel of ${axis.toUpperCase()}`,
        'on-bed: further from that end',
      );
  }
  return null;
}

function strikeOn(
  job: Job,
  program: Pick<Program, 'name'>,
  cutter: Cutter,
  leg: Leg,
  bodies: readonly Body[],
  slackMm: number,
): Cannot | null {
  for (const thing of overheadOf(job, cutter)) {
    if (thing.plan.kind !== 'disc') continue;
    const least = leastApartMm(thing, thing.plan.radiusMm);
    for (const body of bodies) {
      const overMm = leg.lowMm + thing.fromMm - body.highMm + slackMm;
      if (overMm >= (thing.what === 'cutter' ? 0 : stopNumbers.clearOverMm)) continue;
      const apartMm = betweenOutlinesMm<'layout'>(
        [leg.from, leg.to] as Outline<'layout'>,
        body.outline,
      );
      if (apartMm < least - slackMm)
        return cannot(
          `${program.name}: the ${thing.what} would strike the ${body.name}, ${mm(least - apartMm)} too near`,
          `a ${thing.what === 'cutter' ? 'thinner cutter, or on-bed: where nothing stands there' : 'cutter that sticks out further'}`,
        );
    }
  }
  return null;
}

/** The cutter may touch a finished face, it mills it; the rest keeps clear. */
const leastApartMm = ({ what }: Overhead, radiusMm: number): number =>
  what === 'cutter' ? radiusMm : radiusMm + stopNumbers.clearBesideMm;

/** A program may have more places than a call takes arguments. */
const mostOf = (all: readonly number[]): number =>
  all.reduce((most, x) => Math.max(most, x), -Infinity);
