import { landingRing } from '../../src/plane/ring-landing.ts';
import { ringGaps, ringStep } from '../../src/plane/ring-gap.ts';
import { ringPlan } from '../../src/plane/ring-plan.ts';
import {
  CHORD_MM,
  denseGaps,
  denseOutlines,
  denseStep,
  SURE_MM,
  type Cut,
  type Off,
} from './dense-outline.ts';
import { randoms, scaledPath, starPath } from './some-paths.ts';

const ORIGIN = { x: 0, y: 0 };

export interface Compared {
  readonly seed: number;
  readonly what: string;
  readonly found: number;
  readonly dense: number;
}

/** Two hollow outlines, one within the other, landed somehow, each cut from within or outside: both ways of judging. */
export function comparedGaps(seed: number): readonly Compared[] {
  const next = randoms(seed);
  const outerPath = starPath(next, 30);
  const side = (): Cut['side'] => (next() < 0.5 ? 'within' : 'outside');
  const outer: Cut = { path: outerPath, side: side(), cutterMm: 1 + next() };
  const inner: Cut = {
    path: next() < 0.5 ? scaledPath(outerPath, 0.6) : starPath(next, 12 + 14 * next()),
    side: side(),
    cutterMm: 1 + next(),
  };
  return compared(seed, outer, inner, next, (a, b) => {
    const gaps = ringGaps(a, b);
    return (far, near) => {
      const dense = denseGaps(far, near);
      return [
        { what: 'least', found: gaps.least(), dense: dense.least },
        { what: 'most', found: gaps.most(), dense: dense.most },
      ];
    };
  });
}

/** One hollow outline cut twice. */
export function comparedSteps(seed: number): readonly Compared[] {
  const next = randoms(seed);
  const cut: Cut = {
    path: starPath(next, 30),
    side: next() < 0.5 ? 'within' : 'outside',
    cutterMm: 1 + next(),
  };
  return compared(seed, cut, cut, next, (a, b) => {
    const step = ringStep(a, b);
    return (far, near) => [{ what: 'step', found: step(), dense: denseStep(far, near) }];
  });
}

type Ring = ReturnType<typeof landingRing>['ring'];
type Outlines = ReturnType<typeof denseOutlines>;
type Figures = readonly Omit<Compared, 'seed'>[];

function compared(
  seed: number,
  outer: Cut,
  inner: Cut,
  next: () => number,
  judge: (outer: Ring, inner: Ring) => (outer: Outlines, inner: Outlines) => Figures,
): readonly Compared[] {
  const [a, b] = [outer, inner].map(({ path, side, cutterMm }) => {
    const plan = ringPlan(path, side, cutterMm);
    return plan === null ? null : landingRing(plan, ORIGIN);
  });
  if (!a || !b || a.ring.count === 0) return [];
  const judged = judge(a.ring, b.ring);
  const [offA, growsA, offB, growsB] = [someOff(next), grow(next), someOff(next), grow(next)];
  a.land({ off: offA, growsMm: growsA, more: null });
  b.land({ off: offB, growsMm: growsB, more: null });
  return judged(denseOutlines(outer, offA, growsA), denseOutlines(inner, offB, growsB)).map(
    (figure) => ({ seed, ...figure }),
  );
}

function someOff(next: () => number): Off {
  const of = (size: number): number => size * (2 * next() - 1);
  return [of(0.5), of(0.5), of(1e-3), of(2e-3), of(2e-3), of(1e-3)];
}

const grow = (next: () => number): number => 0.06 * (next() - 0.5);

/** By how much the dense places may miss, mm: the chords of two outlines, of both their axes, and the search along them. */
export const MISS_MM = 4 * CHORD_MM + SURE_MM;
