import { BATCH } from '../num/batch.ts';
import type { Job, Need } from '../job/job.ts';
import { needColumns, type FillNeed } from './batch/need-columns.ts';
import { newColumns } from './columns.ts';
import type { Deviation } from './deviation.ts';
import { judgedOf, type Judged } from './judged.ts';
import { needReading, type NeedReading } from './need-reading.ts';
import { partsLanded } from './parts-landed.ts';

/**
 * What every need of a job comes to, trial by trial, in columns of results: of some needs the x and y (mm,
 * blank frame) by which one cut misses another, of the others the one or two figures they are judged by.
 */
export interface MisfitModel {
  readonly deviations: readonly Deviation[];
  readonly needs: readonly Need[];
  /** Which columns of the results belong to each need, and what is good enough. */
  readonly judged: readonly Judged[];
  readonly outputCount: number;
  /** How many blanks are made in one batch. */
  readonly partCount: number;
  /** `draws` holds one column a deviation, `out` gets one column a result. */
  readonly evaluate: (draws: Float64Array, count: number, out: Float64Array) => void;
}

/**
 * `withDial`: with what is dialled into the second placing's zero as deviations beside the others. `byTrials`: one trial at a
 * time even where a batch can be worked at once, which gives the same to the bit.
 */
export function misfitModel(job: Job, withDial = false, byTrials = false): MisfitModel {
  const columns = newColumns();
  const parts = partsLanded(job, columns, withDial, byTrials);
  const judged = judgedOf(job.needs);
  const firsts = judged.map((one) => (one.shape === 'radial' ? one.x : one.at));
  const { inBatches } = parts;
  const ofBatches: { readonly fill: FillNeed; readonly first: number }[] = [];
  const ofTrials: { readonly read: NeedReading; readonly first: number }[] = [];
  job.needs.forEach((need, k) => {
    const first = firsts[k]! * BATCH;
    const fill = inBatches === null ? null : needColumns(job, need, inBatches);
    if (fill === null) ofTrials.push({ read: needReading(job, need, parts), first });
    else ofBatches.push({ fill, first });
  });
  const work = parts.work();
  return {
    deviations: columns.asked(),
    needs: job.needs,
    judged,
    outputCount: judged.reduce((sum, one) => sum + one.columnCount, 0),
    partCount: job.parts.count,
    evaluate: (draws, count, out) => {
      inBatches?.lay(draws, count);
      for (const { fill, first } of ofBatches) fill(draws, count, out, first);
      if (ofTrials.length === 0) return;
      for (let i = 0; i < count; i++) {
        for (const load of work) load(draws, i);
        for (const { read, first } of ofTrials) read(draws, i, out, first + i);
      }
    },
  };
}
