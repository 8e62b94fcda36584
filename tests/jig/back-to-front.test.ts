import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backToFront } from '../../src/jig/back-to-front.ts';
import { joinedFacets } from '../../src/jig/joined-facets.ts';
import type { Corner3 } from '../../src/jig/mesh.ts';
import { dot, seenFacets, type SeenFacet } from '../../src/jig/seen-facets.ts';
import { facetsOf, solidOf } from '../../src/jig/solid.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { isInside } from '../../src/plane/distance.ts';
import { boundsOf, signedAreaMm2 } from '../../src/plane/measure.ts';
import type { Point } from '../../src/plane/point.ts';
import { evenly } from '../plane/evenly.ts';
import { aJob, placed } from './a-job.ts';

const s2 = Math.SQRT1_2;
const view = {
  towards: { x: 1 / Math.sqrt(3), y: 1 / Math.sqrt(3), z: 1 / Math.sqrt(3) },
  right: { x: -s2, y: s2, z: 0 },
  up: { x: -1 / Math.sqrt(6), y: -1 / Math.sqrt(6), z: 2 / Math.sqrt(6) },
};
const flat = (p: Corner3): Point<'layout'> => ({ x: dot(p, view.right), y: dot(p, view.up) });

function aStop(): ReturnType<typeof facetsOf> {
  const job = aJob({
    made: 'milled-in-place',
    stops: {
      band: { kind: 'narrow', touchHeightMm: 12 },
      fenceTouch: { kind: 'arm', fromMm: 20, toMm: 90 },
    },
  });
  const answer = stopsOf(job, placed(job));
  if (answer.kind === 'cannot') throw new Error(answer.because);
  return facetsOf(solidOf(answer.parts[0]!.profile));
}

/** How near to the viewer the plane of a facet is, seen at a place of the picture. */
function nearness(facet: SeenFacet, at: Point<'layout'>): number {
  const level = dot(facet.normal, facet.corners[0]!);
  const across = at.x * dot(facet.normal, view.right) + at.y * dot(facet.normal, view.up);
  return (level - across) / dot(facet.normal, view.towards);
}

describe('a solid painted from the back', () => {
  const seen = seenFacets(aStop(), view.towards, 0.35);
  const joined = joinedFacets(seen);
  const painted = backToFront(joined);

  it('shows the nearest face at every place, found by looking at them all', () => {
    const onPicture = new Map(
      [...seen, ...painted].map((facet) => [facet, facet.corners.map(flat)]),
    );
    const box = boundsOf(seen.flatMap((facet) => facet.corners.map(flat)));
    let hidden = 0;
    let looked = 0;
    fc.assert(
      fc.property(evenly(box.lowX, box.highX), evenly(box.lowY, box.highY), (x, y) => {
        const at = { x, y };
        const covers = (facet: SeenFacet): boolean => isInside(at, onPicture.get(facet)!);
        const last = painted.findLast(covers);
        const all = seen.filter(covers);
        expect(last === undefined).toBe(all.length === 0);
        if (last === undefined) return;
        looked += 1;
        if (all.length > 1) hidden += 1;
        const nearest = Math.max(...all.map((facet) => nearness(facet, at)));
        expect(Math.abs(nearness(last, at) - nearest)).toBeLessThan(1e-6);
      }),
      { seed: 40, numRuns: 1500 },
    );
    expect(looked).toBeGreaterThan(150);
    expect(hidden).toBeGreaterThan(20);
  });

  it('keeps the area that faces the viewer, joined and cut', () => {
    const area = (facets: readonly SeenFacet[]): number =>
      facets.reduce((sum, facet) => sum + signedAreaMm2(facet.corners.map(flat)), 0);
    expect(area(joined)).toBeCloseTo(area(seen), 6);
    expect(area(painted)).toBeCloseTo(area(seen), 6);
    expect(joined.length).toBeLessThan(seen.length / 2);
  });

  it('keeps the length of the edges that are drawn, joined and cut', () => {
    const drawn = (facets: readonly SeenFacet[]): number =>
      facets.reduce(
        (sum, { corners, drawn: flags }) =>
          corners.reduce((length, p, i) => {
            const q = corners[(i + 1) % corners.length]!;
            return flags[i] ? length + Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z) : length;
          }, sum),
        0,
      );
    expect(drawn(seen)).toBeGreaterThan(500);
    expect(drawn(joined)).toBeCloseTo(drawn(seen), 6);
    expect(drawn(painted)).toBeCloseTo(drawn(seen), 6);
  });
});
