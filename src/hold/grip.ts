import type { LinearProgramme, LinearRow } from '../num/linear-programme.ts';
import { unreachable } from '../num/invariant.ts';
import { solved } from '../num/linear-programme.ts';

/** mm in the layout frame, z above the bed; N. */
export type Vector = readonly [number, number, number];

/** What can act on the work. */
export type Contact =
  /** A force that is there whatever happens: a clamp, a vacuum. */
  | { readonly kind: 'press'; readonly at: Vector; readonly force: Vector }
  /** A face that pushes along its normal as much as it must, up to a limit; with friction across it (level faces only). */
  | {
      readonly kind: 'push';
      readonly at: Vector;
      readonly normal: Vector;
      readonly mostN: number;
      readonly friction: number;
    }
  /** Something that bears up to a limit in every level direction: a screw, a tab, tape, friction of known force. */
  | { readonly kind: 'shear'; readonly at: Vector; readonly mostN: number };

export interface Load {
  readonly at: Vector;
  readonly force: Vector;
}

/** `in-plane`: only level forces and turning on the bed are balanced; `in-space`: lifting and tipping too. */
export type Balance = 'in-plane' | 'in-space';

/** Corners of the figure that stands for a circle of friction, inscribed: 1.9 % on the safe side. */
const SIDES = 16;

/**
 * How many times a load can grow before the contacts cannot balance it; 0 when they cannot balance even
 * what presses on them, Infinity when nothing of the load needs them.
 *
 * A lower bound of what Coulomb friction allows in statics, not a promise: keep a factor of 2 or more.
 */
export function gripOf(contacts: readonly Contact[], load: Load, balance: Balance): number {
  const answer = solved(gripProgramme(contacts, load, balance));
  switch (answer.kind) {
    case 'best':
      return Math.max(0, answer.value);
    case 'impossible':
      return 0;
    case 'without-end':
      return Infinity;
    default:
      return unreachable(answer);
  }
}

/** The linear programme behind it: the first unknown is the factor, the others are the contacts' forces. */
export function gripProgramme(
  contacts: readonly Contact[],
  load: Load,
  balance: Balance,
): LinearProgramme {
  // About the load, so that figures stay of one size wherever the work lies.
  const reach = contacts.reduce((most, { at }) => Math.max(most, distance(at, load.at)), 1);
  const wrench = (at: Vector, force: Vector): readonly number[] =>
    wrenchOf(at, force, load.at, reach, balance);
  const columns: (readonly number[])[] = [wrench(load.at, load.force)];
  const limits: Limit[] = [];
  const constant = columns[0]!.map(() => 0);
  for (const contact of contacts) {
    if (contact.kind === 'press') {
      wrench(contact.at, contact.force).forEach((value, k) => (constant[k]! += value));
      continue;
    }
    const first = columns.length;
    if (contact.kind === 'push') {
      columns.push(wrench(contact.at, contact.normal));
      if (contact.mostN < Infinity)
        limits.push({ from: first, to: first + 1, less: null, value: contact.mostN });
      if (contact.friction === 0) continue;
    }
    const from = columns.length;
    for (const direction of CIRCLE) columns.push(wrench(contact.at, direction));
    const to = columns.length;
    if (contact.kind === 'shear') limits.push({ from, to, less: null, value: contact.mostN });
    else limits.push({ from, to, less: { at: first, by: contact.friction }, value: 0 });
  }
  const rows: LinearRow[] = constant.map((value, k) => ({
    of: columns.map((column) => column[k]!),
    is: 'exactly',
    value: -value,
  }));
  for (const { from, to, less, value } of limits) {
    const of = new Array<number>(columns.length).fill(0).fill(1, from, to);
    if (less !== null) of[less.at] = -less.by;
    rows.push({ of, is: 'at-most', value });
  }
  return { gain: columns.map((_, c) => (c === 0 ? 1 : 0)), rows };
}

/** The unknowns from one to before another add up to no more than a value, and than `by` times one more. */
interface Limit {
  readonly from: number;
  readonly to: number;
  readonly less: { readonly at: number; readonly by: number } | null;
  readonly value: number;
}

const CIRCLE: readonly Vector[] = Array.from({ length: SIDES }, (_, k) => {
  const turn = (2 * Math.PI * k) / SIDES;
  return [Math.cos(turn), Math.sin(turn), 0];
});

const distance = (a: Vector, b: Vector): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Force and moment about a place; moments in units of force at `reach`. */
function wrenchOf(
  at: Vector,
  [fx, fy, fz]: Vector,
  about: Vector,
  reach: number,
  balance: Balance,
): readonly number[] {
  const [x, y, z] = [at[0] - about[0], at[1] - about[1], at[2] - about[2]];
  const turning = (x * fy - y * fx) / reach;
  if (balance === 'in-plane') return [fx, fy, turning];
  return [fx, fy, fz, (y * fz - z * fy) / reach, (z * fx - x * fz) / reach, turning];
}
