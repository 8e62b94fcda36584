import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { grown, intersectionOf, unionOf } from '../../plane/clip.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';
import { outlineOf } from '../../sweep/feature-outline.ts';
import { cannot, mm, made, type Step } from '../answer.ts';
import { given } from '../parts/size.ts';
import { combAt, combCutter, combSizes, unmetComb } from './layout.ts';
import type { TestPiece } from './test-piece.ts';

type Place = Point<'blank'>;

/** From the blank's edge, and from everything that is cut for the part, mm. Our own choice. */
const EDGE_MM = 5;
const CLEAR_MM = 4;
/** Steps in which free places are looked for, mm. */
const STEP_MM = 4;
/** So many for each direction: two tell a turn, three where the plane bends. */
const MOST_EACH = 3;
const CHORD_MM = 0.1;

/**
 * Combs in what is left of the blank round the parts that outside profiles cut free, as far apart as
 * they can lie: they are cut with the first part itself, and cost nothing. Seen from the front.
 */
export function wasteCombs(job: Job, sizes: JigSizesOf<'waste-combs'>): Step<TestPiece> {
  const cutter = combCutter(job, given(sizes.slot));
  if (cutter.kind === 'cannot') return cutter;
  const refusal = unmetComb('waste-combs', sizes);
  if (refusal !== null) return refusal;
  const parts = job.features.filter(({ cut }) => cut === 'profile-outside');
  if (parts.length === 0)
    return cannot(
      'waste-combs: nothing is cut free by an outside profile, so the whole blank is the part',
      'test-piece: yes, which is cut from a board of its own',
    );
  const { longMm, deepMm } = combSizes(sizes);
  const taken = unionOf(
    job.features.flatMap((feature) =>
      grown(
        [outlineOf(feature, CHORD_MM)],
        CLEAR_MM + (feature.cut === 'profile-outside' ? feature.cutter.diameterMm : 0),
        CHORD_MM,
      ),
    ),
  );
  const chosen: Found[] = [];
  for (const axis of ['y', 'x'] as const) {
    const half = axis === 'x' ? { x: longMm / 2, y: deepMm / 2 } : { x: deepMm / 2, y: longMm / 2 };
    const free = placesFor(job, half)
      .map((at): Found => ({ axis, at, box: boxAbout(at, half) }))
      .filter(({ box }) => intersectionOf([box], taken).length === 0);
    for (let count = 0; count < MOST_EACH; count++) {
      const next = farthest(
        free.filter(({ box }) => chosen.every((one) => apartMm(one.box, box) >= CLEAR_MM)),
        chosen.filter((one) => one.axis === axis),
        job,
      );
      if (next === null) break;
      chosen.push(next);
    }
  }
  const counts = (['x', 'y'] as const).map(
    (axis) => chosen.filter((one) => one.axis === axis).length,
  );
  if (counts.includes(0))
    return cannot(
      `waste-combs: the waste has no free place ${mm(longMm)} by ${mm(deepMm)} for a comb that tells ${counts[0] === 0 ? 'X' : 'Y'}`,
      'narrower teeth and slots (tooth:, slot:, deep:), a larger blank, or test-piece: yes',
    );
  const ordered = chosen.toSorted((a, b) => a.axis.localeCompare(b.axis) || a.at.x - b.at.x);
  return made({
    cutter: cutter.value,
    toothMm: given(sizes.tooth),
    combs: ordered.map(({ axis, at }, i) => combAt(i + 1, axis, at, sizes)),
    verniers: [],
    tongues: [],
  });
}

interface Found {
  readonly axis: 'x' | 'y';
  readonly at: Place;
  readonly box: Outline<'blank'>;
}

function placesFor({ blank }: Job, half: Place): readonly Place[] {
  const steps = (lengthMm: number, halfMm: number): readonly number[] => {
    const [low, high] = [EDGE_MM + halfMm, lengthMm - EDGE_MM - halfMm];
    if (high < low) return [];
    const count = Math.floor((high - low) / STEP_MM);
    return [...Array.from({ length: count + 1 }, (_, i) => low + i * STEP_MM), high];
  };
  return steps(blank.widthMm, half.x).flatMap((x) =>
    steps(blank.heightMm, half.y).map((y) => ({ x, y })),
  );
}

const boxAbout = ({ x, y }: Place, half: Place): Outline<'blank'> => [
  { x: x - half.x, y: y - half.y },
  { x: x + half.x, y: y - half.y },
  { x: x + half.x, y: y + half.y },
  { x: x - half.x, y: y + half.y },
];

/** Between upright boxes. */
function apartMm(a: Outline<'blank'>, b: Outline<'blank'>): number {
  const gap = (axis: 'x' | 'y'): number =>
    Math.max(b[0]![axis] - a[2]![axis], 0, a[0]![axis] - b[2]![axis]);
  return Math.hypot(gap('x'), gap('y'));
}

/** The place farthest from those that are there; the first one farthest from the blank's middle. */
function farthest(free: readonly Found[], there: readonly Found[], { blank }: Job): Found | null {
  const from =
    there.length === 0
      ? [{ x: blank.widthMm / 2, y: blank.heightMm / 2 }]
      : there.map(({ at }) => at);
  const reach = ({ at }: Found): number =>
    from.reduce((least, p) => Math.min(least, Math.hypot(at.x - p.x, at.y - p.y)), Infinity);
  return free.reduce<Found | null>(
    (best, one) => (best === null || reach(one) > reach(best) + 1e-9 ? one : best),
    null,
  );
}
