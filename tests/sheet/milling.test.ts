import { describe, expect, it } from 'vitest';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import type { MillingRun } from '../../src/sheet/locating/stops/milling-runs.ts';
import { millingRuns } from '../../src/sheet/locating/stops/milling-runs.ts';
import { clock, flat6 } from './a-job.ts';
import { inputFor } from './an-input.ts';
import { realInput } from './real-input.ts';

const example = realInput('wall-clock.yaml');
/** Length along X of the example's blank, whatever it is written as today. */
const long = example.job.blank.widthMm;
const text = (mm: number): string => String(Number(mm.toFixed(2)));

describe('the runs that mill the stops in place', () => {
  // Worked out by hand: lands 10 wide round the contacts (30 and 250 along the fence y = 0; 90 up the
  // side stops at x = 0 and x = long); cutter 6, so 3 off the face and 3 past each end; 1.5 left on;
  // a band of 2 either way round 12 above the bed. Climb: the stop on the right of the cutter's way.
  it('are those worked out by hand for the wall clock', () => {
    const { job, stops } = example;
    const band = { lowMm: 10, highMm: 14, offMm: 1.5 };
    const fence = { face: 'fence', along: 'x', firstPassMm: 3.3, lastPassMm: 3, ...band } as const;
    const side = { face: 'side', along: 'y', ...band } as const;
    const wanted: MillingRun[] = [
      { letter: 'A', ...fence, fromMm: 22, toMm: 38 },
      { letter: 'A', ...side, fromMm: 98, toMm: 82, firstPassMm: 3.3, lastPassMm: 3 },
      { letter: 'B', ...fence, fromMm: 242, toMm: 258 },
      { letter: 'B', ...side, fromMm: 82, toMm: 98, firstPassMm: long - 3.3, lastPassMm: long - 3 },
    ];
    expect(millingRuns(job, stops, flat6)).toEqual(wanted);
  });

  // The zero of milling is the front-up corner, here the right one: the clock's places less its length.
  it('count from the front-up corner of the stops', () => {
    const { job, stops } = example;
    const corner = { frontUp: 'near-right', backUp: 'near-left' } as const;
    const runs = millingRuns({ ...job, stops: { ...job.stops, corner } }, stops, flat6);
    expect(runs.map((run) => run.lastPassMm)).toEqual([3, 3 - long, 3, -3]);
    expect(runs[2]).toMatchObject({ fromMm: 242 - long, toMm: 258 - long });
  });

  // A land that begins in the corner: 3 of radius and 1.5 left on the side stop keep the cutter off it.
  it('never run into the face that stands across their end', () => {
    const [corner] = inputFor(clock).stops;
    expect(corner!.lands[0]!.ends[0]).toEqual({ x: 0, y: 0 });
    expect(millingRuns(clock, [corner!], flat6)[0]!.fromMm).toBe(4.5);
  });

  it('are a table on the sheet, in the units of the shop', () => {
    const rows = (page: string): string[] =>
      (/<table class="milling">[^]*?<\/table>/.exec(page)?.[0] ?? '')
        .split('<tr>')
        .map((row) => row.replace(/<[^>]*>/g, ' ').replace(/[\s\u00a0]+/g, ' '))
        .map((row) => row.trim());
    expect(rows(benchSheet(example))).toContain(
      `B side stop X ${text(long - 3.3)} mm X ${text(long - 3)} mm Y 82 mm → 98 mm 10 mm to 14 mm 1.5 mm`,
    );
    // 82 / 25.4 = 3.2283, 98 / 25.4 = 3.8583.
    expect(rows(benchSheet(realInput('wall-clock.yaml', 'inch'))).at(-1)).toContain(
      'Y 3.228 in → 3.858 in',
    );
    expect(benchSheet(realInput('wall-clock-plain.yaml'))).not.toContain('<table class="milling">');
  });

  it('come with their caution', () => {
    const page = benchSheet(example);
    expect(page).toContain('You cut next to screws and clamps');
    expect(page).toContain('keep the cutter clear of every other stop');
  });
});
