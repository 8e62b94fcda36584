import { describe, expect, it } from 'vitest';
import type { Job, StopsJob } from '../../src/job/job.ts';
import { judgedPlace, offsetAt } from '../../src/measure/dial-in.ts';
import { dialSign } from '../../src/setup/dial-sign.ts';
import { half95 } from '../../src/measure/estimate.ts';
import { lengthFormulas } from '../../src/measure/length-formula.ts';
import { pieceErrors } from '../../src/measure/piece-errors.ts';
import { fieldAt, fieldOf, type TurnRead } from '../../src/measure/test-piece.ts';
import { misalign } from '../setup/misalign.ts';
import { PAPER, plainJob } from '../setup/plain-job.ts';
import { recovered } from './recovery-laws.ts';
import { luckOf } from './shop-beds.ts';
import { COMBS, readCombs, WALL } from './simulated-shop.ts';

const TRUE_CALIPER = { sdMm: 0, zeroMm: 0.05, growthMm: 0.03 };
/** A turn over whose true field is a plane, read without noise by a caliper that is off by its own zero. */
const planeRead = (
  x: readonly [number, number, number],
  y: readonly [number, number, number],
  combs = COMBS,
): TurnRead =>
  readCombs(
    (k) => {
      const { x: px, y: py } = COMBS[k]!;
      return [x[0] + x[1] * px + x[2] * py, y[0] + y[1] * px + y[2] * py];
    },
    luckOf(1),
    TRUE_CALIPER,
    combs,
  );

describe('a test piece', () => {
  it('separates shift, turn, lean and size, whatever the zero of the caliper', () => {
    const [phi, gamma] = [0.0004, -0.0007];
    // Source: bench practice section 2 and registration.md section 2: c = -2 (gamma + phi), e = 2 phi.
    const turn = planeRead([0.21, 0, -2 * (gamma + phi)], [-0.08, 2 * phi, 0]);
    const errors = pieceErrors([turn], WALL, 'about-y');
    expect(errors.fenceAngle!.value).toBeCloseTo(phi, 12);
    expect(errors.lean!.value).toBeCloseTo(gamma, 12);
    expect(fieldAt(errors.x!, { x: 0, y: 0 }).value).toBeCloseTo(0.21, 12);
    expect(fieldAt(errors.y!, { x: 0, y: 0 }).value).toBeCloseTo(-0.08, 12);
    // Both walls lose twice the growth and gain the caliper's zero.
    expect(errors.growth!.value).toBeCloseTo(0.03 - 0.05 / 2, 12);
    expect(errors.strange).toEqual([]);
    expect(errors.untold.map(({ kind }) => kind)).toEqual([
      'one turn',
      'length, zero and scale',
      'drops out',
    ]);
  });

  it('knows a comb to the caliper over root two, and a turn to that over the distance', () => {
    const turn = planeRead([0, 0, 0], [0, 0, 0]);
    const read = { combs: turn.combs.map((comb) => ({ ...comb, sdMm: 0.02 })) };
    const field = fieldOf([read], 'y')!;
    // Source: bench practice section 2: reading sd 0.02 makes sd 0.014; the ends of a row 240 apart,
    // with a third comb, closed form 0.0141 over the root of the sum of squared distances.
    expect(fieldOf([{ combs: read.combs.slice(0, 1) }], 'x')!.shift.sd).toBeCloseTo(0.01414, 4);
    const squares = [4, 4, 276].map((x) => (x - 284 / 3) ** 2).reduce((a, b) => a + b, 0);
    expect(field.perX!.sd).toBeGreaterThanOrEqual(0.0141 / Math.sqrt(squares));
    expect(field.shift.dof).toBe(Infinity);
    expect(half95(field.shift)).toBeCloseTo((1.96 * 0.01414) / Math.sqrt(3), 3);
  });

  it('says what its combs do not tell, and that theory is broken where it is', () => {
    const lower = COMBS.filter(({ along, y }) => along === 'x' && y === 4);
    const one = pieceErrors([planeRead([0.1, 0, 0], [0, 0, 0], lower)], WALL, 'about-y');
    expect(one.untold).toContainEqual({ kind: 'one row', axis: 'x' });
    expect(one.untold).toContainEqual({ kind: 'no combs', axis: 'y' });
    expect(one.lean).toBeNull();
    const bent = pieceErrors([planeRead([0, 0.001, 0], [0, 0, 0])], WALL, 'about-y');
    expect(bent.strange).toMatchObject([{ axis: 'x', slope: 'perX' }]);
  });

  it('on dowels tells shift and size, and takes no lean apart', () => {
    const dowels = pieceErrors(
      [planeRead([0.1, 0, 0.001], [0, 0.001, 0])],
      WALL,
      'about-y',
      'dowels',
    );
    expect(dowels).toMatchObject({ lean: null, fenceAngle: null });
    expect(dowels.x!.perY!.value).toBeCloseTo(0.001, 12);
    expect(dowels.untold).toContainEqual({ kind: 'not on stops' });
  });

  it('after two turns knows no more than two turns can', () => {
    const [a, b] = [planeRead([0.1, 0, 0], [0, 0, 0]), planeRead([0.14, 0, 0], [0, 0, 0])];
    const field = fieldOf([a, b], 'x')!;
    expect(field.shift.dof).toBe(1);
    expect(field.shift.sd).toBeCloseTo(0.02, 9);
    expect(half95(field.shift)).toBeCloseTo(12.706 * 0.02, 3);
    const job = plainJob();
    const offset = offsetAt(job, field, judgedPlace(job));
    expect(offset.nextHalf95).toBeCloseTo(12.706 * Math.hypot(0.02, 0.04 / Math.SQRT2), 3);
    expect(offsetAt(job, fieldOf([a], 'x')!, judgedPlace(job)).nextHalf95).toBe(Infinity);
  });

  it('finds out simulated shops, within four standard errors', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const { leanOff, before, after } = recovered(seed, 5);
      // Student's t of at least four degrees of freedom beyond what the gauge allows.
      expect(Math.abs(leanOff)).toBeLessThan(8);
      const mean = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0) / all.length;
      if (mean(before) > 0.15) expect(mean(after)).toBeLessThan(mean(before));
    }
  });
});

describe('dialling in', () => {
  const touched = { xy: { kind: 'stops', at: null, tool: PAPER } } as const;
  const ways: readonly (readonly [string, Partial<StopsJob>])[] = [
    ['about Y, front first', { turn: 'about-y', first: 'front' }],
    ['about Y, back first', { turn: 'about-y', first: 'back' }],
    ['about X, front first', { turn: 'about-x', first: 'front' }],
    ['about X, back first', { turn: 'about-x', first: 'back' }],
  ];

  it.each(ways)('has the sign by which the model moves the second cut: %s', (_, way) => {
    const base = plainJob(way);
    const second = base.first === 'front' ? 'back-up' : 'front-up';
    const job: Job = {
      ...base,
      zero: {
        frontUp: { ...base.zero.frontUp, ...touched },
        backUp: { ...base.zero.backUp, ...touched },
      },
    };
    const at = { x: 90, y: 50 };
    const [x] = misalign(job, { [`zero-touch/${second}/x/1`]: 0.1 }, at);
    expect(x).toBeCloseTo(0.1 * dialSign(job, 'x'), 9);
    const [, y] = misalign(job, { [`zero-touch/${second}/y/1`]: 0.1 }, at);
    expect(y).toBeCloseTo(0.1 * dialSign(job, 'y'), 9);
  });

  it('undoes what was measured: the model with the offset in is on again', () => {
    const base = plainJob();
    const job: Job = {
      ...base,
      zero: { ...base.zero, backUp: { ...base.zero.backUp, ...touched } },
    };
    const at = judgedPlace(job);
    const off = { width: 0.3, 'fence-angle': 0.0005 };
    const turn = readCombs((k) => misalign(job, off, COMBS[k]!), luckOf(2), TRUE_CALIPER);
    const errors = pieceErrors([turn], WALL, 'about-y');
    const [x, y] = [offsetAt(job, errors.x!, at), offsetAt(job, errors.y!, at)];
    const [mx, my] = misalign(
      job,
      {
        ...off,
        'zero-touch/back-up/x/1': x.estimate.value,
        'zero-touch/back-up/y/1': y.estimate.value,
      },
      at,
    );
    expect(Math.hypot(...misalign(job, off, at))).toBeGreaterThan(0.1);
    // Second order is left: the turn of the fence times the length that was off.
    expect(Math.hypot(mx, my)).toBeLessThan(2 * 0.0005 * 0.3);
  });

  it('by each blank: the length counts whole on the same corner, and not at all where it drops out', () => {
    // Source: registration.md section 2, row "W long by d": (+d, 0) same corner, 0 opposite corner.
    const [formula, ...others] = lengthFormulas(plainJob());
    expect(others).toEqual([]);
    expect(formula).toMatchObject({ axis: 'x', nominalMm: 280, caliperAtMm: 90 });
    expect(formula!.factor).toBeCloseTo(1, 6);
    expect(formula!.example.offsetMm).toBeCloseTo(0.3, 6);
    const stops = plainJob().stops;
    const opposite = plainJob({
      stops: { ...stops, corner: { frontUp: 'near-left', backUp: 'near-right' } },
    });
    expect(lengthFormulas(opposite)).toEqual([]);
    const middle = { xy: { kind: 'middle', at: null, tool: PAPER } } as const;
    const zero = plainJob().zero;
    expect(
      lengthFormulas(
        plainJob({
          zero: {
            frontUp: { ...zero.frontUp, ...middle },
            backUp: { ...zero.backUp, ...middle },
          },
        }),
      ),
    ).toEqual([]);
    // Turned about X the height counts: (0, +d); back second, mirrored, so the offset has its sign.
    const [height] = lengthFormulas(plainJob({ turn: 'about-x' }));
    expect(height).toMatchObject({ axis: 'y', nominalMm: 180 });
    expect(height!.factor).toBeCloseTo(1, 6);
  });
});
