import type { Face, Feature, Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Ring } from '../plane/ring.ts';
import type { Landed } from '../plane/support.ts';
import type { TurnColumns } from './batch/turn-columns.ts';
import { affineLanding, type AffineLanding } from './affine-landing.ts';
import type { Columns } from './columns.ts';
import { edgeShapes } from './edges.ts';
import { heightsOf, type Heights } from './heights.ts';
import { featureRounded } from './feature-rounded.ts';
import { landedOutline } from './landed-outline.ts';
import { landedRing } from './landed-ring.ts';
import { featureNamed, placingsOf } from './place.ts';
import { turnOverOf, type Landing } from './turnover.ts';

type Load = (draws: Float64Array, i: number) => void;

/**
 * Whatever of one blank the needs of a job ask for, each worked out once a trial however many ask: ask
 * before the trials, then run `work` in its order in each.
 */
export interface PartsLanded {
  readonly feature: (name: string) => Feature;
  readonly landing: (name: string) => Landing;
  readonly landingAt: (cut: string, face: Face, at: Point<'blank'>) => Landing;
  readonly affine: (name: string) => AffineLanding;
  /** The outline of a feature in the terms of how far it reaches; null when its shape is not told by that. */
  readonly rounded: (name: string) => Landed | null;
  readonly ring: (name: string) => Ring;
  readonly heights: () => Heights;
  /** The blank's own edges, as cut for the first placing, as `EdgeShapes.shape`. */
  readonly edges: () => Float64Array;
  /** As in `TurnOver`. */
  readonly spareMm: () => number;
  /** All trials of a batch at once, as in `TurnOver`; the blank is then taken from there, not laid again. */
  readonly inBatches: TurnColumns | null;
  readonly work: () => readonly Load[];
}

/** `byTrials`: one trial at a time even where a batch can be had at once. */
export function partsLanded(
  job: Job,
  columns: Columns,
  withDial = false,
  byTrials = false,
): PartsLanded {
  const model = turnOverOf(job, columns, withDial);
  const inBatches = byTrials ? null : model.inBatches();
  const work: Load[] = [inBatches === null ? model.lay : inBatches.take];
  const once = <T extends { readonly load: Load }>(make: () => T): (() => T) => {
    let made: T | null = null;
    return () => {
      if (made !== null) return made;
      made = make();
      work.push(made.load);
      return made;
    };
  };
  const onceEach = <T>(
    make: (name: string) => T,
    load: (one: T) => Load,
  ): ((name: string) => T) => {
    const known = new Map<string, T>();
    return (name) => {
      const before = known.get(name);
      if (before !== undefined) return before;
      const made = make(name);
      known.set(name, made);
      work.push(load(made));
      return made;
    };
  };
  const feature = (name: string): Feature => featureNamed(job, name);
  const placings = placingsOf(job);
  const heights = once(() =>
    heightsOf(job, { front: placings.frontUp, back: placings.backUp }, columns),
  );
  const edges = once(() => edgeShapes(job, columns));
  const landingAt = (cut: string, face: Face, at: Point<'blank'>): Landing => {
    const landing = model.landing(cut, face, at);
    work.push(landing.locate);
    return landing;
  };
  const landing = onceEach(
    (name) => model.landing(cutOf(name), feature(name).face, feature(name).at),
    ({ locate }) => locate,
  );
  const affine = onceEach(
    (name) =>
      affineLanding(feature(name).at, (at) => model.landing(cutOf(name), feature(name).face, at)),
    ({ locate }) => locate,
  );
  const outline = onceEach(
    (name) =>
      landedOutline(feature(name), featureRounded(feature(name))!, affine(name), heights, columns),
    ({ load }) => load,
  );
  const rounded = (name: string): Landed | null =>
    featureRounded(feature(name)) === null ? null : outline(name).landed;
  const ring = onceEach(
    (name) => landedRing(feature(name), affine(name), heights, columns),
    ({ load }) => load,
  );
  return {
    feature,
    landing,
    landingAt,
    affine,
    rounded,
    ring: (name) => ring(name).ring,
    heights,
    edges: () => edges().shape,
    spareMm: model.spareMm,
    inBatches,
    work: () => work,
  };
}

const cutOf = (name: string): string => `feature ${name}`;
