import { describe, expect, it } from 'vitest';
import { faultsOf, jobOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const INSERTS = 'inserts: {thread: M6, first: [50, 50], pitch: [100, 75], count: [4, 4]}';
const shop = otherwise(SHOP, '  spoilboard', `  ${INSERTS}\n  spoilboard`);
const opposite = otherwise(JOB, 'back-up: near-left', 'back-up: near-right');

describe('the place on the bed', () => {
  it('is as stated', () => {
    const job = jobOf(otherwise(JOB, 'turn:', 'on-bed: [60, 70]\nturn:'), shop);
    expect(job.onBed).toEqual({
      value: { x: 60, y: 70 },
      origin: { kind: 'stated', file: 'job.yaml', line: 11 },
    });
  });

  it('left out, is the first with rows of inserts 10 to 25 mm outside the faces', () => {
    // Inserts at 50: the face may stand at 60 to 75.
    expect(jobOf(JOB, shop).onBed).toEqual({
      value: { x: 60, y: 60 },
      origin: { kind: 'assumed', because: 'the first place with inserts beside the stops' },
    });
  });

  it('puts rows outside both side stops when there is such a place', () => {
    // 175 wide between inserts at 50 and 250 leaves 25 to share: 10 to 15 on the left.
    const narrow = otherwise(otherwise(opposite, '200 ±0.4', '175 ±0.4'), 'at: [100', 'at: [87');
    expect(jobOf(otherwise(narrow, 'at: [100', 'at: [87'), shop).onBed.value).toEqual({
      x: 60,
      y: 60,
    });
    // 200 wide never has rows 10 to 25 outside both ends at a pitch of 100: one end then.
    expect(jobOf(opposite, shop).onBed.value).toEqual({ x: 60, y: 60 });
  });

  it('is told from the corner, wherever that is', () => {
    const far = otherwise(
      otherwise(
        JOB,
        '{front-up: near-left, back-up: near-left}',
        '{front-up: far-right, back-up: far-right}',
      ),
      'lower-edge',
      'upper-edge',
    );
    const { value } = jobOf(far, shop).onBed;
    // Rows at x 250, 350 and y 200, 275: the right face 10 to 25 short of 250, the far face of 200.
    expect([250 - value.x, 200 - value.y].every((gap) => gap >= 10 && gap <= 25)).toBe(true);
  });

  it('leaves room for the stops when the bed has no inserts', () => {
    expect(jobOf(JOB, SHOP).onBed).toEqual({
      value: { x: 25, y: 25 },
      origin: { kind: 'assumed', because: 'the first place with room for the stops' },
    });
  });

  it('must keep the blank on the board, from whichever corner it is told', () => {
    const right = otherwise(
      JOB,
      '{front-up: near-left, back-up: near-left}',
      '{front-up: near-right, back-up: near-right}',
    );
    expect(faultsOf(otherwise(right, 'turn:', 'on-bed: [150, 20]\nturn:'), shop)).toEqual([
      'job.yaml:11:10: the blank would lie from -50 to 150 mm along X, and the spoilboard ends at 0 and 400 mm; write 200 to 400',
    ]);
  });
});
