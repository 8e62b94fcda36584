import { BATCH } from '../num/batch.ts';
import type { Job, Need } from '../job/job.ts';
import { newColumns } from './columns.ts';
import type { Deviation } from './deviation.ts';
import { judgedOf, type Judged } from './judged.ts';
import { needReading } from './need-reading.ts';
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

/** `withDial`: with what is dialled into the second placing's zero as deviations beside the others. */
export function misfitModel(job: Job, withDial = false): MisfitModel {
  const columns = newColumns();
  const parts = partsLanded(job, columns, withDial);
  const readings = job.needs.map((need) => needReading(job, need, parts));
  const judged = judgedOf(job.needs);
  const firsts = judged.map((one) => (one.shape === 'radial' ? one.x : one.at));
  const work = parts.work();
  return {
    deviations: columns.asked(),
    needs: job.needs,
    judged,
    outputCount: judged.reduce((sum, one) => sum + one.columnCount, 0),
    partCount: job.parts.count,
    evaluate: (draws, count, out) => {
      for (let i = 0; i < count; i++) {
        for (const load of work) load(draws, i);
        for (let k = 0; k < readings.length; k++)
          readings[k]!(draws, i, out, firsts[k]! * BATCH + i);
      }
    },
  };
}
