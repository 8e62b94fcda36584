import type { Edge, StopsJob } from '../../../src/job/job.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { touchesOf, type Touch } from '../second-model/contacts.ts';
import { inBlank, lieOf, type Lie } from '../second-model/lie.ts';
import type { RealBlank } from '../second-model/real-blank.ts';
import { intoBlank, type RealStops } from '../second-model/real-stops.ts';
import { parabolaTurn } from '../second-model/roots.ts';
import { plus, type XY } from '../second-model/vectors.ts';
import { leastCost, type Row } from './linear-programme.ts';

/** A point of a stop's upright face that the blank may not pass: where, how high, and what lies between them. */
interface Obstacle {
  readonly edge: Edge;
  readonly at: XY;
  readonly heightMm: number;
  readonly raisedMm: number;
}

/** A pose of the blank: turned (rad), slid away from the side stop, lifted off the fence (mm). */
type Pose = readonly [number, number, number];

const PROBES: Pose = [1e-6, 1e-3, 1e-3];
/** One step looks no further than this; the blank is never that far off. */
const FARTHEST: Pose = [0.1, 20, 20];
/** The push on the fence wins over the push on the side stop, however the levers are. */
const FENCE_FIRST = 1000;
/** A step this small (mm at 1 m) is rounding. */
const SETTLED = 1e-11;
const MOST_STEPS = 30;

/**
 * How the blank lies as a solid with leaning edge faces pushed against upright stops: no point of a stop's
 * face may be inside it, and of all such poses it is the one nearest the fence, then nearest the side stop. Found by
 * linear programmes, each about the pose that the last one gave.
 */
export function solidSeated(
  job: StopsJob,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  stops: RealStops,
): Lie {
  const [away, up] = [intoBlank(stops, placing, 'side'), intoBlank(stops, placing, 'fence')];
  const lie = ([turn, slid, lift]: Pose): Lie =>
    lieOf(job, placing, stops.corner, turn, plus(plus({ x: 0, y: 0 }, away, slid), up, lift));
  const { fence, side } = touchesOf(job, off, placing, blank, stops);
  const room = (pose: Pose, { edge, at, heightMm, raisedMm }: Obstacle): number => {
    // A place of the blank: in plan, and its height from the back face.
    const place = inBlank(lie(pose), at);
    const z = placing.faceUp === 'front' ? heightMm : blank.thickMm - heightMm;
    const leans = (off[`bevel/${edge}`] ?? 0) * (z - blank.thickMm / 2);
    return blank.beyond(edge, place) - leans - raisedMm;
  };
  const heights = heightsOf(job);
  const raised = (touch: Touch): readonly Obstacle[] =>
    heights.map((heightMm) => ({ ...touch, heightMm }));
  const onFence = fence.flatMap(raised);
  const onSide = side.flatMap(raised);

  let pose: Pose = [0, 0, 0];
  for (let count = 0; count < MOST_STEPS; count++) {
    const bulges = deepestOnArm(side, heights, (one) => room(pose, one));
    const rows = [...onFence, ...onSide, ...bulges].map((one) =>
      rowOf((at) => room(at, one), pose),
    );
    const step = leastCost([...rows, ...walls()], costOf(rows, onFence.length, onSide.length));
    if (step === null) throw new Error('the blank finds no way onto its stops');
    pose = [pose[0] + step[0]!, pose[1] + step[1]!, pose[2] + step[2]!];
    if (Math.max(1000 * Math.abs(step[0]!), Math.abs(step[1]!), Math.abs(step[2]!)) < SETTLED) {
      const drag = (from: string): number => off[`clamp-drag/${placing.faceUp}-up/${from}`] ?? 0;
      const lain = lie(pose);
      return {
        ...lain,
        shift: plus(plus(lain.shift, away, drag('side')), up, drag('fence')),
      };
    }
  }
  throw new Error(`the blank does not come to rest, last at ${pose.join(', ')}`);
}

/** Heights of the upright face that can be the first to touch: an edge face is flat, so its ends. */
function heightsOf({ stops: { band } }: StopsJob): readonly number[] {
  return band.kind === 'plain' ? [0, band.heightMm] : [band.touchHeightMm];
}

/** Between the ends of an arm: where the edge stands out most at each height. */
function deepestOnArm(
  side: readonly Touch[],
  heights: readonly number[],
  room: (one: Obstacle) => number,
): readonly Obstacle[] {
  const [one, other] = side;
  if (one === undefined || other === undefined || one.kind !== 'arm-end') return [];
  return heights.map((heightMm) => {
    const on = (share: number): Obstacle => ({
      edge: one.edge,
      at: plus(one.at, plus(other.at, one.at, -1), share),
      heightMm,
      raisedMm: 0,
    });
    const { share, bends } = parabolaTurn((at) => room(on(at)));
    if (bends > 0) return on(Math.min(1, Math.max(0, share)));
    return room(on(0)) < room(on(1)) ? on(0) : on(1);
  });
}

/** What is left of the room at one obstacle after a small step, as a row. */
function rowOf(room: (at: Pose) => number, pose: Pose): Row {
  const slope = PROBES.map((probe, k) => {
    const moved = (by: number): Pose =>
      pose.map((one, j) => (j === k ? one + by : one)) as unknown as Pose;
    return (room(moved(probe)) - room(moved(-probe))) / (2 * probe);
  });
  return { slope, least: -room(pose) };
}

const walls = (): readonly Row[] =>
  FARTHEST.flatMap((far, k) =>
    [1, -1].map((sign) => ({
      slope: FARTHEST.map((_, j) => (j === k ? sign : 0)),
      least: -far,
    })),
  );

function costOf(rows: readonly Row[], fence: number, side: number): readonly number[] {
  const sum = (some: readonly Row[]): readonly number[] =>
    PROBES.map((_, k) => some.reduce((total, { slope }) => total + slope[k]!, 0));
  const [push, slide] = [sum(rows.slice(0, fence)), sum(rows.slice(fence, fence + side))];
  return push.map((one, k) => FENCE_FIRST * one + slide[k]!);
}
