import fc from 'fast-check';
import type { Corner, Edge, StopsJob, Touch, ZeroXy } from '../../src/job/job.ts';
import type { Off } from './misalign.ts';
import { FLAT6, NONE, PAPER, plainJob } from './plain-job.ts';

/** A random bench and the luck that says how far off everything is on it. */
export interface Bench {
  readonly job: StopsJob;
  readonly seed: number;
}

export const BENCH_MM = { x: 280, y: 180 };

const zeroKind = fc.constantFrom<'stops' | 'edges' | 'middle'>('stops', 'edges', 'middle');
const touch = (from: number, to: number): fc.Arbitrary<Touch> =>
  fc.oneof(
    fc.constant<Touch>({ kind: 'buttons', atMm: [from, to] }),
    fc.constant<Touch>({ kind: 'arm', fromMm: from, toMm: to }),
  );

export const bench: fc.Arbitrary<Bench> = fc
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
    return { job, seed: r.seed };
  });

/** Small enough that first order tells. */
export const SIZE_MM = 1e-4;
/** What second-order terms can come to, mm: 1e-4 over a lever of 280 / 120. */
export const SECOND_MM = 40 * SIZE_MM * SIZE_MM;

const LEAN =
  /^(machine-lean|scale|cutter-lean|square|taper|bevel|crook|movement|fence-angle|stop-square|bed-lean|thickness-taper)/;
const ONE_SIDED = /^(seat-gap|give|clamp-drag|swarf|cup$|push-off|tip-flat)/;

/** Leans 1e-4 / 100, lengths 1e-4, one-sided ones positive, by a small generator of our own. */
export function smallOff(keys: readonly string[], seed: number): Off {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return state / 2 ** 31 - 1;
  };
  return Object.fromEntries(
    keys.map((key) => {
      const value = next();
      if (key.startsWith('rock')) return [key, (value + 1) / 2];
      if (ONE_SIDED.test(key)) return [key, Math.abs(value) * SIZE_MM];
      return [key, value * (LEAN.test(key) ? SIZE_MM / 100 : SIZE_MM)];
    }),
  );
}
