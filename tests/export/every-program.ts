import { join } from 'node:path';
import { defaultJigSizes as sizes } from '../../src/job/jig-sizes.ts';
import type { Feature, Job } from '../../src/job/job.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { fenceAlone } from '../../src/jig/fence-job.ts';
import { programsOf, type ProgramsAnswer } from '../../src/jig/program/programs-of.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { readFromDisk } from '../job/from-disk.ts';
import { aFeature, aJob, flat6, long6 } from '../jig/a-job.ts';
import { milledJob } from '../jig/program/some-programs.ts';

const cutFree: Feature = aFeature({
  name: 'outline',
  face: 'back',
  shape: { kind: 'rectangle', widthMm: 150, heightMm: 90, cornerRadiusMm: 6 },
  cut: 'profile-outside',
  depthMm: 24,
  through: true,
  cutter: long6,
});

function example(name: string): Job {
  const read = readFromDisk(join('jigs', name));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.job;
}

/** Jobs that together want every kind of program. */
export const everyKind: readonly Job[] = [
  { ...milledJob, jig: { 'test-piece': sizes('test-piece'), skim: sizes('skim') } },
  {
    ...aJob({ made: 'on-bed-pins', features: [cutFree] }),
    jig: {
      'steel-buttons': sizes('steel-buttons'),
      'stops-from-sheet': sizes('stops-from-sheet'),
      'dowel-grid': { ...sizes('dowel-grid'), 'first-x': 50, 'first-y': 50 },
      'waste-combs': { tooth: 8, slot: 8, deep: 14 },
    },
  },
  example('instrument-plate.yaml'),
  example('compass-cover.yaml'),
].map((job) => ({ ...job, shop: { ...job.shop, cutters: [...job.shop.cutters, flat6, long6] } }));

/** What a job wants, its stops standing. */
export function wanted(job: Job): ProgramsAnswer {
  const placings = placingsOf(job);
  const stopped = job.locating === 'stops' ? job : fenceAlone(job);
  const stops = stopped === null ? null : stopsOf(stopped, placings);
  if (stops?.kind === 'cannot') throw new Error(`${stops.because}; ${stops.wouldFit}`);
  return programsOf(job, placings, stops?.parts ?? []);
}
