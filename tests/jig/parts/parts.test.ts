import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../../src/jig/mesh.ts';
import { camClamp } from '../../../src/jig/parts/cam-clamp.ts';
import { dowelBoard } from '../../../src/jig/parts/dowel-board.ts';
import { columnName } from '../../../src/jig/parts/numbered-grid.ts';
import { drillGuide } from '../../../src/jig/parts/drill-guide.ts';
import { partFacets } from '../../../src/jig/parts/part.ts';
import { partsOf } from '../../../src/jig/parts/parts-of.ts';
import { strapClamp } from '../../../src/jig/parts/strap-clamp.ts';
import { wedgePair } from '../../../src/jig/parts/wedge-pair.ts';
import { defaultJigSizes as sizes } from '../../../src/job/jig-sizes.ts';
import { aJob, placed } from '../a-job.ts';
import { expectLawfulPlate } from '../plate/laws.ts';
import { madeOf, partsOf as stopsOf } from '../program/some-programs.ts';
import { everyPart } from './every-part.ts';
import { expectAnyPartLawful } from './any-part.ts';
import { expectLawfulPart } from './laws.ts';

const job = aJob();
const stops = stopsOf(job);
const pinned = stopsOf(aJob({ made: 'on-bed-pins' }));

describe('every part of the jig', () => {
  it('is a sound solid with its defaults, and has its own name', async () => {
    const parts = everyPart();
    expect(parts).toHaveLength(15);
    expect(new Set(parts.map(({ name }) => name)).size).toBe(15);
    for (const part of parts) await expectLawfulPart(part);
  });

  it('is left out when nobody asks for it', () => {
    expect(madeOf(partsOf(job, placed(job), stops))).toEqual([]);
  });

  it('is sound or refused with what would fit, whatever its sizes', async () => {
    await expectAnyPartLawful(61, 12);
  });
});

describe('a cam', () => {
  // e / R = sin(atan mu) is the bound of the inclined plane; R / e = 8 of the bench rule stands for 0.125.
  it('is refused when it would turn back by itself', () => {
    const answer = (throwMm: number) => camClamp(job, { ...sizes('cam-clamp'), throw: throwMm });
    expect(answer(22 * Math.sin(Math.atan(0.125)) - 1e-9).kind).toBe('made');
    expect(answer(2.75)).toEqual({
      kind: 'cannot',
      because:
        'cam-clamp: throw 2.75 mm is too much: a disc of radius 22 would turn back by itself (friction 0.125, an estimate)',
      wouldFit: 'throw: 2.72 or less',
    });
  });

  it('pushes no harder back than friction holds, at every turn', () => {
    const [cam] = madeOf(camClamp(job, { ...sizes('cam-clamp'), throw: 2.72 }));
    expect(cam).toBeDefined();
    // Steepest slope of R + e sin t over the length that passes: brute force.
    const [R, e] = [22, 2.72];
    let steepest = 0;
    for (let t = 0; t < 2 * Math.PI; t += 1e-3) {
      const rise = e * Math.cos(t);
      const lever = R + e * Math.sin(t);
      steepest = Math.max(steepest, rise / lever);
    }
    expect(steepest).toBeLessThanOrEqual(0.125);
    expect(steepest).toBeGreaterThan(0.12);
  });
});

describe('a wedge', () => {
  it('is refused when it would slide back', () => {
    // tan(2 atan 0.125) = 0.253968...; over 80: 20.3.
    expect(wedgePair(job, { ...sizes('wedge-pair'), rise: 20.5 })).toMatchObject({
      wouldFit: 'rise: 20.31 or less',
    });
    expect(wedgePair(job, { ...sizes('wedge-pair'), rise: 20.3 }).kind).toBe('made');
  });
});

describe('a strap clamp', () => {
  it('wants bolts in reach, and says how long a slot would find them', () => {
    const far = aJob({
      onBed: { x: 90, y: 110 },
      inserts: {
        thread: 'M6',
        first: { x: 20, y: 20 },
        pitchMm: { x: 500, y: 350 },
        count: { x: 2, y: 2 },
      },
    });
    const answer = strapClamp(far, [], sizes('strap-clamp'));
    expect(answer).toMatchObject({
      because: expect.stringMatching(/^strap-clamp: 0 of 4 clamps have a bolt in reach/) as string,
      wouldFit: expect.stringMatching(/^slot: \d+ or more$/) as string,
    });
    const slot = Number(/\d+/.exec((answer as { wouldFit: string }).wouldFit)![0]);
    expect(strapClamp(far, [], { ...sizes('strap-clamp'), slot }).kind).toBe('made');
    expect(strapClamp(far, [], { ...sizes('strap-clamp'), slot: slot - 2 }).kind).toBe('cannot');
  });

  it('has a heel as high as the blank is thick, and half a millimetre', () => {
    const [, heel] = madeOf(strapClamp(job, stops, sizes('strap-clamp')));
    const zs = partFacets(heel!)
      .flat()
      .map((p) => p.z);
    expect(Math.max(...zs)).toBe(24.5);
  });
});

describe('a dowel board', () => {
  it('has its holes where its numbers say, clear of every screw', async () => {
    const [board] = madeOf(dowelBoard(job, sizes('dowel-board')));
    const plate = board!.form.kind === 'plate' ? board!.form.plate : null;
    const dowels = plate!.holes.filter((hole) => hole.seat === null);
    const screws = plate!.holes.filter((hole) => hole.seat !== null);
    expect(screws.length).toBe(4);
    expect(dowels.length).toBeGreaterThan(30);
    for (const { ends } of dowels) {
      expect(ends[0].x % 25).toBe(0);
      expect(ends[0].y % 25).toBe(0);
      for (const s of screws)
        expect(Math.hypot(ends[0].x - s.ends[0].x, ends[0].y - s.ends[0].y)).toBeGreaterThan(
          3.05 + 5.75 + 3 - 1e-9,
        );
    }
    // Screws stand on the pitch of the bed's inserts.
    expect((screws.at(-1)!.ends[0].x - screws[0]!.ends[0].x) % 50).toBeCloseTo(0, 9);
    await expectLawfulPlate(plate!);
  });

  it('of 300 holes takes well under a second', () => {
    const began = process.cpuUsage();
    const [board] = madeOf(
      dowelBoard(job, { ...sizes('dowel-board'), pitch: 16, columns: 20, rows: 15, thick: 12 }),
    );
    const facets = partFacets(board!);
    const { user } = process.cpuUsage(began);
    expect(checkMesh(facets).openEdgeCount).toBe(0);
    expect(facets.length).toBeGreaterThan(10_000);
    // Processor time, so that a busy machine counts for nothing; a slow one is given twice the second.
    expect(user / 1e6).toBeLessThan(2);
  });

  it('calls its columns as a table does', () => {
    expect([0, 25, 26, 51, 52].map(columnName)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA']);
  });

  it.each([
    [{ pitch: 8 }, 'pitch: 9.1 or more'],
    [{ thick: 5 }, 'thick: 11.5 or more'],
    [{ columns: 100, rows: 100 }, '2000 holes or fewer'],
    [{ columns: 60, rows: 2 }, 'other columns, rows or pitch'],
  ])('is refused with %o, saying what would fit', (wish, wouldFit) => {
    expect(dowelBoard(job, { ...sizes('dowel-board'), ...wish })).toMatchObject({ wouldFit });
  });
});

describe('a drill guide', () => {
  it('has its guide holes where the pins of the stop are', () => {
    const [guide] = madeOf(drillGuide(pinned, sizes('drill-guide')));
    const plate = guide!.form.kind === 'plate' ? guide!.form.plate : null;
    const places = plate!.holes.map(({ ends }) => ends[0]);
    for (const { at } of pinned[0]!.pins) expect(places).toContainEqual({ x: at.x, y: at.y });
    expect(plate!.holes[0]!.radiusMm).toBe(3.05);
  });

  it('is refused where nothing stands on pins', () => {
    expect(drillGuide(stops, sizes('drill-guide'))).toMatchObject({
      wouldFit: 'made: on-bed-pins under stops, or no drill-guide',
    });
  });
});
