import type { Face, Feature, StopsJob } from '../../../src/job/job.ts';
import { blankInLayout, placingsOf } from '../../../src/setup/place.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, type Lie } from '../second-model/lie.ts';
import { realBlank } from '../second-model/real-blank.ts';
import { realStops } from '../second-model/real-stops.ts';
import { plus, turned, type XY } from '../second-model/vectors.ts';
import { foundZero, type Found, type Laid } from '../second-model/zeroing.ts';
import { solidSeated } from './solid-seating.ts';

/** A blank laid twice as a solid; `lands` says where the cut of that name for a blank place comes out. */
export interface SolidTurnOver {
  /** On the blank in its size of the first placing, mm. */
  readonly lands: (cut: string, face: Face, at: XY) => XY;
}

export function solidTurnOver(job: StopsJob, off: Off): SolidTurnOver {
  const { frontUp, backUp } = placingsOf(job);
  const [one, two] = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  const first = laidOf(job, off, one);
  const firstZero = foundZero(first, null);
  const second = laidOf(job, off, two);
  const { xy } = two.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const secondZero =
    xy.kind === 'hole'
      ? inHole(
          second,
          (hole) =>
            cutAt(first, firstZero, `feature ${hole.name}`, hole.at, first.blank.thickMm / 2),
          xy.feature,
        )
      : foundZero(second, firstZero);
  return {
    lands: (cut, face, at) =>
      one.faceUp === face ? cutAt(first, firstZero, cut, at) : cutAt(second, secondZero, cut, at),
  };
}

function laidOf(job: StopsJob, off: Off, placing: Placing): Laid {
  const blank = realBlank(job, off, placing, job.stops.band);
  const stops = realStops(job, off);
  return { job, off, placing, blank, stops, lie: solidSeated(job, off, placing, blank, stops) };
}

/** The axis of the cutter is a line that leans; where it was found at one height, it is elsewhere at another. */
function cutAt(
  { job, off, placing, blank, lie }: Laid,
  zero: Found,
  cut: string,
  at: XY,
  heightMm = blank.thickMm,
): XY {
  const get = (key: string): number => off[key] ?? 0;
  const told = blankInLayout(job, placing.mirror, at);
  const noise = (axis: 'x' | 'y'): number =>
    get(`repeatability/${cut}/${axis}`) + get(`lost-motion/${cut}/${axis}`);
  const axisAt = (heightMm: number): XY => ({
    x: (heightMm - zero.heightMm) * get('cutter-lean/x'),
    y: (heightMm - zero.heightMm) * get('cutter-lean/y'),
  });
  const [u, v] = [told.x - zero.nominal.x, told.y - zero.nominal.y];
  const reached = {
    x:
      zero.at.x +
      u * (1 + get('scale/x')) +
      (told.y - zero.yTouchedMm) * get('machine-lean') +
      noise('x'),
    y: zero.at.y + v * (1 + get('scale/y')) + noise('y'),
  };
  const { x, y } = inBlank(lie, plus(reached, axisAt(heightMm)));
  return { x: x / blank.stretch.x, y: y / blank.stretch.y };
}

/** Zero at the middle of a hole, found where it is now, at half the thickness: it leans as its cutter does. */
function inHole(laid: Laid, landed: (hole: Feature) => XY, name: string): Found {
  const { job, off, placing, blank, lie } = laid;
  const hole = job.features.find((feature) => feature.name === name)!;
  const { x, y } = landed(hole);
  const now = onMachine(lie, { x: x * blank.stretch.x, y: y * blank.stretch.y });
  const touch = (axis: 'x' | 'y'): number => off[`zero-touch/${placing.faceUp}-up/${axis}/1`] ?? 0;
  const nominal = blankInLayout(job, placing.mirror, hole.at);
  return {
    at: plus(now, { x: touch('x'), y: touch('y') }),
    nominal,
    yTouchedMm: nominal.y,
    heightMm: job.blank.thickMm / 2,
  };
}

/** Machine place of a blank place: the way of `inBlank`, backwards. */
function onMachine(lie: Lie, { x, y }: XY): XY {
  const laid = {
    x: lie.mirror === 'x' ? lie.widthMm - x : x,
    y: lie.mirror === 'y' ? lie.heightMm - y : y,
  };
  return plus(plus(lie.pivot, turned(plus(laid, lie.pivot, -1), lie.turnRad)), lie.shift);
}
