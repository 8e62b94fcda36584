import { BATCH } from '../../src/num/batch.ts';
import { hashOf } from './key-luck.ts';
import type { Cutter, Feature, Job, Need, Shape } from '../../src/job/job.ts';
import { deviationKey, type Deviation } from '../../src/setup/deviation.ts';
import { misfitModel } from '../../src/setup/misfit.ts';
import { randoms, scaledPath, starPath } from '../plane/some-paths.ts';
import { FLAT6, NONE, plainJob } from './plain-job.ts';

const VEE90: Cutter = {
  ...FLAT6,
  name: 'vee 90',
  kind: 'vee',
  diameterMm: 20,
  vee: { includedRad: Math.PI / 2, tipFlatMm: NONE },
};
const AT = { x: 140, y: 90 };
const any = { lowMm: 0, highMm: 500 };

/** A set-up with a hollow recess, something within it from the back, two profiles that meet, and a V cut. */
export function wholeJob(seed: number): Job {
  const next = randoms(seed);
  const path = starPath(next, 50);
  const corners: Shape = { kind: 'polygon', vertices: path.map(({ at }) => at) };
  const inners: readonly Shape[] = [
    { kind: 'outline', path: scaledPath(path, 0.5) },
    { kind: 'circle', diameterMm: 30 },
    { kind: 'rectangle', widthMm: 30, heightMm: 20, cornerRadiusMm: 4 },
    { kind: 'slot', lengthMm: 34, widthMm: 12 },
  ];
  const pick = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)]!;
  const feature = (name: string, changes: Partial<Feature>): Feature => ({
    name,
    face: 'front',
    shape: corners,
    at: AT,
    turnedRad: 0,
    cut: 'pocket',
    depthMm: 5,
    through: false,
    cutter: { ...FLAT6, name: pick(['flat 6', 'other 6']) },
    ...changes,
  });
  const base = plainJob({ turn: pick(['about-y', 'about-x']), first: pick(['front', 'back']) });
  const isAboutY = base.turn === 'about-y';
  return {
    ...base,
    blank: {
      ...base.blank,
      cup: { ...base.blank.cup, along: pick(['x', 'y']), pressedFlat: false },
    },
    stops: {
      ...base.stops,
      corner: {
        frontUp: 'near-left',
        backUp: pick(['near-left', isAboutY ? 'near-right' : 'near-left']),
      },
      made: { kind: 'set-by-hand', angle: NONE, square: NONE, spacing: NONE },
    },
    zero: {
      frontUp: {
        ...base.zero.frontUp,
        xy: { kind: 'stops', at: null, tool: base.zero.frontUp.z.tool },
      },
      backUp: {
        ...base.zero.backUp,
        xy: { kind: 'stops', at: null, tool: base.zero.frontUp.z.tool },
      },
    },
    features: [
      feature('outer', { shape: pick([corners, { kind: 'outline', path }]), turnedRad: next() }),
      feature('inner', {
        face: 'back',
        shape: pick(inners),
        cut: pick(['pocket', 'profile-outside']),
        turnedRad: next(),
      }),
      feature('upper', { cut: 'profile-outside', depthMm: 12 }),
      feature('lower', { face: 'back', cut: 'profile-outside', depthMm: 12 }),
      feature('vee', {
        face: pick(['front', 'back']),
        shape: { kind: 'circle', diameterMm: 60 },
        cutter: VEE90,
        depthMm: 3,
        cut: pick(['chamfer', 'chamfer-outside']),
      }),
    ],
  };
}

export const NEEDS: readonly Need[] = [
  { kind: 'lip', name: 'lip', features: ['outer', 'inner'], limits: any },
  { kind: 'meets', name: 'meets', features: ['lower', 'upper'], withinMm: 1 },
  { kind: 'wall', name: 'wall', feature: 'outer', to: null, limits: any },
  { kind: 'wall', name: 'wall of V', feature: 'vee', to: 'right', limits: any },
  { kind: 'size', name: 'size', feature: 'inner', along: 'x', limits: any },
  { kind: 'size', name: 'size of V', feature: 'vee', along: 'y', limits: any },
  { kind: 'web', name: 'web', features: ['outer', 'inner'], limits: any },
  { kind: 'parallel', name: 'parallel', features: ['outer', 'inner'], withinTangent: 1 },
];

const LEAN =
  /^(machine-lean|scale|cutter-lean|square|taper|bevel|fence-angle|stop-square|bed-lean)/;
const NEVER_NEGATIVE = /^(seat-gap|give|clamp-drag|cup\b|swarf|tip-flat|rock)/;

/** How far one thing is off in a set-up: the same whoever asks. */
export function offBy(seed: number, deviation: Deviation): number {
  const key = deviationKey(deviation);
  const luck = hashOf(`${seed} ${key}`);
  if (deviation.kind === 'cup-side') return luck < 0.5 ? -1 : 1;
  const size = LEAN.test(key)
    ? 1e-3
    : /^(crook|movement|thickness-taper)/.test(key)
      ? 5e-4
      : /^(cutter-radius|push-off)/.test(key)
        ? 0.04
        : 0.1;
  return NEVER_NEGATIVE.test(key) ? luck * size : (2 * luck - 1) * size;
}

/** Fills the first trial of the columns that a model asks for. */
export function drawsOf(seed: number, asked: readonly Deviation[]): Float64Array {
  const draws = new Float64Array(asked.length * BATCH);
  asked.forEach((deviation, k) => {
    draws[k * BATCH] = offBy(seed, deviation);
  });
  return draws;
}

/** What the needs come to by the production model: a name for each figure. */
export function produced(job: Job, seed: number): ReadonlyMap<string, number> {
  const model = misfitModel({ ...job, needs: NEEDS });
  const out = new Float64Array(model.outputCount * BATCH);
  model.evaluate(drawsOf(seed, model.deviations), 1, out);
  return new Map(
    model.judged.flatMap((one): [string, number][] => {
      if (one.shape === 'radial') return [];
      const figure = (column: number): number => out[(one.at + column) * BATCH]!;
      return one.columnCount === 1
        ? [[one.need.name, figure(0)]]
        : [
            [`least ${one.need.name}`, figure(0)],
            [`largest ${one.need.name}`, figure(1)],
          ];
    }),
  );
}
