import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { landingRing } from '../../src/plane/ring-landing.ts';
import { ringGaps, ringStep } from '../../src/plane/ring-gap.ts';
import { ringPlan } from '../../src/plane/ring-plan.ts';
import type { Path } from '../../src/plane/path.ts';
import { placedPath } from '../../src/plane/path.ts';
import { evenly } from './evenly.ts';
import { comparedGaps, comparedSteps, MISS_MM } from './ring-brute-force.ts';
import { ELL, mirroredPath, randoms, scaledPath, starPath } from './some-paths.ts';

const seeds = (count: number): number[] => Array.from({ length: count }, (_, k) => 7919 * (k + 1));

describe('outlines with hollows and arcs, landed somehow', () => {
  it.each(seeds(4))('are as far apart as all their places are, seed %i', (seed) => {
    for (const { what, found, dense } of comparedGaps(seed))
      expect(Math.abs(found - dense), what).toBeLessThan(MISS_MM);
  });

  it.each(seeds(3))('make the step that all their places make, seed %i', (seed) => {
    for (const { what, found, dense } of comparedSteps(seed))
      expect(Math.abs(found - dense), what).toBeLessThan(MISS_MM);
  });
});

type Side = 'within' | 'outside';
const ORIGIN = { x: 0, y: 0 };
const landing = (path: Path, side: Side = 'within', cutterMm = 3) =>
  landingRing(ringPlan(path, side, cutterMm)!, ORIGIN);
const shifted = (x: number, y: number, growsMm = 0) => ({
  off: [x, y, 0, 0, 0, 0],
  growsMm,
  more: null,
});
/** The L moved out by `byMm` along every side. */
const ellOut = (byMm: number): Path =>
  ELL.map(({ at: { x, y }, bulge }) => {
    const out = (value: number, high: number): number => value + (value >= high ? byMm : -byMm);
    return { at: { x: out(x, 30), y: out(y, 20) }, bulge };
  });

describe('an L in an L', () => {
  const [outer, inner] = [landing(ellOut(5)), landing(ELL)];
  const gaps = ringGaps(outer.ring, inner.ring);

  it('has the same lip along every side, and more only round its hollow corner', () => {
    outer.land(shifted(0, 0));
    inner.land(shifted(0, 0));
    expect(gaps.least()).toBeCloseTo(5, 9);
    // By hand: the inner's hollow corner is a sharp one 5 mm from both sides of the outer's, which end there: a
    // place of the inner round a corner of radius 3 is farthest from the outer's, whose corner has the same
    // radius about a centre 5 mm on along both: 5 to 5 sqrt 2 less nothing.
    expect(gaps.most()).toBeCloseTo(5 * Math.SQRT2, 4);
  });

  it.each([
    [0.3, 0.1],
    [-0.2, 0.4],
    [-0.1, -0.35],
  ])('moved by (%f, %f) is left the lip less the larger of both', (x, y) => {
    inner.land(shifted(x, y));
    outer.land(shifted(0, 0));
    expect(gaps.least()).toBeCloseTo(5 - Math.max(Math.abs(x), Math.abs(y)), 9);
  });

  it('is left less by what its cutter is larger, and more by what that of the outer is', () => {
    outer.land(shifted(0, 0, 0.02));
    inner.land(shifted(0, 0, 0.05));
    expect(gaps.least()).toBeCloseTo(5 - 0.03, 9);
  });

  it('sticks out by as much as it is moved beyond the lip', () => {
    outer.land(shifted(0, 0));
    inner.land(shifted(7, 0));
    expect(gaps.least()).toBeCloseTo(-2, 9);
  });
});

describe('one outline cut twice', () => {
  it.each(['within', 'outside'] as const)(
    'and moved makes a step of just that, whatever its shape, cut from %s',
    (side) => {
      for (const seed of seeds(6)) {
        const path = starPath(randoms(seed), 30);
        const [one, other] = [landing(path, side, 1.5), landing(path, side, 1.5)];
        const step = ringStep(one.ring, other.ring);
        one.land(shifted(0, 0));
        other.land(shifted(0.12, -0.09));
        // The place of a closed outline that lies farthest along the shift has nothing of the other nearer.
        expect(step()).toBeCloseTo(0.15, 6);
        other.land(shifted(0, 0));
        expect(step()).toBeLessThan(1e-9);
      }
    },
  );
});

describe('laws', () => {
  const look = (outerPath: Path, innerPath: Path): readonly [number, number] => {
    const gaps = ringGaps(
      landing(outerPath, 'within', 1.5).ring,
      landing(innerPath, 'outside', 1).ring,
    );
    return [gaps.least(), gaps.most()];
  };

  it('moving, turning and mirroring both changes nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        evenly(-3, 3),
        evenly(-200, 200),
        (seed, turnRad, by) => {
          const outer = starPath(randoms(seed), 30);
          const inner = scaledPath(outer, 0.6);
          const [least, most] = look(outer, inner);
          const place = (path: Path): Path => placedPath(path, turnRad, { x: by, y: -by / 3 });
          for (const same of [place, mirroredPath]) {
            const [again, alsoMost] = look(same(outer), same(inner));
            expect(again).toBeCloseTo(least, 6);
            expect(alsoMost).toBeCloseTo(most, 6);
          }
        },
      ),
      { seed: 5, numRuns: 12 },
    );
  });

  it('outlines that bulge everywhere are judged alike by direction and by place', () => {
    // A square with one round side; both ways share no line of code, and agree to what arcs are taken as round by.
    const square: Path = [
      { at: { x: -20, y: -15 }, bulge: 0 },
      { at: { x: 20, y: -15 }, bulge: 0.3 },
      { at: { x: 20, y: 15 }, bulge: 0 },
      { at: { x: -20, y: 15 }, bulge: 0 },
    ];
    const next = randoms(3);
    const hollowed = (path: Path, side: Side) => {
      const { ring, land } = landing(path, side);
      return { byReach: ring, byPlace: { ...ring, turning: null, moved: ring.moved }, land };
    };
    for (const side of ['within', 'outside'] as const) {
      const [outer, inner] = [hollowed(square, side), hollowed(scaledPath(square, 0.6), side)];
      const again = hollowed(square, side);
      const judges = (['byReach', 'byPlace'] as const).map((way) => ({
        gaps: ringGaps(outer[way], inner[way]),
        step: ringStep(outer[way], again[way]),
      }));
      for (let run = 0; run < 10; run++) {
        for (const one of [outer, inner, again]) {
          const of = (size: number): number => size * (2 * next() - 1);
          const off = [of(0.4), of(0.4), of(1e-3), of(2e-3), of(2e-3), of(1e-3)];
          one.land({ off, growsMm: of(0.03), more: null });
        }
        expect(judges[0]!.gaps.least()).toBeCloseTo(judges[1]!.gaps.least(), 4);
        expect(judges[0]!.step()).toBeCloseTo(judges[1]!.step(), 4);
      }
    }
  });
});
