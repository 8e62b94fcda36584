import type { StopsJob } from '../../../src/job/job.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { touchesOf, type Touch } from './contacts.ts';
import { inBlank, lieOf, type Lie } from './lie.ts';
import type { RealBlank } from './real-blank.ts';
import { intoBlank, type RealStops } from './real-stops.ts';
import { rockedTurn } from './rocking.ts';
import { parabolaTurn, rootOf } from './roots.ts';
import { plus, type XY } from './vectors.ts';

const PROBE_MM = 1e-3;
const PROBE_RAD = 1e-5;

/** Everything that stays the same while the blank is being moved against the stops. */
export interface Bench {
  readonly job: StopsJob;
  readonly off: Off;
  readonly placing: Placing;
  readonly blank: RealBlank;
  readonly stops: RealStops;
  /** The blank turned so, slid away from the side stop and lifted off the fence by so much. */
  readonly lie: (turnRad: number, slidMm: number, liftMm: number) => Lie;
  /** Along the fence, contact nearer the side stop in use first. */
  readonly fence: readonly [Touch, Touch];
  readonly side: readonly Touch[];
}

export function benchOf(
  job: StopsJob,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  stops: RealStops,
): Bench {
  const [away, up] = [intoBlank(stops, placing, 'side'), intoBlank(stops, placing, 'fence')];
  const touches = touchesOf(job, off, placing, blank, stops);
  return {
    job,
    off,
    placing,
    blank,
    stops,
    lie: (turnRad, slidMm, liftMm) =>
      lieOf(
        job,
        placing,
        stops.corner,
        turnRad,
        plus(plus({ x: 0, y: 0 }, away, slidMm), up, liftMm),
      ),
    ...touches,
  };
}

/** How the blank lies once pushed against the fence and slid against the side stop, then clamped. */
export function seated(
  job: StopsJob,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  stops: RealStops,
): Lie {
  const [away, up] = [intoBlank(stops, placing, 'side'), intoBlank(stops, placing, 'fence')];
  const bench = benchOf(job, off, placing, blank, stops);
  const touching = sideCandidates(bench).map((gapAt) =>
    rootOf((slid) => gapAt(onFence(bench, slid)), 0, PROBE_MM),
  );
  const tops = topCandidates(bench);
  const slid = Math.max(...touching, ...tops);
  const lie = onFence(bench, slid);
  const drag = (from: string): number => off[`clamp-drag/${placing.faceUp}-up/${from}`] ?? 0;
  const dragged: XY = plus(plus(lie.shift, away, drag('side')), up, drag('fence'));
  return { ...lie, shift: dragged };
}

/** The blank against the fence, slid so far away from the side stop. */
export function onFence(bench: Bench, slidMm: number): Lie {
  const rocked = rockedTurn(bench, slidMm);
  if (rocked !== null) return rocked;
  const [one, other] = bench.fence;
  const lift = (touch: Touch, turn: number): number =>
    rootOf((up) => gapAt(bench.blank, bench.lie(turn, slidMm, up), touch), 0, PROBE_MM);
  const turn = rootOf((rad) => lift(one, rad) - lift(other, rad), 0, PROBE_RAD);
  return bench.lie(turn, slidMm, lift(one, turn));
}

/** Distance of the blank's edge, with all that stands out there, from a stop's contact, mm. */
function gapAt(blank: RealBlank, lie: Lie, { at, edge, standsOutMm }: Touch): number {
  return blank.beyond(edge, inBlank(lie, at)) - standsOutMm;
}

/** One gap for each contact of the side stop. */
function sideCandidates(bench: Bench): readonly ((lie: Lie) => number)[] {
  return bench.side.map((touch) => (lie) => gapAt(bench.blank, lie, touch));
}

/** How far the blank is slid where its bulge meets the side arm: where it stands out most along the arm. */
function topCandidates(bench: Bench): readonly number[] {
  const [one, other] = bench.side;
  if (one === undefined || other === undefined || one.kind !== 'arm-end') return [];
  if ((bench.off[`crook/${one.edge}`] ?? 0) <= 0) return [];
  const bevel = bench.blank.bevelMm(one.edge);
  const nearest = (lie: Lie): number => {
    const gap = (share: number): number => {
      const place = plus(one.at, plus(other.at, one.at, -1), share);
      return bench.blank.beyond(one.edge, inBlank(lie, place)) - bevel;
    };
    const { share, value } = parabolaTurn(gap);
    return share > 0 && share < 1 ? value : Math.min(gap(0), gap(1));
  };
  return [rootOf((mm) => nearest(onFence(bench, mm)), 0, PROBE_MM)];
}
