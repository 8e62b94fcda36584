import { cornersOf } from '../../job/located.ts';
import type { Corner, Edge, Job, Made, Turn } from '../../job/job.ts';
import { EDGES_AT, isAlongX, otherCorner } from '../laid.ts';
import type { Located, Way, ZeroWay } from './way.ts';

const TURNS: readonly Turn[] = ['about-y', 'about-x'];
const MADE: readonly Made['kind'][] = ['set-by-hand', 'on-bed-pins', 'milled-in-place'];
/** Buttons that touch at half thickness, or plain arms: what people make. */
const TOUCH = [
  { touch: 'buttons', band: 'narrow' },
  { touch: 'arms', band: 'plain' },
] as const;

/**
 * Every way of locating the blank that is worth a look, whether it can be or not: both turns; both fences at the job's
 * corner, the same corner again or the opposite one; buttons or arms; three ways of making the stops; dowels on the turn
 * line or in pairs; a fence and one dowel; nests; and for each the zeros that go with it.
 */
export function allWays(job: Job): readonly Way[] {
  const [frontUp] = cornersOf(job);
  return TURNS.flatMap((turn) =>
    located(job, turn, frontUp).flatMap((one) =>
      zerosFor(job, one).map((zero): Way => ({ turn, located: one, zero })),
    ),
  );
}

function located(job: Job, turn: Turn, frontUp: Corner): readonly Located[] {
  const { alongX, alongY } = EDGES_AT[frontUp];
  const fences: readonly Edge[] = [alongX, alongY];
  const outlines = job.features.filter(
    ({ cut, through, face, shape, cutter }) =>
      cut === 'profile-outside' &&
      through &&
      face === job.first &&
      shape.kind !== 'circle' &&
      cutter.kind === 'flat',
  );
  // Only along the way that turns does the other end of the fence gain anything.
  const onlyFence = turn === 'about-y' ? alongX : alongY;
  return [
    ...fences.flatMap((fence) =>
      cornersFor(turn, fence, frontUp).flatMap((backUp) =>
        TOUCH.flatMap((touch) =>
          MADE.map((made): Located => ({ kind: 'stops', fence, frontUp, backUp, ...touch, made })),
        ),
      ),
    ),
    { kind: 'dowels', layout: 'line' },
    { kind: 'dowels', layout: 'pairs' },
    ...MADE.map((made): Located => ({ kind: 'fence-and-dowel', fence: onlyFence, made })),
    { kind: 'nest', around: null },
    ...outlines.slice(0, 1).map(({ name }): Located => ({ kind: 'nest', around: name })),
  ];
}

function cornersFor(turn: Turn, fence: Edge, frontUp: Corner): readonly Corner[] {
  const along = isAlongX(fence) ? 'x' : 'y';
  const isMetAgain = (turn === 'about-y') === (along === 'x');
  return isMetAgain ? [frontUp, otherCorner(frontUp, along)] : [frontUp];
}

function zerosFor(job: Job, one: Located): readonly ZeroWay[] {
  switch (one.kind) {
    case 'stops':
      return ['kept', 're-set', 'middle', ...(boreOf(job) === null ? [] : ['hole' as const])];
    case 'dowels':
    case 'fence-and-dowel':
      return ['kept'];
    case 'nest':
      return ['made'];
  }
}

/** A round hole that the first placing cuts through, on which a zero can be found; null when there is none. */
export function boreOf(job: Job): string | null {
  const found = job.features.find(
    ({ face, shape, through, cut }) =>
      face === job.first && shape.kind === 'circle' && through && cut !== 'profile-outside',
  );
  // Copies in one blank are called after the one that is written: `bore (2,1)`.
  return found === undefined ? null : found.name.replace(/ \(\d+,\d+\)$/, '');
}
