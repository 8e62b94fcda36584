import fc from 'fast-check';
import { expect } from 'vitest';
import { toOutlineMm } from '../../src/plane/distance.ts';
import { boundsOf } from '../../src/plane/measure.ts';
import { moved, turned } from '../../src/plane/move.ts';
import { circleOutline, rectangleOutline, type Outline } from '../../src/plane/outline.ts';
import type { Clash, Margin } from '../../src/sweep/clash.ts';
import { keepClearOf, type Cuts } from '../../src/sweep/keep-clear.ts';
import { readProgram } from '../../src/sweep/program/read.ts';
import { placeOnArc } from '../../src/sweep/program/along.ts';
import type { Move, Spot } from '../../src/sweep/program/program.ts';
import { evenly } from '../plane/evenly.ts';
import { aFeature, aJob, flat6, placed } from '../jig/a-job.ts';

const shape: fc.Arbitrary<Outline<'layout'>> = fc
  .record({
    x: evenly(-60, 60),
    y: evenly(-60, 60),
    w: evenly(2, 50),
    h: evenly(2, 50),
    turn: evenly(0, 3),
    round: fc.boolean(),
  })
  .map(({ x, y, w, h, turn, round }) =>
    moved(
      round
        ? circleOutline<'layout'>(w / 2, 0.02)
        : turned(rectangleOutline<'layout'>(w, h, 0, 1), turn),
      { x, y },
    ),
  );

const body = fc
  .record({ outline: shape, highMm: evenly(10, 60) })
  .map((one) => ({ name: 'block', lowMm: 0, ...one }));

const to = fc.record({ x: evenly(-80, 80), y: evenly(-80, 80), z: evenly(-30, 10) });
const program = fc
  .array(fc.record({ to, arc: fc.boolean(), radius: evenly(1, 30) }), {
    minLength: 1,
    maxLength: 6,
  })
  .map((steps) =>
    [
      'G21 G90 F600',
      'G0 X0 Y0 Z30',
      ...steps.map((step) =>
        step.arc
          ? `G2 I${step.radius.toFixed(3)} J1 Z${step.to.z.toFixed(3)}`
          : `G1 X${step.to.x.toFixed(3)} Y${step.to.y.toFixed(3)} Z${step.to.z.toFixed(3)}`,
      ),
      'M2',
    ].join('\n'),
  );

const margin: Margin = { overMm: 2, besideMm: 3 };
/** Steps of the sampling, mm; a nearest place may lie between two samples. */
const STEP = 0.4;

/** The tip, sampled finely, straight from the words of the program: the top of a 24 mm blank is Z 0. */
function samples(moves: readonly Move[]): readonly Spot[] {
  return moves.flatMap((move) => {
    const { from, to: end, arc } = move;
    if (from === null) return [end];
    const way =
      arc === null
        ? Math.hypot(end.x - from.x, end.y - from.y, end.z - from.z)
        : Math.abs(arc.sweepRad) * arc.startRadiusMm + Math.abs(end.z - from.z);
    const count = Math.ceil(way / STEP) + 1;
    return Array.from({ length: count + 1 }, (_, k) => {
      const t = k / count;
      if (arc !== null) return placeOnArc(from, end, arc, t);
      return {
        x: from.x + t * (end.x - from.x),
        y: from.y + t * (end.y - from.y),
        z: from.z + t * (end.z - from.z),
      };
    });
  });
}

const THINGS = [
  { what: 'cutter', radius: 3, from: 0 },
  { what: 'collet nut', radius: 10, from: 30 },
  { what: 'spindle', radius: 33, from: 45 },
] as const;

/** Every clash of a program with a body is found, and none is told that sampling does not find; how many there were. */
export function expectClashesAsSampled(seed: number, numRuns: number): number {
  let clashes = 0;
  const job = aJob();
  const { frontUp } = placed(job);
  fc.assert(
    fc.property(program, body, (text, block) => {
      const read = readProgram(text, { units: 'mm' });
      const cuts: Cuts = { by: 'program', program: read, cutterOf: () => flat6 };
      const found = keepClearOf(job, frontUp, cuts)([block], margin);
      const tips = samples(read.moves).map((p) => ({ ...p, z: p.z + job.blank.thickMm }));
      const beside = tips.map((p) => toOutlineMm({ x: p.x, y: p.y }, block.outline));
      const lowest = (withinMm: number, from: number): number =>
        tips.reduce(
          (low, p, k) => (beside[k]! <= withinMm ? Math.min(low, p.z + from) : low),
          Infinity,
        );
      for (const { what, radius, from } of THINGS) {
        const said = found.find((clash) => clash.what === what);
        const need = block.highMm + margin.overMm;
        // A sloping move loses up to its step in height between samples.
        const sure = lowest(radius + margin.besideMm - STEP, from);
        if (sure < need - STEP) {
          clashes += 1;
          expect(said, `${what} at ${sure}`).toBeDefined();
          if (said!.kind === 'too-near') expect(said!.heightMm).toBeLessThanOrEqual(sure + 1e-9);
          expect(said!.shortMm).toBeCloseTo(need - said!.heightMm, 9);
        }
        if (said === undefined) continue;
        expect(lowest(radius + margin.besideMm + STEP + 0.05, from)).toBeLessThan(
          said.heightMm + STEP,
        );
        const struck = lowest(radius - STEP, from);
        if (struck < block.highMm - STEP) {
          expect(said.kind).toBe('strikes');
          expect(said.heightMm).toBeLessThanOrEqual(struck + 1e-9);
        }
        if (said.kind === 'strikes')
          expect(lowest(radius + STEP + 0.05, from)).toBeLessThan(block.highMm + STEP);
      }
      expectShoeAsSampled(found, tips, block, job.shop.machine.aboveTip.dustShoe!);
    }),
    { seed, numRuns, endOnFailure: true },
  );
  return clashes;
}

/** The shoe is looked at for upright blocks only, where its distance is plain. */
function expectShoeAsSampled(
  found: readonly Clash[],
  tips: readonly Spot[],
  block: { readonly outline: Outline<'layout'>; readonly highMm: number },
  shoe: { readonly xMm: number; readonly yMm: number; readonly fromMm: number },
): void {
  const box = boundsOf(block.outline);
  const inside = tips.filter(
    (p) =>
      p.x + shoe.xMm / 2 + STEP > box.lowX &&
      p.x - shoe.xMm / 2 - STEP < box.highX &&
      p.y + shoe.yMm / 2 + STEP > box.lowY &&
      p.y - shoe.yMm / 2 - STEP < box.highY,
  );
  const low = Math.min(...inside.map((p) => p.z + shoe.fromMm));
  const said = found.find((clash) => clash.what === 'dust shoe');
  // The box round a turned block is larger than the block: only a clear one can be judged.
  if (inside.length === 0 && said !== undefined) expect(said.kind).toBe('too-near');
  if (said?.kind === 'strikes') expect(low).toBeLessThan(block.highMm + STEP);
}

/** The features' clashes are those of a program that cuts them: drilled holes, by every thing. */
export function expectFeaturesAsProgram(seed: number, numRuns: number): number {
  let clashes = 0;
  const hole = fc.record({ x: evenly(10, 100), y: evenly(10, 100), depth: evenly(1, 23) });
  fc.assert(
    fc.property(fc.array(hole, { minLength: 1, maxLength: 4 }), body, (holes, block) => {
      const job = aJob({
        features: holes.map(({ x, y, depth }, k) =>
          aFeature({ name: `hole ${k}`, cut: 'drill', at: { x, y }, depthMm: depth }),
        ),
      });
      const { frontUp } = placed(job);
      const text = holes.map(({ x, y, depth }) => `G0 X${x} Y${y}\nG1 Z${-depth}\nG0 Z200`);
      const read = readProgram(['G21 F600', 'G0 X0 Y0 Z200', ...text, 'M2'].join('\n'), {
        units: 'mm',
      });
      const cuts: Cuts = { by: 'program', program: read, cutterOf: () => flat6 };
      const ours = keepClearOf(job, frontUp, { by: 'features' })([block], margin);
      const theirs = keepClearOf(job, frontUp, cuts)([block], margin);
      clashes += ours.length;
      expect(ours.map(({ what, kind }) => `${what} ${kind}`).toSorted()).toEqual(
        theirs.map(({ what, kind }) => `${what} ${kind}`).toSorted(),
      );
      for (const clash of ours)
        expect(clash.shortMm).toBeCloseTo(
          theirs.find(({ what }) => what === clash.what)!.shortMm,
          9,
        );
    }),
    { seed, numRuns, endOnFailure: true },
  );
  return clashes;
}
