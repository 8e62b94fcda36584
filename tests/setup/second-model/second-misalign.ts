import type { StopsJob } from '../../../src/job/job.ts';
import { blankInLayout, placingsOf } from '../../../src/setup/place.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank } from './lie.ts';
import { realBlank } from './real-blank.ts';
import { realStops } from './real-stops.ts';
import { seated } from './seating.ts';
import type { XY } from './vectors.ts';
import { foundZero, type Found, type Laid } from './zeroing.ts';

/** Back minus front at a blank point, mm, by feeling for every contact in the machine's frame. */
export function secondMisalign(job: StopsJob, off: Off, at: XY): [number, number] {
  const { frontUp, backUp } = placingsOf(job);
  const [front, back] = [laidOf(job, off, frontUp), laidOf(job, off, backUp)];
  const zeroes = job.first === 'front' ? inOrder(front, back) : inOrder(back, front).toReversed();
  const one = lands(front, zeroes[0]!, at);
  const other = lands(back, zeroes[1]!, at);
  return [other.x - one.x, other.y - one.y];
}

function inOrder(first: Laid, second: Laid): Found[] {
  const zero = foundZero(first, null);
  return [zero, foundZero(second, zero)];
}

function laidOf(job: StopsJob, off: Off, placing: Placing): Laid {
  const blank = realBlank(job, off, placing, job.stops.band);
  const stops = realStops(job, off);
  return { job, off, placing, blank, stops, lie: seated(job, off, placing, blank, stops) };
}

/** Where the cut for a blank point lands on the blank, in its size of the first placing. */
function lands({ job, off, placing, blank, lie }: Laid, zero: Found, at: XY): XY {
  const get = (key: string): number => off[key] ?? 0;
  const told = blankInLayout(job, placing.mirror, at);
  const noise = (axis: 'x' | 'y'): number =>
    get(`repeatability/${placing.faceUp}/${axis}`) +
    get(`lost-motion/${placing.faceUp}/${axis}`) +
    get(`cutter-lean/${axis}`) * (blank.thickMm - zero.heightMm);
  const cut = {
    x:
      zero.at.x +
      (1 + get('scale/x')) * (told.x - zero.nominal.x) +
      get('machine-lean') * (told.y - zero.yTouchedMm) +
      noise('x'),
    y: zero.at.y + (1 + get('scale/y')) * (told.y - zero.nominal.y) + noise('y'),
  };
  const landed = inBlank(lie, cut);
  return { x: landed.x / blank.stretch.x, y: landed.y / blank.stretch.y };
}
