import fc from 'fast-check';
import { expect } from 'vitest';
import { gripOf, gripProgramme, type Contact, type Load } from '../../src/hold/grip.ts';
import { evenly } from '../plane/evenly.ts';
import { otherLibrary } from '../num/other-library.ts';

const rub = fc
  .record({ x: evenly(-100, 100), y: evenly(-100, 100), mostN: evenly(5, 200) })
  .map(({ x, y, mostN }): Contact => ({ kind: 'shear', at: [x, y, 0], mostN }));

const pull = fc
  .record({ x: evenly(-100, 100), y: evenly(-100, 100), turn: evenly(0, 6.2) })
  .map(({ x, y, turn }): Load => ({ at: [x, y, 0], force: [Math.cos(turn), Math.sin(turn), 0] }));

/** By turning about a centre: what the contacts resist over what the load does, least of many centres. */
function byCentres(contacts: readonly Contact[], load: Load): number {
  const [px, py] = load.at;
  const [fx, fy] = load.force;
  let least = Infinity;
  const about = (x: number, y: number): void => {
    const turning = Math.abs((px - x) * fy - (py - y) * fx);
    if (turning < 1e-9) return;
    const held = contacts.reduce(
      (sum, contact) =>
        contact.kind === 'shear'
          ? sum + contact.mostN * Math.hypot(contact.at[0] - x, contact.at[1] - y)
          : sum,
      0,
    );
    least = Math.min(least, held / turning);
  };
  for (const { at } of contacts) about(at[0], at[1]);
  for (let k = -60; k <= 60; k++) for (let j = -60; j <= 60; j++) about(k * 8, j * 8);
  for (let k = 0; k < 360; k++) about(1e7 * Math.cos(k / 57.3), 1e7 * Math.sin(k / 57.3));
  return least;
}

/** The programme's grip is that of the worst centre of turning, a second way without any programme. */
export function expectAsByCentres(seed: number, numRuns: number): void {
  fc.assert(
    fc.property(fc.array(rub, { minLength: 2, maxLength: 6 }), pull, (contacts, load) => {
      const grip = gripOf(contacts, load, 'in-plane');
      const centres = byCentres(contacts, load);
      // Never more than any centre allows; less by the figure of 16 sides and the grid of centres.
      expect(grip).toBeLessThanOrEqual(centres * (1 + 1e-6));
      expect(grip).toBeGreaterThan(centres * 0.93 - 1e-6);
    }),
    { seed, numRuns, endOnFailure: true },
  );
}

const bed = fc.record({ x: evenly(-100, 100), y: evenly(-100, 100) }).map(({ x, y }): Contact => ({
  kind: 'push',
  at: [x, y, 0],
  normal: [0, 0, 1],
  mostN: Infinity,
  friction: 0.2,
}));
const clamp = fc
  .record({ x: evenly(-60, 60), y: evenly(-60, 60), force: evenly(100, 2000) })
  .map(({ x, y, force }): Contact => ({ kind: 'press', at: [x, y, 20], force: [0, 0, -force] }));
const lifted = fc
  .record({ load: pull, z: evenly(0, 20), lift: evenly(-1, 1) })
  .map(({ load: { at, force }, z, lift }): Load => ({
    at: [at[0], at[1], z],
    force: [force[0], force[1], lift],
  }));

/** The same programme by an independent library; how many held at all. */
export async function expectAsOtherLibrary(seed: number, numRuns: number): Promise<number> {
  const other = await otherLibrary();
  let held = 0;
  fc.assert(
    fc.property(
      fc.array(bed, { minLength: 3, maxLength: 5 }),
      fc.array(clamp, { minLength: 1, maxLength: 3 }),
      lifted,
      (beds, clamps, load) => {
        const contacts = [...beds, ...clamps];
        const { gain, rows } = gripProgramme(contacts, load, 'in-space');
        const sum = (of: readonly number[]): string =>
          of.map((value, k) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} x${k}`).join(' ');
        const text = [
          'Maximize',
          ` goal: ${sum(gain)}`,
          'Subject To',
          ...rows.map(
            (row, k) => ` r${k}: ${sum(row.of)} ${row.is === 'at-most' ? '<=' : '='} ${row.value}`,
          ),
          'End',
        ].join('\n');
        const theirs = other.solve(text);
        const ours = gripOf(contacts, load, 'in-space');
        if (theirs.Status === 'Optimal') {
          held += 1;
          expect(Math.abs(ours - theirs.ObjectiveValue)).toBeLessThan(
            1e-4 * (1 + theirs.ObjectiveValue),
          );
        } else if (theirs.Status === 'Infeasible') expect(ours).toBe(0);
      },
    ),
    { seed, numRuns, endOnFailure: true },
  );
  return held;
}

/** Another contact never makes the grip less. */
export function expectMoreHoldsMore(seed: number, numRuns: number): void {
  fc.assert(
    fc.property(
      fc.array(rub, { minLength: 2, maxLength: 6 }),
      rub,
      pull,
      (contacts, more, load) => {
        const before = gripOf(contacts, load, 'in-plane');
        expect(gripOf([...contacts, more], load, 'in-plane')).toBeGreaterThan(
          before - 1e-6 * (1 + before),
        );
      },
    ),
    { seed, numRuns, endOnFailure: true },
  );
}
