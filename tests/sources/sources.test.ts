import { describe, expect, it } from 'vitest';
import { BATCH } from '../../src/num/batch.ts';
import { sdOf } from '../../src/num/spread-of.ts';
import type { Job, Locating, Spread, Zero, ZeroXy } from '../../src/job/job.ts';
import { deviationKey, type Deviation } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import type { Source } from '../../src/sources/source.ts';
import { predictedModel } from '../../src/sources/predicted.ts';
import { sourcesOf } from '../../src/sources/sources-of.ts';
import { modelOf } from '../../src/stackup/model-of.ts';
import { runTrials } from '../../src/stackup/trials.ts';
import { holes, nest } from '../setup/loose-job.ts';
import { NONE, spread } from '../setup/plain-job.ts';
import { wholeShopJob } from '../setup/whole-shop.ts';

const play = (): Spread => spread({ kind: 'rectangular', low: 0, high: 0.08 });
const some = (): Spread => spread({ kind: 'rectangular', low: -0.05, high: 0.05 });

/** Benches that between them ask for every deviation there is. */
const BENCHES: Readonly<Record<string, Job>> = {
  'set by hand, opposite corner, homed again': wholeShopJob(({ stops, zero }) => ({
    stops: { ...stops, corner: { frontUp: 'near-left', backUp: 'near-right' } },
    zero: {
      ...zero,
      backUp: { ...zero.backUp, xy: { kind: 'kept', how: 're-homed', extra: some() } },
    },
  })),
  'arms, zero at the middle both times': wholeShopJob(({ stops, zero }) => {
    const middle = (one: Zero): Zero => ({
      ...one,
      xy: { kind: 'middle', at: null, tool: { name: 'pin', spread: some() } },
    });
    return {
      stops: {
        ...stops,
        fenceTouch: { kind: 'arm', fromMm: 20, toMm: 260 },
        sideTouch: { kind: 'arm', fromMm: 20, toMm: 160 },
      },
      zero: { frontUp: middle(zero.frontUp), backUp: middle(zero.backUp) },
    };
  }),
  'milled in place, one moisture, axes off along their travel': wholeShopJob(
    ({ blank, stops, shop }) => ({
      blank: { ...blank, movesTogether: true, movementX: blank.movementY },
      shop: { ...shop, machine: { ...shop.machine, local: { spread: some(), overMm: 100 } } },
      stops: { ...stops, made: { kind: 'milled-in-place', cutter: shop.cutters[0]! } },
    }),
  ),
  'on dowels drilled with the blank': located(
    {
      locating: 'dowels',
      dowels: holes({ clearance: { kind: 'stated', spread: play() }, laid: some() }),
    },
    { kind: 'edges', at: null, tool: { name: 'pin', spread: some() } },
  ),
  'on dowels drilled separately, both measured': located(
    {
      locating: 'dowels',
      dowels: holes({
        drilled: 'separately',
        drillError: some(),
        clearance: { kind: 'sizes', pin: play(), hole: play() },
      }),
    },
    { kind: 'edges', at: null, tool: { name: 'pin', spread: some() } },
  ),
  'in a nest': located(
    {
      locating: 'nest',
      nest: nest({
        clearance: play(),
        seatGap: play(),
        cutter: wholeShopJob().shop.cutters[0]!,
      }),
    },
    { kind: 'nest' },
  ),
};

/** The same shop, the blank located otherwise. */
function located(locating: Exclude<Locating, { locating: 'stops' }>, first: ZeroXy): Job {
  const { zero, ...base } = wholeShopJob();
  return { ...base, ...locating, zero: { ...zero, frontUp: { ...zero.frontUp, xy: first } } };
}

/** Every kind of deviation: a new one does not compile until it is listed, and fails until a bench asks for it. */
const KINDS: Readonly<Record<Deviation['kind'], true>> = {
  'machine-lean': true,
  scale: true,
  'cutter-lean': true,
  repeatability: true,
  'lost-motion': true,
  'local-error': true,
  'milled-face': true,
  'cutter-radius': true,
  'push-off': true,
  'tip-flat': true,
  width: true,
  height: true,
  thickness: true,
  'thickness-taper': true,
  cup: true,
  'cup-side': true,
  swarf: true,
  'bed-lean': true,
  'bed-height': true,
  'z-touch': true,
  square: true,
  taper: true,
  bevel: true,
  crook: true,
  bump: true,
  movement: true,
  'fence-angle': true,
  'stop-square': true,
  spacing: true,
  'seat-gap': true,
  give: true,
  'clamp-drag': true,
  rock: true,
  'zero-touch': true,
  'zero-return': true,
  laid: true,
  clearance: true,
  'pin-size': true,
  'hole-size': true,
  'hole-place': true,
  'nest-clearance': true,
  'take-up': true,
  dialled: true,
  calipered: true,
  'of-test-piece': true,
};

const found = (job: Job): readonly Source[] => sourcesOf(job, misfitModel(job).deviations);
const idsOf = (job: Job): readonly string[] => found(job).map(({ id }) => id);

it('the benches ask for every kind of deviation', () => {
  const axis = { offsetMm: 0.1, half95Mm: 0.04, readingMm: 0.02, calipered: 0.02 };
  const told = { at: { x: 100, y: 60 }, x: axis, y: axis, turns: 3, measured: '', file: '' };
  const asked = [
    ...Object.values(BENCHES).flatMap((job) => misfitModel(job).deviations),
    ...predictedModel({ ...wholeShopJob(), dialled: told }).misfit.deviations,
  ].map(({ kind }) => kind);
  expect(new Set(asked)).toEqual(new Set(Object.keys(KINDS)));
});

describe.each(Object.entries(BENCHES))('the sources of a bench: %s', (_name, job) => {
  const { deviations } = misfitModel(job);
  const sources = found(job);

  it('stand behind every deviation, each behind its own', () => {
    const drawn = sources.flatMap((source) => source.deviations).toSorted((a, b) => a - b);
    expect(drawn.map((k) => deviationKey(deviations[k]!))).toEqual(deviations.map(deviationKey));
  });

  it('have a name, words and a spread', () => {
    expect(sources.length).toBeGreaterThan(30);
    expect(new Set(sources.map(({ id }) => id)).size).toBe(sources.length);
    expect(new Set(sources.map(({ words }) => words)).size).toBe(sources.length);
    for (const { id, words, text, distribution, origin } of sources) {
      // For the middle of a sentence: no capital that is no axis, no full stop.
      expect([id, words.replace(/\b[XY]\b/g, '')]).toEqual([
        id,
        expect.stringMatching(/^[a-z][^A-Z]*[a-z\d]\s*$/),
      ]);
      expect(text).not.toBe('');
      if (distribution.kind === 'exactly') expect(distribution.value).not.toBe(0);
      else expect(sdOf(distribution)).toBeGreaterThan(0);
      if (origin.kind === 'assumed') expect(origin.because).not.toBe('');
    }
  });

  it('vanish one by one when their spreads are switched off, and take no other with them', () => {
    // Play goes with the last of the clearances that leave it.
    const all = new Set(idsOf(job));
    const before = [...all].filter((id) => !id.startsWith('play '));
    const vanished = spreadsIn(job).map((one) => {
      const after = sourcesOf(switchedOff(job, one), deviations).map(({ id }) => id);
      expect(after.filter((id) => !all.has(id))).toEqual([]);
      return before.filter((id) => !after.includes(id));
    });
    expect(new Set(vanished.flat())).toEqual(new Set(before));
    // What a blank does that only a bulging or cupped one can do goes with the bulge and the cup.
    const pairs = vanished.filter((ids) => ids.length > 1).map((ids) => ids.toSorted().join(' + '));
    for (const pair of pairs) expect(TOGETHER).toContain(pair);
  });

  it('all vanish from a shop where nothing is off, and nothing is left but the nominal', () => {
    const off = switchedOff(job, ...spreadsIn(job));
    // In a nest the blank has play however little the clearance varies.
    const left = job.locating === 'nest' ? ['play front-up', 'play back-up'] : [];
    expect(idsOf(off)).toEqual(left);
    const misfit = misfitModel(off);
    const results = runTrials(modelOf(misfit, []), 1, 2);
    for (const [one, other] of results.map((values) => [values[0], values[1]]))
      expect(one).toBe(other);
  });

  it('leave the luck of the others alone when one is switched off', () => {
    const off = switchedOff(job, job.blank.thickSpread);
    const [whole, less] = [job, off].map((one) => {
      const misfit = misfitModel(one);
      return { misfit, model: modelOf(misfit, sourcesOf(one, misfit.deviations)) };
    });
    expect(less!.model.inputs.length).toBe(whole!.model.inputs.length - 1);
    const thick = whole!.misfit.deviations.findIndex(({ kind }) => kind === 'thickness');
    const without = runTrials(less!.model, 3, 10);
    // The same trials of the whole bench with the thickness put to nominal by hand.
    const misfit = {
      ...whole!.misfit,
      evaluate: (draws: Float64Array, count: number, out: Float64Array) => {
        draws.fill(0, thick * BATCH, (thick + 1) * BATCH);
        whole!.misfit.evaluate(draws, count, out);
      },
    };
    expect(runTrials(modelOf(misfit, sourcesOf(job, misfit.deviations)), 3, 10)).toEqual(without);
    expect(runTrials(whole!.model, 3, 10)).not.toEqual(without);
  });
});

const TOGETHER = [
  'crook + rocking',
  'cup + side of the cup',
  // One figure of the machine, drawn anew for the stops that it milled.
  'milled faces + repeatability',
  // One figure of the tool, drawn anew for each cutter.
  'z touch front-up flat 6 + z touch front-up vee 90',
];

/** Every spread that a job holds, each once: a cutter has one wherever it is named. */
function spreadsIn(value: unknown): readonly Spread[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('distribution' in value) return [value as Spread];
  return [...new Set(Object.values(value).flatMap((inner) => [...spreadsIn(inner)]))];
}

/** The same job with nothing in place of some of its spreads. */
const switchedOff = (job: Job, ...some: readonly Spread[]): Job => without(job, some) as Job;

function without(value: unknown, some: readonly unknown[]): unknown {
  if (some.includes(value)) return { ...(value as Spread), ...NONE };
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((inner) => without(inner, some));
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, without(inner, some)]),
  );
}
