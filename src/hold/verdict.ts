import type { Holding } from '../job/holding.ts';
import type { Bounds } from '../plane/measure.ts';
import type { Point } from '../plane/point.ts';
import { gripOf, type Balance, type Contact, type Load, type Vector } from './grip.ts';
import { holdNumbers } from './numbers.ts';

/** How well something is held: how many times the estimated force it takes, at the worst place. */
export interface Verdict {
  readonly factor: number;
  readonly neededFactor: number;
  readonly isHeld: boolean;
  readonly worst: {
    readonly at: Point<'layout'>;
    /** The direction in which the cutter pulls there, counter-clockwise from X. */
    readonly pullsRad: number;
    /** `slides`: on the bed; `tips`: lifted or turned over. */
    readonly gives: 'slides' | 'tips';
  };
}

/** What is pressed down, where, and what bears besides it. */
export interface Held {
  /** Presses on the work from above: clamps, vacuum. */
  readonly presses: readonly { readonly at: Vector; readonly newtons: number }[];
  /** Pushes the work sideways whatever happens, without friction: a wedge or cam towards the stops. */
  readonly pushes?: readonly { readonly at: Vector; readonly force: Vector }[];
  /** Bears sideways, and holds down, up to limits: screws, tabs, tape. */
  readonly ties: readonly {
    readonly at: Vector;
    readonly sidewaysN: number;
    readonly downN: number;
  }[];
  readonly stops: readonly { readonly at: Vector; readonly normal: Vector }[];
  /** Corners of what lies on the bed. */
  readonly support: readonly Vector[];
  readonly friction: number;
}

export interface Pull {
  readonly sidewaysN: number;
  readonly liftN: number;
  /** The box that the cutter works in, and the height of the work's top, mm. */
  readonly box: Bounds;
  readonly topMm: number;
}

/** Directions of pull; the force is lengthened so that those between are covered too. */
const DIRECTIONS = 12;

/**
 * The least grip over every direction of pull, at the corners of the box the cutter works in (what holds
 * there holds in between, since a load between is a mixture of those), lifting and not. Two ways, and the
 * lesser counts: a stiff blank, which the bed pushes back wherever it must; and a supple one, which grips
 * only under each clamp.
 * @param least once the factor is below this, the rest is not looked at
 */
export function verdictOf(
  held: Held,
  pull: Pull,
  neededFactor: number,
  least = -Infinity,
): Verdict {
  const { box, topMm, sidewaysN, liftN } = pull;
  const corners: readonly Vector[] = [
    [box.lowX, box.lowY, topMm],
    [box.highX, box.highY, topMm],
    [box.lowX, box.highY, topMm],
    [box.highX, box.lowY, topMm],
  ];
  const covering = sidewaysN / Math.cos(Math.PI / DIRECTIONS);
  let worst: Verdict['worst'] = {
    at: { x: box.lowX, y: box.lowY },
    pullsRad: 0,
    gives: 'slides',
  };
  let factor = Infinity;
  const stiff = inSpace(held);
  const supple = inPlane(held, neededFactor * liftN);
  const tryLoad = (
    contacts: readonly Contact[],
    load: Load,
    balance: Balance,
    rad: number,
  ): void => {
    const grip = gripOf(contacts, load, balance);
    if (grip >= factor) return;
    factor = grip;
    worst = {
      at: { x: load.at[0], y: load.at[1] },
      pullsRad: rad,
      gives: balance === 'in-plane' ? 'slides' : 'tips',
    };
  };
  // The quick balance first: it finds out most sets that do not hold.
  for (const balance of ['in-plane', 'in-space'] as const)
    for (const at of corners)
      for (let k = 0; k < DIRECTIONS && factor >= least; k++) {
        const rad = (2 * Math.PI * k) / DIRECTIONS;
        const [fx, fy] = [covering * Math.cos(rad), covering * Math.sin(rad)];
        if (balance === 'in-plane') tryLoad(supple, { at, force: [fx, fy, 0] }, balance, rad);
        else tryLoad(stiff, { at, force: [fx, fy, liftN] }, balance, rad);
      }
  return { factor, neededFactor, isHeld: factor >= neededFactor, worst };
}

function inSpace(held: Held): readonly Contact[] {
  const { presses, ties, stops, support, friction } = held;
  return [
    ...pushing(held),
    ...presses.map(({ at, newtons }): Contact => ({ kind: 'press', at, force: [0, 0, -newtons] })),
    ...support.map((at): Contact => ({
      kind: 'push',
      at,
      normal: [0, 0, 1],
      mostN: Infinity,
      friction,
    })),
    ...stops.map(faceOf),
    ...ties.flatMap(({ at, sidewaysN, downN }): Contact[] => [
      { kind: 'shear', at, mostN: sidewaysN },
      { kind: 'push', at, normal: [0, 0, -1], mostN: downN, friction: 0 },
    ]),
  ];
}

const faceOf = ({ at, normal }: Held['stops'][number]): Contact => ({
  kind: 'push',
  at,
  normal,
  mostN: Infinity,
  friction: 0,
});

/** Friction under each press alone, less what lifting takes off it. */
const pushing = ({ pushes = [] }: Held): readonly Contact[] =>
  pushes.map(({ at, force }) => ({ kind: 'press', at, force }));

function inPlane(held: Held, liftN: number): readonly Contact[] {
  const { presses, ties, stops, friction } = held;
  const all = presses.reduce((sum, { newtons }) => sum + newtons, 0);
  const tied = ties.reduce((sum, { downN }) => sum + downN, 0);
  const left = all === 0 ? 0 : Math.max(0, 1 - Math.max(0, liftN - tied) / all);
  return [
    ...pushing(held),
    ...presses.map(({ at, newtons }): Contact => ({
      kind: 'shear',
      at,
      mostN: friction * newtons * left,
    })),
    ...stops.map(faceOf),
    ...ties.map(({ at, sidewaysN }): Contact => ({ kind: 'shear', at, mostN: sidewaysN })),
  ];
}

/** Friction that the job states, or ours. */
export const frictionOf = (holding: Holding): number => holding.friction ?? holdNumbers.friction;
