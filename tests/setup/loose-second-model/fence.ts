import type { FenceAndDowel, Job, StopsJob } from '../../../src/job/job.ts';
import { cornerAt, frontUpCorner } from '../../../src/setup/place.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, onMachine, type Lie } from '../second-model/lie.ts';
import { acrossOf, alongOf, outOf, type RealBlank } from '../second-model/real-blank.ts';
import { intoBlank, realStops } from '../second-model/real-stops.ts';
import { rootOf } from '../second-model/roots.ts';
import { benchOf, onFence, type Bench } from '../second-model/seating.ts';
import { dot, plus, unit, type XY } from '../second-model/vectors.ts';

const PROBE_MM = 1e-3;

/** What the blank has a hole for: where that is in the blank, and where the dowel stands. */
export interface OnDowel {
  readonly hole: XY;
  readonly pin: XY;
  readonly playMm: number;
  /** Which way along the fence its play is taken up: 1 away from where the fence begins. */
  readonly way: 1 | -1;
}

/** How the blank lies on a fence that ends nowhere: slid until a hole stops it, or, with none, where it was laid. */
export function seatedOnFence(
  job: Job,
  fence: FenceAndDowel,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  on: OnDowel | null,
): Lie {
  const corner = frontUpCorner(job);
  // To what feels for stops, a fence is stops without contacts at their side.
  const withStops = { ...job, stops: { ...fence, corner: { frontUp: corner, backUp: corner } } };
  const asOnStops = withStops as unknown as StopsJob;
  const asPlacing: Placing = { ...placing, sideStop: 'first' };
  const stops = realStops(asOnStops, off);
  const bench = benchOf(asOnStops, off, asPlacing, blank, stops);
  const slid = on === null ? whereLaid(bench, job) : slidOn(bench, on);
  const lie = onFence(bench, slid);
  const drag = off[`clamp-drag/${placing.faceUp}-up/fence`] ?? 0;
  return { ...lie, shift: plus(lie.shift, intoBlank(stops, asPlacing, 'fence'), drag) };
}

/** Slid so that the place of the blank at its corner of the fence is the one that is there nominally. */
function whereLaid(bench: Bench, job: Job): number {
  // Turned over about a dowel that is not in its middle, it lies further on.
  const corner = plus(cornerAt(job, frontUpCorner(job)), bench.placing.lies);
  const along = bench.stops.along.x === 0 ? 'y' : 'x';
  const nominal = inBlank({ ...bench.lie(0, 0, 0), turnRad: 0, shift: { x: 0, y: 0 } }, corner);
  return rootOf(
    (slid) => inBlank(onFence(bench, slid), corner)[along] - nominal[along],
    0,
    PROBE_MM,
  );
}

function slidOn(bench: Bench, { hole, pin, playMm, way }: OnDowel): number {
  const off = (slid: number): XY => plus(onMachine(onFence(bench, slid), hole), pin, -1);
  // Nearest to its dowel along the line of the edge on the fence.
  const nearest = rootOf(
    (slid) => dot(off(slid), lineOf(bench, onFence(bench, slid))),
    0,
    PROBE_MM,
  );
  const apart = Math.hypot(off(nearest).x, off(nearest).y);
  if (apart >= playMm) return nearest;
  const free = Math.sqrt(playMm * playMm - apart * apart);
  const beyond = (slid: number): number => Math.hypot(off(slid).x, off(slid).y) - playMm;
  return rootOf(beyond, nearest + way * free, Math.min(PROBE_MM, free / 10));
}

/** Direction on the machine of the straight line of the edge that lies at the fence, away from where it begins. */
function lineOf({ blank, fence, stops }: Bench, lie: Lie): XY {
  const { edge } = fence[0];
  const [along, across] = [alongOf(edge), acrossOf(edge)];
  const placeAt = (mm: number): XY => {
    const place = { x: 0, y: 0, [along]: mm };
    return onMachine(lie, { ...place, [across]: -outOf(edge) * blank.beyond(edge, place, 0) });
  };
  const way = unit(plus(placeAt(100), placeAt(0), -1));
  return dot(way, stops.along) > 0 ? way : { x: -way.x, y: -way.y };
}
