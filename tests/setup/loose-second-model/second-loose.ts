import { invariant } from '../../../src/num/invariant.ts';
import type { Band, DowelHoles, Job, Nest, TakeUp } from '../../../src/job/job.ts';
import { blankInLayout, cornerAt, frontUpCorner, placingsOf } from '../../../src/setup/place.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, lieOf, onMachine, type Lie } from '../second-model/lie.ts';
import { realBlank, type RealBlank } from '../second-model/real-blank.ts';
import type { XY } from '../second-model/vectors.ts';
import { seatedOnFence, type OnDowel } from './fence.ts';
import { ownZero, struck, type Zero } from './machine.ts';
import { blankWalls, nestZero, partWalls } from './nests.ts';
import { bestFit, roomOnPins, type HoleOnPin } from './pins.ts';
import { insideOf, pushedMost, turnedMost, type Found, type Room } from './room.ts';
import { inTheMiddle, roomInWalls, type WallFelt } from './walls.ts';
import { zeroOf } from './zeroing.ts';

const NOWHERE: XY = { x: 0, y: 0 };
const PLACES: readonly ('x' | 'y')[] = ['x', 'y'];
const WAYS: Record<Exclude<TakeUp, 'anywhere'>, XY> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  near: { x: 0, y: -1 },
  far: { x: 0, y: 1 },
};

/** Holes as they are in the blank when it is first cut, and pins as they stand on the machine. */
interface Drilled {
  readonly holes: readonly XY[];
  readonly pins: readonly XY[];
}

/** Back minus front at a blank point, mm: holes and pins as circles, walls and edges felt on the machine. */
export function secondLoose(job: Job, off: Off, at: XY): [number, number] {
  const { frontUp, backUp } = placingsOf(job);
  const [one, two] = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  const first = { placing: one, blank: realBlank(job, off, one, bandOf(job)) };
  const second = { placing: two, blank: realBlank(job, off, two, bandOf(job)) };
  const holes = holesOf(job);
  const apart = holes?.drilled === 'separately' ? drilledApart(job, holes, off, first) : null;
  const firstLie = seat(job, off, first, apart, null);
  const firstZero = zeroOf({ job, off, ...first, lie: firstLie }, null);
  const done = { lie: firstLie, zero: firstZero, thickMm: first.blank.thickMm };
  const drilled = apart ?? (holes === null ? null : drilledThrough(job, holes, off, done));
  const secondLie = seat(job, off, second, drilled, done);
  const secondZero = zeroOf({ job, off, ...second, lie: secondLie }, firstZero);
  const landed = [
    { ...first, lie: firstLie, zero: firstZero },
    { ...second, lie: secondLie, zero: secondZero },
  ].map(({ placing, blank, lie, zero }) => {
    const told = blankInLayout(job, placing.mirror, at);
    const place = inBlank(lie, struck(off, zero, placing.faceUp, told, blank.thickMm));
    return { x: place.x / blank.stretch.x, y: place.y / blank.stretch.y };
  });
  const [front, back] = one.faceUp === 'front' ? landed : landed.toReversed();
  return [back!.x - front!.x, back!.y - front!.y];
}

interface Laying {
  readonly placing: Placing;
  readonly blank: RealBlank;
}

interface Done {
  readonly lie: Lie;
  readonly zero: Zero;
  readonly thickMm: number;
}

function bandOf(job: Job): Band {
  if (job.locating === 'fence-and-dowel') return job.fenceAndDowel.band;
  return { kind: 'plain', heightMm: job.locating === 'nest' ? job.nest.wallMm : 0 };
}

function holesOf(job: Job): DowelHoles | null {
  if (job.locating === 'dowels') return job.dowels;
  return job.locating === 'fence-and-dowel' ? job.fenceAndDowel.dowel : null;
}

/** How a blank lies; `drilled` when there are holes by then, `done` in the second placing. */
function seat(job: Job, off: Off, laying: Laying, drilled: Drilled | null, done: Done | null): Lie {
  const { placing, blank } = laying;
  const unmoved = lieOf(job, placing, NOWHERE, 0, NOWHERE);
  const middle = middleOf(job, placing);
  const laidTurn = Math.atan(off[`laid/${placing.faceUp}-up`] ?? 0);
  const freely = lieOf(job, placing, middle, laidTurn, NOWHERE);
  switch (job.locating) {
    case 'dowels': {
      if (drilled === null) return freely;
      const pairs = pairsOf(job, job.dowels, off, laying, unmoved, drilled);
      // Pushed through the middle of the holes, where they really are.
      const pivot = meanOf(pairs.map(({ hole }) => hole));
      const fit = bestFit(pairs, pivot);
      const found = inRoom(roomOnPins(pairs, pivot), job.dowels.takeUp, off, placing, fit) ?? fit;
      return lieOf(job, placing, pivot, found.turnRad, found.move);
    }
    case 'nest': {
      const { nest } = job;
      if (nest.around !== null && done === null) return freely;
      const walls = wallsOf(job, nest, off, { placing, blank, unmoved }, done);
      const part = job.features.find(({ name }) => name === nest.around);
      const pivot = part === undefined ? middle : blankInLayout(job, placing.mirror, part.at);
      const dropped = inTheMiddle(walls, pivot);
      const found =
        inRoom(roomInWalls(walls, pivot), nest.takeUp, off, placing, dropped) ?? dropped;
      return lieOf(job, placing, pivot, found.turnRad, found.move);
    }
    case 'fence-and-dowel': {
      const fence = job.fenceAndDowel;
      const on =
        drilled === null
          ? null
          : onDowel(pairsOf(job, fence.dowel, off, laying, unmoved, drilled)[0]!, unmoved);
      const slide =
        on === null ? null : { ...on, way: wayAlong(job, fence.dowel.takeUp, off, placing) };
      return seatedOnFence(job, fence, off, placing, blank, slide);
    }
    case 'stops':
      throw new Error('on stops: tests/setup/second-model');
  }
}

const middleOf = (job: Job, { lies }: Placing): XY => ({
  x: lies.x + job.blank.widthMm / 2,
  y: lies.y + job.blank.heightMm / 2,
});

const meanOf = (places: readonly XY[]): XY => ({
  x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
  y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
});

/** Pushed, or turned as far as the draw of the turn says; null where there is no room. */
function inRoom(
  room: Room,
  takeUp: TakeUp,
  off: Off,
  placing: Placing,
  about: Found,
): Found | null {
  const inside = insideOf(room, about.turnRad);
  if (inside === null) return null;
  if (takeUp !== 'anywhere') return pushedMost(room, inside, WAYS[takeUp]);
  const turn = off[`take-up/${placing.faceUp}-up/turn`] ?? 0;
  invariant(Math.abs(turn) === 0.5, 'only the outermost turns are told');
  return turnedMost(room, inside, turn > 0 ? 1 : -1);
}

function wayAlong(job: Job, takeUp: TakeUp, off: Off, { faceUp }: Placing): 1 | -1 {
  invariant(job.locating === 'fence-and-dowel', 'along a fence');
  if (takeUp === 'anywhere') return (off[`take-up/${faceUp}-up/along`] ?? 0) > 0 ? 1 : -1;
  // A fence begins at its left or near end.
  return takeUp === 'right' || takeUp === 'far' ? 1 : -1;
}

const onDowel = ({ hole, pin, playMm }: HoleOnPin, unmoved: Lie): Omit<OnDowel, 'way'> => ({
  hole: inBlank(unmoved, hole),
  pin,
  playMm,
});

/** Each hole, as the blank lies unmoved and has moved itself, with the pin that is nearest. */
function pairsOf(
  job: Job,
  { at, clearance }: DowelHoles,
  off: Off,
  { placing, blank }: Laying,
  unmoved: Lie,
  { holes, pins }: Drilled,
): readonly HoleOnPin[] {
  const get = (key: string): number => off[key] ?? 0;
  return holes.map((place, k) => {
    const now = { x: place.x * blank.stretch.x, y: place.y * blank.stretch.y };
    const lies = blankInLayout(job, placing.mirror, at[k]!);
    const far = pins.map((pin) => Math.hypot(pin.x - lies.x, pin.y - lies.y));
    const j = far.indexOf(Math.min(...far));
    const diametral =
      clearance.kind === 'stated'
        ? get(`clearance/${k + 1}`)
        : get(`hole-size/${k + 1}`) - get(`pin-size/${j + 1}`);
    return { hole: onMachine(unmoved, now), pin: pins[j]!, playMm: Math.max(0, diametral) / 2 };
  });
}

const dowel = (k: number): string => `dowel ${k + 1}`;

/** Through blank and bed at once: a hole is where its pin will stand. */
function drilledThrough(
  job: Job,
  { at }: DowelHoles,
  off: Off,
  { lie, zero, thickMm }: Done,
): Drilled {
  const pins = at.map((place, k) =>
    struck(off, zero, dowel(k), blankInLayout(job, lie.mirror, place), thickMm / 2),
  );
  return { pins, holes: pins.map((pin) => inBlank(lie, pin)) };
}

function drilledApart(job: Job, { at }: DowelHoles, off: Off, { placing, blank }: Laying): Drilled {
  const zero = ownZero(cornerAt(job, frontUpCorner(job)), 0);
  return {
    pins: at.map((place, k) =>
      struck(off, zero, dowel(k), blankInLayout(job, placing.mirror, place), blank.thickMm / 2),
    ),
    holes: at.map((place, k) => {
      const [x, y] = PLACES.map((axis) => place[axis] + (off[`hole-place/${k + 1}/${axis}`] ?? 0));
      return { x: x!, y: y! };
    }),
  };
}

function wallsOf(
  job: Job,
  nest: Nest,
  off: Off,
  laying: Laying & { readonly unmoved: Lie },
  done: Done | null,
): readonly WallFelt[] {
  const { placing, blank, unmoved } = laying;
  if (nest.around === null) return blankWalls(job, nest, off, placing, blank, unmoved);
  const { xy } = placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const from = xy.kind === 'kept' ? done!.zero : nestZero(job, nest);
  return partWalls(job, nest, off, done!, laying, from);
}
