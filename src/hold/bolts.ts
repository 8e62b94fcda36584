import type { Holding, Thread } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import { bedInLayout } from '../setup/place.ts';

/** A place where a bolt can stand. */
export interface BoltPlace {
  readonly onBed: Point<'bed'>;
  readonly at: Point<'layout'>;
}

/** Bolts along a track are tried this far apart, mm: near-exact, not exact, and told so. */
const ALONG_TRACK_MM = 10;

/** Every place for a bolt: the inserts of the bed, or steps along its tracks. */
export function boltPlaces(job: Job, { tracks }: Holding): readonly BoltPlace[] {
  const { inserts } = job.shop.bed;
  const inInserts = range(inserts?.count.x ?? 0).flatMap((column) =>
    range(inserts?.count.y ?? 0).map((row) => ({
      x: inserts!.first.x + column * inserts!.pitchMm.x,
      y: inserts!.first.y + row * inserts!.pitchMm.y,
    })),
  );
  const inTracks = tracks.flatMap(({ along, atMm, fromMm, toMm }) =>
    range(Math.floor((toMm - fromMm) / ALONG_TRACK_MM) + 1).map((k) => {
      const way = fromMm + k * ALONG_TRACK_MM;
      return along === 'x' ? { x: way, y: atMm } : { x: atMm, y: way };
    }),
  );
  return [...inInserts, ...inTracks].map((onBed) => ({ onBed, at: bedInLayout(job, onBed) }));
}

/** Bolt, head and washer, mm. Source: ISO 4762 (head diameter and height), ISO 7089 (washer). */
export const boltSizes: Readonly<
  Record<Thread, { readonly diameterMm: number; readonly headMm: number; readonly stackMm: number }>
> = {
  M4: { diameterMm: 4, headMm: 9, stackMm: 4.8 },
  M5: { diameterMm: 5, headMm: 10, stackMm: 6 },
  M6: { diameterMm: 6, headMm: 12, stackMm: 7.6 },
  M8: { diameterMm: 8, headMm: 16, stackMm: 9.6 },
};

const range = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k);
