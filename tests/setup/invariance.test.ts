import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corner, Edge, StopsJob } from '../../src/job/job.ts';
import { bench, BENCH_MM, SECOND_MM, smallOff } from './benches.ts';
import { mirroredJob, mirroredOff } from './mirrored.ts';
import { keysOf, misalign, type Off } from './misalign.ts';
import { plainJob } from './plain-job.ts';

// Random set-ups with everything off at once. Mirroring or transposing the whole bench must do the
// same to the result. The blank's own frame hangs on its lower-left corner, so a mirrored blank is
// described from its other corner: the two descriptions differ by the square of what is off.

const { x: W, y: H } = BENCH_MM;

interface SetUp {
  readonly job: StopsJob;
  readonly off: Off;
  readonly at: { readonly x: number; readonly y: number };
}

const setUp: fc.Arbitrary<SetUp> = fc
  .tuple(bench, fc.integer({ min: 0, max: W }), fc.integer({ min: 0, max: H }))
  .map(([{ job, seed }, x, y]) => ({ job, off: smallOff(keysOf(job), seed), at: { x, y } }));

function transposed({ job, off, at }: SetUp): SetUp {
  const words: Readonly<Record<string, string>> = {
    left: 'lower',
    lower: 'left',
    right: 'upper',
    upper: 'right',
  };
  const word = (text: string): string =>
    text.replace(/lower|upper|left|right/g, (one) => words[one] ?? one);
  const place = (text: string): Corner => {
    const [farness, hand] = text.split('-');
    return `${hand === 'left' ? 'near' : 'far'}-${farness === 'near' ? 'left' : 'right'}`;
  };
  const axis = (key: string): string =>
    key.replace(/\/([xy])(\/|$)/, (_, a: string, end: string) => `/${a === 'x' ? 'y' : 'x'}${end}`);
  const turned: Record<string, number> = {};
  for (const [key, value] of Object.entries(off)) {
    const [kind] = key.split('/');
    if (kind === 'width') turned['height'] = value;
    else if (kind === 'height') turned['width'] = value;
    else if (kind === 'fence-angle') turned[key] = -value;
    else turned[axis(word(key))] = value;
  }
  const { blank } = job;
  return {
    job: {
      ...job,
      blank: {
        ...blank,
        widthMm: blank.heightMm,
        heightMm: blank.widthMm,
        widthAtYMm: blank.heightAtXMm,
        heightAtXMm: blank.widthAtYMm,
      },
      turn: job.turn === 'about-x' ? 'about-y' : 'about-x',
      stops: {
        ...job.stops,
        corner: {
          frontUp: place(job.stops.corner.frontUp),
          backUp: place(job.stops.corner.backUp),
        },
        fence: word(job.stops.fence) as Edge,
      },
    },
    off: turned,
    at: { x: at.y, y: at.x },
  };
}

describe('the whole bench', () => {
  it.each([
    ['left for right', 'x', 1],
    ['near for far', 'y', 4],
  ] as const)('mirrored %s gives the mirrored misfit', (_name, axis, seed) => {
    fc.assert(
      fc.property(setUp, ({ job, off, at }) => {
        const [x, y] = misalign(job, off, at);
        const image = { ...at, [axis]: BENCH_MM[axis] - at[axis] };
        const [mx, my] = misalign(mirroredJob(job, axis), mirroredOff(job, off, axis), image);
        expect(Math.abs(axis === 'x' ? mx + x : mx - x)).toBeLessThan(SECOND_MM);
        expect(Math.abs(axis === 'y' ? my + y : my - y)).toBeLessThan(SECOND_MM);
        expect(Math.hypot(x, y)).toBeGreaterThan(SECOND_MM);
      }),
      { seed, numRuns: 60 },
    );
  });

  it('turned a quarter and mirrored (X for Y) gives the misfit with X for Y, on a machine that is square', () => {
    fc.assert(
      fc.property(setUp, ({ job, off, at }) => {
        // The machine's shear and the blank's squareness are told from one axis; both are nil here.
        const one = { job, off: { ...off, 'machine-lean': 0, square: 0 }, at };
        const [x, y] = misalign(one.job, one.off, one.at);
        const other = transposed(one);
        const [mx, my] = misalign(other.job, other.off, other.at);
        expect(Math.abs(mx - y)).toBeLessThan(SECOND_MM);
        expect(Math.abs(my - x)).toBeLessThan(SECOND_MM);
      }),
      { seed: 2, numRuns: 80 },
    );
  });

  it('stands anywhere on the bed alike', () => {
    const job = plainJob();
    const elsewhere = plainJob({
      onBed: { value: { x: 123, y: 45 }, origin: { kind: 'assumed', because: 'test' } },
    });
    const off = smallOff(keysOf(job), 9);
    expect(misalign(elsewhere, off, { x: 33, y: 44 })).toEqual(
      misalign(job, off, { x: 33, y: 44 }),
    );
  });

  it('scales: everything off twice as much, straight contacts, lands twice as far off', () => {
    fc.assert(
      fc.property(setUp, ({ job, off, at }) => {
        const double = Object.fromEntries(
          Object.entries(off).map(([key, value]) => [
            key,
            key.startsWith('rock') ? value : 2 * value,
          ]),
        );
        const [x, y] = misalign(job, off, at);
        const [dx, dy] = misalign(job, double, at);
        // Contacts switch at 0, and the model is positively homogeneous there, to first order.
        expect(Math.abs(dx - 2 * x)).toBeLessThan(4 * SECOND_MM);
        expect(Math.abs(dy - 2 * y)).toBeLessThan(4 * SECOND_MM);
      }),
      { seed: 3, numRuns: 80 },
    );
  });
});
