import type { StopsJob, ZeroXy } from '../job/job.ts';
import { intersectionOf } from '../plane/clip.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import type { Placing, Side } from '../setup/placing.ts';
import type { Placings } from '../sweep/clearances.ts';
import { figure, mm } from './answer.ts';
import { stopNumbers } from './numbers.ts';
import type { StopPart } from './stop-part.ts';
import { bodiesOf } from './stops.ts';

/** An edge of the blank that the zero is touched on, where a stop leaves the tool no room. */
export interface TouchClash {
  readonly placing: 'front-up' | 'back-up';
  /** The side of the blank's rectangle on the bed. */
  readonly side: Side;
  /** Where along the side it is to be touched, layout x or y; `anywhere`: the job leaves it open. */
  readonly at: { readonly kind: 'place'; readonly alongMm: number } | { readonly kind: 'anywhere' };
  /** Axis along that side: the number of `xy-touched` that says where it is touched. */
  readonly along: 'x' | 'y';
  /** Name of the stop that stands there. */
  readonly stop: string;
  /** The nearest places along that axis with room on every side touched at it, mm; null: none. */
  readonly free: Stretch | null;
}

/** From one place to another along an edge, layout x or y, mm. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * Where a zero is to be touched on the blank and a stop stands in the tool's way. The tool takes a
 * square beside the edge, at any height: it comes down past half the blank's thickness.
 */
export function touchRoom(
  job: StopsJob,
  placings: Placings,
  parts: readonly StopPart[],
): readonly TouchClash[] {
  return [
    ...clashesIn(job, placings.frontUp, job.zero.frontUp.xy, parts),
    ...clashesIn(job, placings.backUp, job.zero.backUp.xy, parts),
  ];
}

/** One sentence for a person: what cannot be touched where, why, and what to write instead. */
export function touchClashText({ placing, side, at, along, stop, free }: TouchClash): string {
  const room = `a tool needs ${mm(stopNumbers.touchRoomMm)} beside the edge`;
  const what =
    at.kind === 'place'
      ? `${placing}: the zero is touched on the ${side} edge at ${along} = ${mm(at.alongMm)}, where the ${stop}, stands`
      : `${placing}: the zero is touched on the ${side} edge, and the ${stop}, leaves no place for it`;
  const remedy =
    free === null
      ? 'no place along it has that: write xy: stops'
      : `write xy-touched with ${along} from ${figure(free.fromMm)} to ${mm(free.toMm)}`;
  return `${what}; ${room}; ${remedy}`;
}

function clashesIn(
  job: StopsJob,
  placing: Placing,
  xy: ZeroXy,
  parts: readonly StopPart[],
): readonly TouchClash[] {
  if (xy.kind !== 'edges' && xy.kind !== 'middle') return [];
  const sides: readonly Side[] =
    xy.kind === 'middle' ? ['left', 'right', 'near', 'far'] : [placing.base.side, placing.end.side];
  const middle = { x: job.blank.widthMm / 2, y: job.blank.heightMm / 2 };
  const at = xy.at ?? (xy.kind === 'middle' ? middle : null);
  return (['y', 'x'] as const).flatMap((along) => {
    const touched = sides.filter((side) => alongOf(side) === along);
    return clashesAlong(job, placing, touched, along, at, parts);
  });
}

/** Sides that one number of `xy-touched` serves: what is free must be free on all of them. */
function clashesAlong(
  job: StopsJob,
  placing: Placing,
  sides: readonly Side[],
  along: 'x' | 'y',
  at: Point<'layout'> | null,
  parts: readonly StopPart[],
): readonly TouchClash[] {
  const taken = sides.flatMap((side) => takenOn(job, side, parts));
  const free = freeStretches(lengthMm(job, along), taken);
  return sides.flatMap((side): TouchClash[] => {
    const here = taken.filter((one) => one.side === side);
    const clash = { placing: placingName(placing), side, along };
    if (at === null) {
      const [first] = here;
      return first === undefined || freeStretches(lengthMm(job, along), here).length > 0
        ? []
        : [{ ...clash, at: { kind: 'anywhere' }, stop: first.stop, free: null }];
    }
    const alongMm = at[along];
    const hit = here.find((one) => alongMm > one.fromMm && alongMm < one.toMm);
    return hit === undefined
      ? []
      : [
          {
            ...clash,
            at: { kind: 'place', alongMm },
            stop: hit.stop,
            free: nearest(free, alongMm),
          },
        ];
  });
}

/** Places along a side at which the middle of the tool's square would meet a stop. */
interface Taken extends Stretch {
  readonly side: Side;
  readonly stop: string;
}

function takenOn(job: StopsJob, side: Side, parts: readonly StopPart[]): readonly Taken[] {
  const along = alongOf(side);
  const half = stopNumbers.touchRoomMm / 2;
  const strip = [stripBeside(job, side)];
  return parts.flatMap((part) =>
    bodiesOf(part).flatMap((body) =>
      intersectionOf(strip, [body.outline]).map((met): Taken => {
        const box = boundsOf(met);
        const [lowMm, highMm] = along === 'x' ? [box.lowX, box.highX] : [box.lowY, box.highY];
        return {
          side,
          stop: part.name,
          fromMm: lowMm - half + gridMm,
          toMm: highMm + half - gridMm,
        };
      }),
    ),
  );
}

/** The strip outside a side that a tool's square goes through, a square longer at both ends. */
function stripBeside(job: StopsJob, side: Side): Outline<'layout'> {
  const { widthMm, heightMm } = job.blank;
  const wide = stopNumbers.touchRoomMm;
  const [lowX, highX] = {
    left: [-wide, 0],
    right: [widthMm, widthMm + wide],
    near: [-wide, widthMm + wide],
    far: [-wide, widthMm + wide],
  }[side] as [number, number];
  const [lowY, highY] = {
    left: [-wide, heightMm + wide],
    right: [-wide, heightMm + wide],
    near: [-wide, 0],
    far: [heightMm, heightMm + wide],
  }[side] as [number, number];
  return [
    { x: lowX, y: lowY },
    { x: highX, y: lowY },
    { x: highX, y: highY },
    { x: lowX, y: highY },
  ];
}

/** Places that the clipping moves by its grid of 1e-6 mm still count as where they were. */
const gridMm = 2e-6;

/**
 * What is left for the middle of the tool's square, half a square off both ends of the edge; in
 * whole tenths of a millimetre, which a person can write.
 */
function freeStretches(edgeMm: number, taken: readonly Stretch[]): readonly Stretch[] {
  const half = stopNumbers.touchRoomMm / 2;
  const isAny = (one: Stretch): boolean => one.fromMm <= one.toMm;
  return taken
    .reduce<readonly Stretch[]>(
      (free, { fromMm, toMm }) =>
        free
          .flatMap((one) => [
            { fromMm: one.fromMm, toMm: Math.min(one.toMm, fromMm) },
            { fromMm: Math.max(one.fromMm, toMm), toMm: one.toMm },
          ])
          .filter(isAny),
      [{ fromMm: half, toMm: edgeMm - half }],
    )
    .map((one) => ({
      fromMm: Math.ceil(one.fromMm * 10) / 10,
      toMm: Math.floor(one.toMm * 10) / 10,
    }))
    .filter(isAny);
}

function nearest(free: readonly Stretch[], alongMm: number): Stretch | null {
  const offMm = (one: Stretch): number => Math.max(one.fromMm - alongMm, alongMm - one.toMm, 0);
  return free.toSorted((a, b) => offMm(a) - offMm(b))[0] ?? null;
}

const alongOf = (side: Side): 'x' | 'y' => (side === 'near' || side === 'far' ? 'x' : 'y');
const lengthMm = (job: StopsJob, along: 'x' | 'y'): number =>
  along === 'x' ? job.blank.widthMm : job.blank.heightMm;
const placingName = (placing: Placing): TouchClash['placing'] =>
  placing.faceUp === 'front' ? 'front-up' : 'back-up';
