import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Corner, Edge, StopsJob, Touch, ZeroXy } from '../../src/job/job.ts';
import { keysOf, misalign, type Off } from './misalign.ts';
import { FLAT6, NONE, PAPER, plainJob } from './plain-job.ts';

// Random set-ups with everything off at once. Mirroring or transposing the whole bench must do the
// same to the result. The blank's own frame hangs on its lower-left corner, so a mirrored blank is
// described from its other corner: the two descriptions differ by the square of what is off.

const W = 280;
const H = 180;

interface SetUp {
  readonly job: StopsJob;
  readonly off: Off;
  readonly at: { readonly x: number; readonly y: number };
}

const zeroKind = fc.constantFrom<'stops' | 'edges' | 'middle'>('stops', 'edges', 'middle');
const touch = (from: number, to: number): fc.Arbitrary<Touch> =>
  fc.oneof(
    fc.constant<Touch>({ kind: 'buttons', atMm: [from, to] }),
    fc.constant<Touch>({ kind: 'arm', fromMm: from, toMm: to }),
  );

const setUp: fc.Arbitrary<SetUp> = fc
  .record({
    opposite: fc.boolean(),
    aboutX: fc.boolean(),
    alongY: fc.boolean(),
    milled: fc.boolean(),
    far: fc.boolean(),
    first: zeroKind,
    second: fc.option(zeroKind),
    fence: touch(30, 150),
    side: fc.oneof(fc.constant<Touch>({ kind: 'buttons', atMm: [70] }), touch(20, 120)),
    backFirst: fc.boolean(),
    seed: fc.integer({ min: 1, max: 1e6 }),
    x: fc.integer({ min: 0, max: W }),
    y: fc.integer({ min: 0, max: H }),
  })
  .map((r) => {
    // An opposite corner lies along the turned direction.
    const alongY = r.opposite ? r.aboutX : r.alongY;
    const near = r.far && !alongY ? 'far' : 'near';
    const frontUp: Corner = `${near}-left`;
    const backUp: Corner = r.opposite ? (alongY ? 'far-left' : `${near}-right`) : frontUp;
    const plain = plainJob();
    const zero = (kind: 'stops' | 'edges' | 'middle'): ZeroXy => ({ kind, at: null, tool: PAPER });
    const held: ZeroXy = { kind: 'kept', how: 'held', extra: null };
    const [one, two] = [zero(r.first), r.second === null ? held : zero(r.second)];
    const fence: Edge = alongY ? 'left' : near === 'far' ? 'upper' : 'lower';
    const job: StopsJob = {
      ...plain,
      first: r.backFirst ? 'back' : 'front',
      turn: r.aboutX ? 'about-x' : 'about-y',
      stops: {
        ...plain.stops,
        corner: { frontUp, backUp },
        fence,
        fenceTouch: r.fence,
        sideTouch: r.side,
        made: r.milled
          ? { kind: 'milled-in-place', cutter: FLAT6 }
          : { kind: 'set-by-hand', angle: NONE, square: NONE, spacing: NONE },
      },
      zero: {
        frontUp: { ...plain.zero.frontUp, xy: r.backFirst ? two : one },
        backUp: { ...plain.zero.backUp, xy: r.backFirst ? one : two },
      },
    };
    return { job, off: randomOff(job, r.seed), at: { x: r.x, y: r.y } };
  });

const SIZE = 1e-4;

/** Leans 1e-4 / 100, lengths 1e-4, one-sided ones positive, by a small generator of our own. */
function randomOff(job: StopsJob, seed: number): Off {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return state / 2 ** 31 - 1;
  };
  return Object.fromEntries(
    keysOf(job).map((key) => {
      const value = next();
      if (key.startsWith('rock')) return [key, (value + 1) / 2];
      if (/^(seat-gap|give|clamp-drag)/.test(key)) return [key, Math.abs(value) * SIZE];
      const isLean =
        /^(machine-lean|scale|cutter-lean|square|taper|bevel|crook|movement|fence-angle|stop-square)/.test(
          key,
        );
      return [key, value * (isLean ? SIZE / 100 : SIZE)];
    }),
  );
}

/** Second-order terms: 1e-4 over a lever of 280 / 120. */
const SECOND = 40 * SIZE * SIZE;

const swapWords = (text: string, pairs: readonly (readonly [string, string])[]): string =>
  text.replace(/lower|upper|left|right|near|far/g, (word) => {
    for (const [a, b] of pairs) {
      if (word === a) return b;
      if (word === b) return a;
    }
    return word;
  });

function mirrored({ job, off, at }: SetUp): SetUp {
  const word = (text: string): string => swapWords(text, [['left', 'right']]);
  const corner = {
    frontUp: word(job.stops.corner.frontUp) as Corner,
    backUp: word(job.stops.corner.backUp) as Corner,
  };
  const flipped: Record<string, number> = {};
  for (const [key, value] of Object.entries(off)) {
    const [kind, ...rest] = key.split('/');
    const to = [kind!, ...rest.map(word)];
    let result = value;
    if (['machine-lean', 'fence-angle'].includes(kind!) || key === 'taper/y') result = -value;
    if (key === 'square') result = -(value + (off['taper/x'] ?? 0));
    if (
      key === 'cutter-lean/x' ||
      /^(repeatability|lost-motion)\/.*\/x$/.test(key) ||
      key === 'zero-return/x'
    )
      result = -value;
    // Bumps are addressed by blank coordinate: along lower and upper edges x becomes W - x.
    if (kind === 'bump' && (rest[0] === 'lower' || rest[0] === 'upper'))
      to[2] = String(W - Number(rest[1]));
    flipped[to.join('/')] = result;
  }
  return {
    job: { ...job, stops: { ...job.stops, corner, fence: word(job.stops.fence) as Edge } },
    off: flipped,
    at: { x: W - at.x, y: at.y },
  };
}

function transposed({ job, off, at }: SetUp): SetUp {
  const word = (text: string): string =>
    swapWords(
      swapWords(text, [
        ['left', 'lower'],
        ['right', 'upper'],
      ]),
      [],
    );
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
  it('mirrored left for right gives the mirrored misfit', () => {
    fc.assert(
      fc.property(setUp, (one) => {
        const [x, y] = misalign(one.job, one.off, one.at);
        const other = mirrored(one);
        const [mx, my] = misalign(other.job, other.off, other.at);
        expect(Math.abs(mx + x)).toBeLessThan(SECOND);
        expect(Math.abs(my - y)).toBeLessThan(SECOND);
        expect(Math.hypot(x, y)).toBeGreaterThan(SECOND);
      }),
      { seed: 1, numRuns: 80 },
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
        expect(Math.abs(mx - y)).toBeLessThan(SECOND);
        expect(Math.abs(my - x)).toBeLessThan(SECOND);
      }),
      { seed: 2, numRuns: 80 },
    );
  });

  it('stands anywhere on the bed alike', () => {
    const job = plainJob();
    const elsewhere = plainJob({
      onBed: { value: { x: 123, y: 45 }, origin: { kind: 'assumed', because: 'test' } },
    });
    const off = randomOff(job, 9);
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
        expect(Math.abs(dx - 2 * x)).toBeLessThan(4 * SECOND);
        expect(Math.abs(dy - 2 * y)).toBeLessThan(4 * SECOND);
      }),
      { seed: 3, numRuns: 80 },
    );
  });
});
