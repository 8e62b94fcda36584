import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { boreDowelHoles } from '../../../src/jig/program/dowel-holes.ts';
import { wayOf } from '../../../src/jig/program/check.ts';
import { programsOf } from '../../../src/jig/program/programs-of.ts';
import type { Job } from '../../../src/job/job.ts';
import { readJob } from '../../../src/job/read.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import { madeOf } from './some-programs.ts';

/** The example on two dowels: holes of 8 at [120, 10] and [120, 140] of a plate 240 by 150 by 10. */
function plate(change: (text: string) => string = (text) => text): Job {
  const text = change(readFileSync('jigs/instrument-plate.yaml', 'utf8'));
  const read = readJob(
    { name: 'job.yaml', bytes: new TextEncoder().encode(text) },
    new Map([['shop.yaml', readFileSync('jigs/shop.yaml')]]),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.job;
}

describe('the program that bores the dowel holes', () => {
  it('goes through the blank and two diameters on into the bed, at the places of the job', () => {
    const job = plate();
    const { program, cutter } = madeOf(boreDowelHoles(job, placingsOf(job))!);
    expect(cutter.name).toBe('flat 6');
    // Z is touched on top in the first placing: the text counts from there.
    expect(program.zeroHighMm).toBe(10);
    const low = wayOf(program).filter(({ z }) => z === -16);
    for (const at of [
      { x: 120, y: 10 },
      { x: 120, y: 140 },
    ]) {
      const round = low
        .map((p) => Math.hypot(p.x + program.zeroAt.x - at.x, p.y + program.zeroAt.y - at.y))
        .filter((mm) => mm < 5 && mm > 1e-9);
      // A cutter of 6 goes round 1 off the middle of a hole of 8.
      expect(round.length).toBeGreaterThan(7);
      for (const mm of round) expect(mm).toBeCloseTo(1, 9);
    }
  });

  it('is written, with its air cut, for such a job', () => {
    const job = plate();
    const { programs, refused } = programsOf(job, placingsOf(job), []);
    expect(refused).toEqual([]);
    expect(programs.map(({ air }) => air.name)).toEqual(['bore the dowel holes, air cut']);
  });

  it('is refused when the nut would come down on the blank, with what would fit', () => {
    const job = plate();
    const machine = {
      ...job.shop.machine,
      aboveTip: { ...job.shop.machine.aboveTip, colletNut: { radiusMm: 10, fromMm: 26 } },
    };
    const low = { ...job, shop: { ...job.shop, machine } };
    // 16 down in the bed, the nut 26 over the tip: at 10, where the blank's top is; 1 is to be kept.
    expect(boreDowelHoles(low, placingsOf(low))).toMatchObject({
      because:
        'bore the dowel holes: the collet nut would come 1 mm too near to the blank while flat 6 is at its lowest',
      wouldFit: 'a cutter that sticks out 1 mm more',
    });
  });

  it('is refused when a dowel would go through the spoilboard, with what would fit', () => {
    const job = plate();
    const { bed } = job.shop;
    const thin = {
      ...job,
      shop: { ...job.shop, bed: { ...bed, spoilboard: { ...bed.spoilboard, thickMm: 12 } } },
    };
    expect(boreDowelHoles(thin, placingsOf(thin))).toMatchObject({
      because: 'a dowel of 8 mm stands 16 mm deep, and the spoilboard is 12 mm thick',
      wouldFit: 'dowels of 6 or less, or a thicker spoilboard',
    });
  });
});
