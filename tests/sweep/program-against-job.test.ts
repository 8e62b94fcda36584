import { describe, expect, it } from 'vitest';
import type { Feature, Job } from '../../src/job/job.ts';
import { blankInLayout } from '../../src/setup/place.ts';
import type { Placing } from '../../src/setup/placing.ts';
import { placedMoves } from '../../src/sweep/placed-moves.ts';
import { programAgainstJob } from '../../src/sweep/program-against-job.ts';
import { readProgram } from '../../src/sweep/program/read.ts';
import { aFeature, aJob, flat6, placed } from '../jig/a-job.ts';

type Turn = (p: { x: number; y: number }) => { x: number; y: number };

/** A program that cuts each round pocket as a helix and a ring, in places that `turn` may spoil. */
function programFor(job: Job, placing: Placing, turn: Turn = (p) => p, deeper = 0): string {
  const lines = ['G21 G90 F900', 'G0 X0 Y0 Z20'];
  for (const feature of job.features.filter(({ face }) => face === placing.faceUp)) {
    const at = turn(blankInLayout(job, placing.mirror, feature.at));
    const [x, y] = [at.x - placing.zero.x, at.y - placing.zero.y];
    const r = (feature.shape.kind === 'circle' ? feature.shape.diameterMm / 2 : 3) - 3;
    lines.push(`G0 X${x + r} Y${y}`, `G1 Z${-feature.depthMm - deeper}`);
    if (r > 0) lines.push(`G3 I${-r}`);
    lines.push('G0 Z20');
  }
  return [...lines, 'M2', ''].join('\n');
}

const pocket = (name: string, x: number, y: number, diameterMm: number): Feature =>
  aFeature({ name, face: 'back', at: { x, y }, shape: { kind: 'circle', diameterMm } });

const odd = [pocket('large', 90, 60, 60), pocket('small', 220, 130, 20)];

function againstOf(features: readonly Feature[], turn?: Turn) {
  const job = aJob({ features });
  const { backUp } = placed(job);
  const program = readProgram(programFor(job, backUp, turn), { units: 'mm' });
  expect(program.isSound).toBe(true);
  return programAgainstJob(
    job,
    backUp,
    placedMoves(job, backUp, program, () => flat6),
  );
}

describe('a program for the back', () => {
  it('is known to be the right one', () => {
    expect(againstOf(odd)).toEqual({
      against: { kind: 'agrees' },
      missed: [],
      deepestMm: 6,
      deepestWantedMm: 6,
      lowRapids: [],
    });
  });

  it('is found out when it was not mirrored, or mirrored twice', () => {
    // The blank is 280 by 180; its zero is at the near left.
    expect(againstOf(odd, ({ x, y }) => ({ x: 280 - x, y })).against.kind).toBe('not-mirrored');
    expect(againstOf(odd, ({ x, y }) => ({ x: -x, y })).against.kind).toBe('not-mirrored');
  });

  it('is found out when it was mirrored about the other axis, or turned half round', () => {
    const both: Turn = ({ x, y }) => ({ x: 280 - x, y: 180 - y });
    expect(againstOf(odd, both).against.kind).toBe('mirrored-other-way');
    expect(againstOf(odd, ({ x, y }) => ({ x, y: 180 - y })).against.kind).toBe('turned-half');
  });

  it('is found out when its zero is another, by how much', () => {
    expect(againstOf(odd, ({ x, y }) => ({ x: x + 7, y: y - 4 })).against).toEqual({
      kind: 'wrong-zero',
      byMm: { x: expect.closeTo(7, 1) as number, y: expect.closeTo(-4, 1) as number },
    });
  });

  it('is not taken for right when it only looks so', () => {
    const same = [pocket('a', 80, 90, 40), pocket('b', 200, 90, 40)];
    expect(againstOf(same).against.kind).toBe('agrees-either-way');
    const other = againstOf(odd, ({ x, y }) => ({ x: x < 150 ? x + 30 : x, y }));
    expect(other.against).toMatchObject({ kind: 'differs' });
  });

  it('is told what it leaves out and how deep it goes', () => {
    const job = aJob({ features: odd });
    const { backUp } = placed(job);
    const one = aJob({ features: odd.slice(0, 1) });
    const program = readProgram(programFor(one, backUp, undefined, 3), { units: 'mm' });
    const fit = programAgainstJob(
      job,
      backUp,
      placedMoves(job, backUp, program, () => flat6),
    );
    expect(fit).toMatchObject({ missed: ['small'], deepestMm: 9, deepestWantedMm: 6 });
  });
});
