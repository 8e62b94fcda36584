import type { Feature, StopsJob } from '../../../src/job/job.ts';
import type { Off } from '../misalign.ts';
import type { XY } from '../second-model/vectors.ts';
import { leastCost, type Row } from './linear-programme.ts';

/** Places of the bed this close are one place: registration rule 6. */
const ONE_PLACE_MM = 5;

/** One placing of the blank as a solid on its bed: real heights above the machine's level plane through z = 0, mm. */
interface Lying {
  readonly topAt: (at: XY) => number;
  /** Height at which the cutter's end was set to nought, as a height of the nominal upper face. */
  readonly zeroMm: number;
}

/** How deep a cut really is below the real face at a place of the blank, mm. */
export function solidDepth(job: StopsJob, off: Off, feature: Feature): (at: XY) => number {
  const { topAt, zeroMm } = lyingFor(job, off, feature);
  return (at) => topAt(at) - (zeroMm - feature.depthMm);
}

/** The least web over where two upright rectangles overlap, by a linear programme: it is a plane there. */
export function leastSolidWeb(job: StopsJob, off: Off, one: Feature, other: Feature): number {
  const depths = [solidDepth(job, off, one), solidDepth(job, off, other)];
  const web = (at: XY): number =>
    depths.reduce((left, deep) => left - deep(at), thickAt(job, off, at));
  const cost = [
    (web({ x: one.at.x + 1, y: one.at.y }) - web({ x: one.at.x - 1, y: one.at.y })) / 2,
    (web({ x: one.at.x, y: one.at.y + 1 }) - web({ x: one.at.x, y: one.at.y - 1 })) / 2,
  ];
  const [x, y] = leastCost([...sidesOf(one), ...sidesOf(other)], cost)!;
  return web({ x: x!, y: y! });
}

function sidesOf({ shape, at }: Feature): readonly Row[] {
  if (shape.kind !== 'rectangle') throw new Error('rectangles only');
  const [w, h] = [shape.widthMm / 2, shape.heightMm / 2];
  return [
    { slope: [1, 0], least: at.x - w },
    { slope: [-1, 0], least: -at.x - w },
    { slope: [0, 1], least: at.y - h },
    { slope: [0, -1], least: -at.y - h },
  ];
}

function thickAt({ blank }: StopsJob, off: Off, { x, y }: XY): number {
  const get = (key: string): number => off[key] ?? 0;
  const corner = blank.thickMm + get('thickness');
  const [perX, perY] = [get('thickness-taper/x'), get('thickness-taper/y')];
  return corner - perX * (blank.widthMm / 2) - perY * (blank.heightMm / 2) + perX * x + perY * y;
}

function lyingFor(job: StopsJob, off: Off, feature: Feature): Lying {
  const get = (key: string): number => off[key] ?? 0;
  const isFront = feature.face === 'front';
  const key = isFront ? 'front-up' : 'back-up';
  const { z } = isFront ? job.zero.frontUp : job.zero.backUp;
  const { widthMm, heightMm, thickMm } = job.blank;
  /** Seen from above, the turn swaps left and right or near and far; it swaps them back as well. */
  const turned = ({ x, y }: XY): XY => {
    if (isFront) return { x, y };
    return job.turn === 'about-y' ? { x: widthMm - x, y } : { x, y: heightMm - y };
  };
  /** The bed's plane, and the height of its own that it has there. */
  const bedAt = (machine: XY, ownMm: number): number =>
    machine.x * get('bed-lean/x') + machine.y * get('bed-lean/y') + ownMm;
  const middle = { x: widthMm / 2, y: heightMm / 2 };
  const touched = z.at ?? middle;
  const touchedSpot = spotHeight(off, touched);
  /** The upper face where it lies over a place of the machine. */
  const topOver = (machine: XY, ownMm: number): number => {
    const at = turned(machine);
    return (
      bedAt(machine, ownMm) +
      get(`swarf/${key}`) +
      standsOff(job, off, isFront, at) +
      thickAt(job, off, at)
    );
  };
  const found =
    z.on === 'top' ? topOver(touched, touchedSpot) : bedAt(touched, touchedSpot) + thickMm;
  const spot = spotHeight(off, turned(feature.at));
  return {
    topAt: (at) => topOver(turned(at), spot),
    zeroMm: found + get(`z-touch/${key}/${feature.cutter.name}`),
  };
}

function spotHeight(off: Off, about: XY): number {
  for (const [key, value] of Object.entries(off)) {
    const [kind, x, y] = key.split('/');
    if (kind !== 'bed-height') continue;
    if (Math.hypot(Number(x) - about.x, Number(y) - about.y) <= ONE_PLACE_MM) return value;
  }
  throw new Error(`the bed at ${about.x}, ${about.y} has no height of its own`);
}

/** How far the underside is off the bed because the blank is an arch: it sinks until its lowest line touches. */
function standsOff({ blank }: StopsJob, off: Off, isFrontUp: boolean, at: XY): number {
  if (blank.cup.pressedFlat) return 0;
  const hump = off['cup'] ?? 0;
  const upFront = blank.cup.up === null ? (off['cup-side'] ?? 0) >= 0 : blank.cup.up === 'front';
  const [along, length] = blank.cup.along === 'x' ? [at.x, blank.widthMm] : [at.y, blank.heightMm];
  // A parabola through the edges and, raised by the hump, the middle; in the machine it may be upside down.
  const sign = upFront === isFrontUp ? 1 : -1;
  const arch = (t: number): number => sign * hump * (1 - (2 * t - 1) ** 2);
  return arch(along / length) - Math.min(arch(0), arch(0.5), arch(1));
}
