import type { StopsJob } from '../../../src/job/job.ts';
import { placingsOf } from '../../../src/setup/place.ts';
import type { Off } from '../misalign.ts';
import type { SetUp } from './set-ups.ts';
import { spotsOf } from './contacts.ts';

const AXES = ['x', 'y'] as const;
const EDGES = ['lower', 'upper', 'left', 'right'] as const;
const PLACINGS = ['front-up', 'back-up'] as const;

/** Every deviation there can be in a set-up, whether it matters there or not. */
export function everyKey(job: StopsJob): readonly string[] {
  const { frontUp, backUp } = placingsOf(job);
  const contacts = [frontUp, backUp].flatMap(({ faceUp, contacts: all }) =>
    all.map(({ id }) => `seat-gap/${faceUp}-up/${id}`),
  );
  return [
    'machine-lean',
    'width',
    'height',
    'thickness',
    'square',
    'fence-angle',
    'stop-square/first',
    'stop-square/second',
    'spacing',
    'cutter-radius/flat 6',
    'milled-face/fence',
    'milled-face/side-first',
    'milled-face/side-second',
    ...AXES.flatMap((axis) =>
      ['scale', 'cutter-lean', 'taper', 'movement', 'zero-return'].map((kind) => `${kind}/${axis}`),
    ),
    ...AXES.flatMap((axis) =>
      ['front', 'back', ...job.features.map(({ name }) => `feature ${name}`)].flatMap((cut) => [
        `repeatability/${cut}/${axis}`,
        `lost-motion/${cut}/${axis}`,
      ]),
    ),
    ...EDGES.flatMap((edge) => [`bevel/${edge}`, `crook/${edge}`]),
    ...spotsOf(job).map(({ edge, alongMm }) => `bump/${edge}/${alongMm}`),
    ...contacts,
    ...PLACINGS.flatMap((placing) => [
      `rock/${placing}`,
      ...['fence', 'side'].flatMap((face) => [
        `give/${placing}/${face}`,
        `clamp-drag/${placing}/${face}`,
      ]),
      ...AXES.flatMap((axis) => [1, 2].map((touch) => `zero-touch/${placing}/${axis}/${touch}`)),
    ]),
  ];
}

/** Largest sizes: mm, tangents, strains. */
const SIZES = {
  realistic: { mm: 0.1, lean: 1e-3, crook: 5e-4, movement: 2e-3 },
  exaggerated: { mm: 1, lean: 0.02, crook: 2e-3, movement: 0.01 },
} as const;

const LEAN = /^(machine-lean|scale|cutter-lean|square|taper|bevel|fence-angle|stop-square)/;

/** Everything off at once, by a generator of our own; about one thing in eight stays true. */
export function allOff({ job, seed, size }: SetUp): Off {
  const next = randomsOf(seed);
  const sizes = SIZES[size];
  return Object.fromEntries(
    everyKey(job).map((key) => {
      const [chance, value] = [next(), 2 * next() - 1];
      if (chance < 0.125) return [key, 0];
      if (key.startsWith('rock')) return [key, (value + 1) / 2];
      if (key.startsWith('crook')) return [key, value * sizes.crook];
      if (key.startsWith('movement')) return [key, value * sizes.movement];
      if (LEAN.test(key)) return [key, value * sizes.lean];
      if (/^(seat-gap|give|clamp-drag)/.test(key)) return [key, Math.abs(value) * sizes.mm];
      if (/^(width|height)$/.test(key)) return [key, 2 * value * sizes.mm];
      return [key, value * sizes.mm];
    }),
  );
}

/** Numbers in [0, 1) from a seed: a Weyl sequence, scrambled. */
export function randomsOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let word = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return ((word ^ (word >>> 16)) >>> 0) / 2 ** 32;
  };
}
