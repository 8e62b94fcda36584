import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodiesOf, stopsOf } from '../../src/jig/stops.ts';
import { touchClashText, touchRoom, type TouchClash } from '../../src/jig/touch-room.ts';
import type { StopsJob, ZeroXy } from '../../src/job/job.ts';
import { betweenOutlinesMm } from '../../src/plane/distance.ts';
import { moved } from '../../src/plane/move.ts';
import { rectangleOutline } from '../../src/plane/outline.ts';
import type { Point } from '../../src/plane/point.ts';
import { evenly } from '../plane/evenly.ts';
import { aJob, placed, type Wish } from './a-job.ts';
import { someJobs } from './some-jobs.ts';

type Touched = 'edges' | 'middle';

function touching(job: StopsJob, kind: Touched, at: Point<'layout'> | null): StopsJob {
  const { z } = job.zero.frontUp;
  const { tool } = z;
  const xy: ZeroXy = { kind, at, tool };
  return {
    ...job,
    zero: { frontUp: { xy, z }, backUp: { xy: { kind: 'kept', how: 'held', extra: null }, z } },
  };
}

function clashes(job: StopsJob): readonly TouchClash[] {
  const placings = placed(job);
  const answer = stopsOf(job, placings);
  if (answer.kind === 'cannot') throw new Error(answer.because);
  return touchRoom(job, placings, answer.parts);
}

/** Arms along both edges at the near left; the arms of the stop go on 8 past the last touch. */
const arms = (sideToMm: number, wish: Partial<Wish> = {}): StopsJob =>
  aJob({
    inserts: null,
    stops: {
      fenceTouch: { kind: 'arm', fromMm: 20, toMm: 100 },
      sideTouch: { kind: 'arm', fromMm: 20, toMm: sideToMm },
    },
    ...wish,
  });

describe('room for a tool beside an edge', () => {
  it('is wanting at the middle of an edge along which a stop stands, and is named where it is', () => {
    // 120 + 8, and half of the tool's 12: from 134 on; half of 12 off the far end: to 174.
    expect(clashes(touching(arms(120), 'middle', null))).toEqual([
      {
        placing: 'front-up',
        side: 'left',
        along: 'y',
        at: { kind: 'place', alongMm: 90 },
        stop: 'corner stop, near left',
        free: { fromMm: 134, toMm: 174 },
      },
    ]);
  });

  it('is told in one sentence that says what to write', () => {
    expect(clashes(touching(arms(120), 'edges', { x: 50, y: 90 })).map(touchClashText)).toEqual([
      'front-up: the zero is touched on the left edge at y = 90 mm, where the corner stop, near left, stands; a tool needs 12 mm beside the edge; write xy-touched with y from 134 to 174 mm',
      'front-up: the zero is touched on the near edge at x = 50 mm, where the corner stop, near left, stands; a tool needs 12 mm beside the edge; write xy-touched with x from 114 to 274 mm',
    ]);
  });

  it('is there past the end of an arm, and on edges without a stop', () => {
    expect(clashes(touching(arms(120), 'edges', { x: 114, y: 134 }))).toEqual([]);
    expect(clashes(touching(arms(120), 'edges', { x: 114, y: 133.9 }))).toHaveLength(1);
    expect(clashes(touching(arms(60), 'middle', null))).toEqual([]);
  });

  it('is up to the person where no place is named, while 12 mm of the edge are free', () => {
    expect(clashes(touching(arms(160), 'edges', null))).toEqual([]);
    const [clash, ...others] = clashes(touching(arms(161), 'edges', null));
    expect(others).toEqual([]);
    expect(clash).toMatchObject({ side: 'left', at: { kind: 'anywhere' }, free: null });
    expect(touchClashText(clash!)).toBe(
      'front-up: the zero is touched on the left edge, and the corner stop, near left, leaves no place for it; a tool needs 12 mm beside the edge; no place along it has that: write xy: stops',
    );
  });

  it('is not asked for by a zero from the stops, nor by one that is kept', () => {
    const job = touching(arms(120), 'middle', null);
    const { frontUp, backUp } = job.zero;
    const tool = frontUp.z.tool;
    const onStops = { ...frontUp, xy: { kind: 'stops', at: null, tool } } as const;
    expect(clashes({ ...job, zero: { frontUp: onStops, backUp } })).toEqual([]);
  });

  it('agrees with squares laid down beside the edges, at any place of any job', () => {
    let [struck, named] = [0, 0];
    const kinds = fc.constantFrom<Touched>('edges', 'middle');
    fc.assert(
      fc.property(someJobs, kinds, evenly(0.05, 0.95), evenly(0.05, 0.95), (plain, kind, u, v) => {
        const at = { x: u * plain.blank.widthMm, y: v * plain.blank.heightMm };
        const job = touching(plain, kind, at);
        // Some cannot be milled in place at all: their cutter's nut would strike them.
        fc.pre(stopsOf(job, placed(job)).kind === 'made');
        const found = clashes(job);
        const { base, end } = placed(job).frontUp;
        for (const side of ['left', 'right', 'near', 'far'] as const) {
          const asked = kind === 'middle' || side === base.side || side === end.side;
          const roomMm = asked ? roomAt(job, side, at) : Infinity;
          const clash = found.find((one) => one.side === side);
          // Squares a little smaller than the tool's leave edges that only touch in peace.
          expect(clash !== undefined, side).toBe(roomMm === 0);
          if (clash === undefined) continue;
          struck += 1;
          for (const mm of clash.free === null ? [] : [clash.free.fromMm, clash.free.toMm]) {
            named += 1;
            expect(roomAt(job, side, { ...at, [clash.along]: mm })).toBeGreaterThan(0);
            const there = touching(plain, kind, { ...at, [clash.along]: mm });
            expect(clashes(there).some((one) => one.along === clash.along)).toBe(false);
          }
        }
      }),
      { seed: 50, numRuns: 15 },
    );
    expect(struck).toBeGreaterThan(10);
    expect(named).toBeGreaterThan(20);
  });
});

/** Between the tool's square beside a side, a hair smaller all round, and the nearest stop; 0: in it. */
function roomAt(job: StopsJob, side: TouchClash['side'], at: Point<'layout'>): number {
  const { widthMm, heightMm } = job.blank;
  const middle = {
    left: { x: -6, y: at.y },
    right: { x: widthMm + 6, y: at.y },
    near: { x: at.x, y: -6 },
    far: { x: at.x, y: heightMm + 6 },
  }[side];
  const hairMm = 1e-5;
  const square = moved<'layout'>(rectangleOutline(12 - hairMm, 12 - hairMm, 0, 0.01), middle);
  const answer = stopsOf(job, placed(job));
  if (answer.kind === 'cannot') throw new Error(answer.because);
  return Math.min(
    ...answer.parts.flatMap(bodiesOf).map((body) => betweenOutlinesMm(square, body.outline)),
  );
}
