import type { Job } from '../job/job.ts';
import type { Outline } from '../plane/outline.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from './body.ts';
import type { Clearance } from './clearance.ts';
import { lowestPass, passesBy, type Pass } from './passes.ts';

export interface Placings {
  readonly frontUp: Placing;
  readonly backUp: Placing;
}

/**
 * For every body, placing and moving thing: how low it passes over the body, or how far beside it.
 * Bodies of one name (the screw heads of one stop) count as one, as high as the highest.
 */
export function clearancesOf(
  job: Job,
  placings: Placings,
  bodies: readonly Body[],
): readonly Clearance[] {
  const names = [...new Set(bodies.map((body) => body.name))];
  return names.flatMap((name) => {
    const same = bodies.filter((body) => body.name === name);
    const topMm = same.reduce((most, body) => Math.max(most, body.highMm), 0);
    return [placings.frontUp, placings.backUp].flatMap((placing) => {
      const passes = same.flatMap((body) => passesBy(job, placing, body.outline));
      return [...new Set(passes.map((pass) => pass.what))].map((what) =>
        clearanceOf(
          placing,
          { name, topMm },
          what,
          passes.filter((pass) => pass.what === what),
        ),
      );
    });
  });
}

/** The lowest that anything passes over an outline in either placing, or null when nothing does. */
export function lowestOver(job: Job, placings: Placings, outline: Outline<'layout'>): Pass | null {
  return lowestPass([
    ...passesBy(job, placings.frontUp, outline),
    ...passesBy(job, placings.backUp, outline),
  ]);
}

function clearanceOf(
  placing: Placing,
  body: { readonly name: string; readonly topMm: number },
  what: Clearance['what'],
  passes: readonly Pass[],
): Clearance {
  const lowest = lowestPass(passes);
  return {
    placing: placing.faceUp === 'front' ? 'front-up' : 'back-up',
    body: body.name,
    what,
    feature: lowest?.feature ?? null,
    lowestMm: lowest?.heightMm ?? null,
    bodyTopMm: body.topMm,
    besideMm: passes.reduce((least, pass) => Math.min(least, pass.besideMm), Infinity),
  };
}
