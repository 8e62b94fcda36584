import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { misfitModel } from '../../src/setup/misfit.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { modelOf } from '../../src/stackup/model-of.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { readFromDisk } from '../job/from-disk.ts';

const examples = readdirSync('jigs').filter(
  (name) => name.endsWith('.yaml') && !name.startsWith('shop'),
);

describe('an example job', () => {
  it('is there for each way of working that the model names', () => {
    const jobs = examples.map((name) => {
      const read = readFromDisk(`jigs/${name}`);
      if (!read.ok) throw new Error(`${name} has faults`);
      return read.value.job;
    });
    expect(jobs.length).toBeGreaterThanOrEqual(8);
    expect(new Set(jobs.map(({ locating }) => locating)).size).toBe(4);
    expect(new Set(jobs.map(({ turn }) => turn)).size).toBe(2);
    expect(new Set(jobs.map(({ first }) => first)).size).toBe(2);
    expect(new Set(jobs.map(({ shop }) => shop.units)).size).toBe(2);
    const needs = new Set(jobs.flatMap((job) => job.needs.map(({ kind }) => kind)));
    expect([...needs].toSorted()).toEqual([
      'concentric',
      'depth',
      'goes-on',
      'lip',
      'meets',
      'misalignment',
      'parallel',
      'size',
      'wall',
      'web',
    ]);
  });

  it.each(examples)('%s is a model that comes to a figure in every trial', (name) => {
    const read = readFromDisk(`jigs/${name}`);
    if (!read.ok) throw new Error(`${name} has faults`);
    const { job } = read.value;
    const misfit = misfitModel(job);
    const model = modelOf(misfit, sourcesOf(job, misfit.deviations));
    for (const column of runTrials(model, 1, 100)) {
      expect(column.every(Number.isFinite)).toBe(true);
      expect(new Set(column).size).toBeGreaterThan(1);
    }
  });
});
