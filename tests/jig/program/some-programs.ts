import type { StopsJob } from '../../../src/job/job.ts';
import { boreHoles } from '../../../src/jig/program/bore-holes.ts';
import { millStops } from '../../../src/jig/program/mill-stops.ts';
import type { Program } from '../../../src/jig/program/program.ts';
import { skim } from '../../../src/jig/program/skim.ts';
import type { StopPart } from '../../../src/jig/stop-part.ts';
import { stopsOf } from '../../../src/jig/stops.ts';
import type { Step } from '../../../src/jig/answer.ts';
import { aJob, flat6, long6, placed } from '../a-job.ts';

export const milledJob = aJob({
  made: 'milled-in-place',
  stops: {
    corner: { frontUp: 'near-left', backUp: 'near-right' },
    band: { kind: 'narrow', touchHeightMm: 12 },
  },
});

export function partsOf(job: StopsJob): readonly StopPart[] {
  const answer = stopsOf(job, placed(job));
  if (answer.kind === 'cannot') throw new Error(answer.because);
  return answer.parts;
}

export function madeOf<T>(step: Step<T>): T {
  if (step.kind === 'cannot') throw new Error(`${step.because}; ${step.wouldFit}`);
  return step.value;
}

export const milling = madeOf(millStops(milledJob, partsOf(milledJob), long6));
export const skimming = madeOf(skim(milledJob, flat6, { depthMm: 0.3, laneMm: 4 }));
const bores = (diameterMm: number): Program =>
  madeOf(
    boreHoles(
      {
        name: 'bore the dowel holes',
        jobName: 'Case lid',
        header: [],
        zeroAt: { x: 0, y: 0 },
        zeroHighMm: 0,
        bores: [
          { at: { x: 10, y: -5 }, diameterMm, topMm: 0, bottomMm: -12 },
          { at: { x: 260, y: -5 }, diameterMm, topMm: 0, bottomMm: -12 },
        ],
        highestMm: 0,
        over: 'the first hole',
      },
      flat6,
    ),
  );
export const pecking = bores(6);
export const boring = bores(8);
export const all: readonly Program[] = [milling, skimming, pecking, boring];
