import { describe, expect, it } from 'vitest';
import { rs274Of } from '../../../src/export/rs274.ts';
import { airCut } from '../../../src/jig/program/air-cut.ts';
import { programClash, wayOf } from '../../../src/jig/program/check.ts';
import { testPiece } from '../../../src/jig/test-piece/layout.ts';
import { testPrograms } from '../../../src/jig/test-piece/programs.ts';
import type { TestPiece } from '../../../src/jig/test-piece/test-piece.ts';
import { bodiesOf } from '../../../src/jig/stops.ts';
import { defaultJigSizes } from '../../../src/job/jig-sizes.ts';
import type { StopsJob } from '../../../src/job/job.ts';
import { readRs274 } from '../../export/read-rs274.ts';
import { aJob, long6, placed } from '../a-job.ts';
import { madeOf, partsOf } from '../program/some-programs.ts';

const sizes = defaultJigSizes('test-piece');

function jobLike(wish: Parameters<typeof aJob>[0]): StopsJob {
  const job = aJob(wish);
  return { ...job, shop: { ...job.shop, cutters: [long6] } };
}

const aboutY = jobLike({});
const aboutX: StopsJob = {
  ...jobLike({
    stops: {
      fence: 'left',
      fenceTouch: { kind: 'buttons', atMm: [30, 150] },
      sideTouch: { kind: 'buttons', atMm: [140] },
    },
  }),
  turn: 'about-x',
  first: 'back',
};

/** Reading a long program takes a moment: once for each job. */
function programmed(job: StopsJob) {
  const placings = placed(job);
  const stops = partsOf(job);
  const piece = madeOf(testPiece(job, stops, sizes));
  const programs = madeOf(testPrograms(job, placings, stops, piece));
  return {
    placings,
    stops,
    piece,
    programs,
    read: programs.map((p) => readRs274(rs274Of(p, 'mm'))),
  };
}
const known = new Map([aboutY, aboutX].map((job) => [job, programmed(job)]));

/** What a cutter of some width leaves of a piece, when the back is shifted: read off the program texts. */
function cutPiece(job: StopsJob, cutterMm: number, off: { x: number; y: number }) {
  const { placings, piece, programs, stops, read } = known.get(job)!;
  const low = [placings.frontUp, placings.backUp].map((placing, i) => {
    const { moves } = read[i]!;
    // Places where the tip is through the board, seen from the front, as they lie on the piece.
    return moves
      .filter(({ to }) => to.z! < -24)
      .map(({ to }) => {
        const x = to.x! + placing.zero.x;
        const y = to.y! + placing.zero.y;
        const onBlank = {
          x: placing.mirror === 'x' ? job.blank.widthMm - x : x,
          y: placing.mirror === 'y' ? job.blank.heightMm - y : y,
        };
        return placing.faceUp === 'front'
          ? onBlank
          : { x: onBlank.x + off.x, y: onBlank.y + off.y };
      });
  });
  /** Walls along an axis of what was cut out near a box. */
  const walls = (
    face: 'front' | 'back',
    box: { low: { x: number; y: number }; high: { x: number; y: number } },
    axis: 'x' | 'y',
  ) => {
    const inside = low[face === 'front' ? 0 : 1]!.filter(
      (p) =>
        p.x > box.low.x - 1 && p.x < box.high.x + 1 && p.y > box.low.y - 1 && p.y < box.high.y + 1,
    );
    expect(inside.length).toBeGreaterThan(3);
    const along = inside.map((p) => p[axis]);
    return { low: Math.min(...along) - cutterMm / 2, high: Math.max(...along) + cutterMm / 2 };
  };
  return { piece, walls, low, programs, stops };
}

function teeth(walls: ReturnType<typeof cutPiece>['walls'], comb: TestPiece['combs'][number]) {
  const [a, b, c] = comb.slots.map((slot) => walls(slot.face, slot, comb.axis));
  return { first: b!.low - a!.high, second: c!.low - b!.high };
}

describe('a test piece', () => {
  // m = (t1 - t2) / 2 and dF + dB = tooth - (t1 + t2) / 2: bench practice, derived at Comb.
  it.each([
    ['turned about Y', aboutY, 6, { x: 0.17, y: -0.08 }],
    ['turned about Y, with a cutter that cuts wide', aboutY, 6.2, { x: -0.3, y: 0.4 }],
    ['turned about X, back first', aboutX, 5.9, { x: 0.21, y: 0.05 }],
  ])('reads what the back is off, %s, whatever the cutter cuts', (_, job, cutterMm, off) => {
    const { piece, walls } = cutPiece(job, cutterMm, off);
    expect(piece.combs).toHaveLength(6);
    for (const comb of piece.combs) {
      const { first, second } = teeth(walls, comb);
      expect((first - second) / 2).toBeCloseTo(off[comb.axis], 6);
      expect(12 - (first + second) / 2).toBeCloseTo(cutterMm - 6, 6);
    }
  });

  it.each([[{ x: 0.2, y: -0.1 }], [{ x: 0, y: 0 }], [{ x: -0.34, y: 0.26 }]])(
    'lets its verniers be read to half a step for %o',
    (off) => {
      const { piece } = cutPiece(aboutY, 6, off);
      expect(piece.verniers.map(({ axis }) => axis)).toEqual(['x', 'y']);
      for (const { axis, slots, stepMm, pairCount } of piece.verniers) {
        const at = (face: 'front' | 'back'): readonly number[] =>
          slots
            .filter((slot) => slot.face === face)
            .map(({ from }) => from[axis] + (face === 'back' ? off[axis] : 0));
        const [front, back] = [at('front'), at('back')];
        const gaps = front.map((p, i) => Math.abs(p - back[i]!));
        const inLine = gaps.indexOf(Math.min(...gaps)) - (pairCount - 1) / 2;
        const reach = (stepMm * (pairCount - 1)) / 2;
        const wanted = Math.max(-reach, Math.min(reach, off[axis]));
        expect(Math.abs(inLine * stepMm - wanted)).toBeLessThanOrEqual(stepMm / 2 + 1e-9);
      }
    },
  );

  it('has programs that strike nothing, in both placings', () => {
    for (const job of [aboutY, aboutX]) {
      const { programs, stops } = cutPiece(job, 6, { x: 0, y: 0 });
      for (const program of programs)
        expect(programClash(job, program, long6, stops.flatMap(bodiesOf))).toBeNull();
    }
  });

  it('stays above the board as an air cut', () => {
    const { programs } = cutPiece(aboutY, 6, { x: 0, y: 0 });
    for (const program of programs) {
      const lowest = wayOf(airCut(program)).reduce((low, p) => Math.min(low, p.z), Infinity);
      expect(lowest).toBe(24 + 5);
    }
  });

  it('keeps its combs and verniers apart from each other and from the edges', () => {
    const { piece } = cutPiece(aboutY, 6, { x: 0, y: 0 });
    const boxes = [
      ...piece.combs.flatMap(({ slots }) => slots),
      ...piece.verniers.map(({ recess }) => recess),
      ...piece.tongues,
    ];
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const gap = Math.max(
          a.low.x - b.high.x,
          b.low.x - a.high.x,
          a.low.y - b.high.y,
          b.low.y - a.high.y,
        );
        expect(gap).toBeGreaterThanOrEqual(4 - 1e-9);
      }
    });
  });

  it('counts Z from the top where the job touches the top', () => {
    const { programs } = cutPiece(aboutY, 6, { x: 0, y: 0 });
    expect(programs[0]!.zeroHighMm).toBe(24);
    const zs = readRs274(rs274Of(programs[0]!, 'mm')).moves.map(({ to }) => to.z!);
    expect(Math.min(...zs)).toBeCloseTo(-24.5, 6);
  });

  it.each([
    [
      { size: [120, 80, 24] as const },
      'narrower teeth and slots (tooth:, slot:), or the test piece of a job with a larger blank',
    ],
  ])('is refused on a blank too small, with what would fit', (wish, wouldFit) => {
    const job = jobLike({
      ...wish,
      stops: {
        fenceTouch: { kind: 'buttons', atMm: [20, 100] },
        sideTouch: { kind: 'buttons', atMm: [40] },
      },
    });
    expect(testPiece(job, [], sizes)).toMatchObject({ wouldFit });
  });

  it('is refused without a cutter that goes into its slots and through the board', () => {
    const short = { ...aboutY, shop: { ...aboutY.shop, cutters: [{ ...long6, stickOutMm: 20 }] } };
    expect(testPiece(short, [], sizes)).toMatchObject({
      wouldFit:
        "slot: with a thin cutter's diameter and 1.5 more, or a flat cutter of 7.5 or less that sticks out 26",
    });
  });
});
