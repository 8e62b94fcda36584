// The quick answer against plain trials of the same job, and what set-ups that share points share.
import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/job/job.ts';
import { misfitModel } from '../../../src/setup/misfit.ts';
import { sourcesOf } from '../../../src/sources/sources-of.ts';
import { chanceOf } from '../../../src/stackup/chance.ts';
import { askedOf } from '../../../src/stackup/figure.ts';
import { modelOf } from '../../../src/stackup/model-of.ts';
import { commonPoints, type CommonPoints } from '../../../src/stackup/fast/points.ts';
import { quickly, type QuickAnswer } from '../../../src/stackup/fast/quickly.ts';
import { tried } from '../a-model.ts';
import { readFromDisk } from '../../job/from-disk.ts';

function jobAt(path: string): Job {
  const read = readFromDisk(path);
  if (!read.ok) throw new Error(`${path} has faults`);
  return read.value.job;
}

function answered(job: Job, points: CommonPoints): QuickAnswer {
  const misfit = misfitModel(job);
  return quickly(misfit, sourcesOf(job, misfit.deviations), { seed: 1, points });
}

const clock = jobAt('jigs/wall-clock.yaml');

describe('a quick answer', () => {
  it('is that of plain trials, to the standard errors of both, and says how sure it is', () => {
    const misfit = misfitModel(clock);
    const model = modelOf(misfit, sourcesOf(clock, misfit.deviations));
    const asked = askedOf(misfit.judged);
    const plain = tried(model, 20_480, asked, 2);
    const quick = answered(clock, commonPoints(1, 256));
    expect(quick.needs.map(({ name }) => name)).toEqual(clock.needs.map(({ name }) => name));
    quick.needs.forEach((need, k) => {
      const { mean, sd, interval95, sure } = plain.figure(asked.questions[k]!.lowest);
      // 99 % half-widths are 2.6 to 3 standard errors; four are allowed.
      for (const [one, value, other] of [
        [need.mean, mean, sure.mean],
        [need.sd, sd, sure.sd],
        [need.low, interval95[0], sure.low],
        [need.high, interval95[1], sure.high],
      ] as const) {
        expect(one.se).toBeGreaterThan(0);
        expect(Math.abs(one.value - value)).toBeLessThan(1.5 * Math.hypot(one.sure, other));
      }
      const { chance, chanceSe } = chanceOf(plain.good[k]!, plain.trials());
      expect(Math.abs(1 - need.bad.value - chance)).toBeLessThan(
        4 * Math.hypot(need.bad.se, chanceSe),
      );
    });
    expect(quick.digits).toBe(
      Math.min(
        ...quick.needs.flatMap(({ mean, sd, low, high, bad }) =>
          [mean, sd, low, high, bad].map(({ digits }) => digits),
        ),
      ),
    );
  });

  it('changes by what differs alone when set-ups share points', () => {
    const points = commonPoints(1, 64);
    const once = answered(clock, points);
    expect(answered(clock, points)).toEqual(once);
    const fewer = answered({ ...clock, needs: clock.needs.slice(0, 1) }, points);
    expect(fewer.needs[0]!.mean).toEqual(once.needs[0]!.mean);
    expect(fewer.needs[0]!.bad.value).toBeCloseTo(once.needs[0]!.bad.value, 3);
  });

  it.each([
    ['chime-box', 'goes-on'],
    ['compass-cover', 'concentric'],
    ['tray', 'lip'],
  ] as const)('is there for %s too, whose %s has corners', (name, kind) => {
    const { needs, evaluations } = answered(jobAt(`jigs/${name}.yaml`), commonPoints(1, 16));
    expect(evaluations).toBe(256);
    const need = needs.find((one) => one.kind === kind)!;
    expect(need.low.value).toBeLessThan(need.mean.value);
    expect(need.high.value).toBeGreaterThan(need.mean.value);
    expect(need.bad.value).toBeGreaterThanOrEqual(0);
  });
});
