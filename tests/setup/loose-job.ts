import type { DowelHoles, Job, JobBase, Nest, ZeroXy } from '../../src/job/job.ts';
import { FLAT6, NONE, PAPER, plainJob } from './plain-job.ts';

export const EDGES: ZeroXy = { kind: 'edges', at: null, tool: PAPER };
export const HELD: ZeroXy = { kind: 'kept', how: 'held', extra: null };

export const holes = (changes: Partial<DowelHoles>): DowelHoles => ({
  at: [
    { x: 140, y: 20 },
    { x: 140, y: 165 },
  ],
  diameterMm: 8,
  clearance: { kind: 'stated', spread: NONE },
  drilled: 'with-the-blank',
  drillError: NONE,
  takeUp: 'anywhere',
  laid: NONE,
  ...changes,
});

export const nest = (changes: Partial<Nest>): Nest => ({
  around: null,
  clearance: NONE,
  cutter: FLAT6,
  wallMm: 8,
  takeUp: 'anywhere',
  seatGap: NONE,
  laid: NONE,
  ...changes,
});

interface Set {
  readonly aboutX?: boolean;
  readonly backFirst?: boolean;
  readonly first?: ZeroXy;
  readonly second?: ZeroXy;
}

function baseOf({ aboutX, backFirst, first = EDGES, second = HELD }: Set) {
  const base: JobBase = plainJob();
  const [one, two] = [
    { ...base.zero.frontUp, xy: first },
    { ...base.zero.frontUp, xy: second },
  ];
  return {
    ...base,
    turn: aboutX === true ? ('about-x' as const) : ('about-y' as const),
    first: backFirst === true ? ('back' as const) : ('front' as const),
    zero: backFirst === true ? { frontUp: two, backUp: one } : { frontUp: one, backUp: two },
  };
}

export const onDowels = (changes: Partial<DowelHoles>, set: Set = {}): Job => ({
  ...baseOf(set),
  locating: 'dowels',
  dowels: holes(changes),
});

export const inNest = (changes: Partial<Nest>, set: Set = {}): Job => ({
  ...baseOf({ first: { kind: 'nest' }, ...set }),
  locating: 'nest',
  nest: nest(changes),
});

export const onFenceAndDowel = (
  changes: Partial<DowelHoles>,
  set: Set & { readonly milled?: boolean } = {},
): Job => ({
  ...baseOf(set),
  locating: 'fence-and-dowel',
  fenceAndDowel: {
    fence: set.aboutX === true ? 'left' : 'lower',
    fenceTouch: { kind: 'buttons', atMm: [30, 150] },
    band: { kind: 'plain', heightMm: 8 },
    made:
      set.milled === true
        ? { kind: 'milled-in-place', cutter: FLAT6 }
        : { kind: 'set-by-hand', angle: NONE, square: NONE, spacing: NONE },
    seatGap: NONE,
    give: NONE,
    dowel: holes({ at: [{ x: 140, y: 90 }], ...changes }),
  },
});
