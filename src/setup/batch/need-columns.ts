import { BATCH } from '../../num/batch.ts';
import type { Job, Need } from '../../job/job.ts';
import { featureNamed } from '../place.ts';
import type { LandingColumns } from './landing-columns.ts';
import type { TurnColumns } from './turn-columns.ts';

/** Writes what a need comes to in the first `count` trials of a batch that is laid: its columns start at `at`. */
export type FillNeed = (draws: Float64Array, count: number, out: Float64Array, at: number) => void;

/** As `needReading`; null for needs that are read trial by trial. */
export function needColumns(job: Job, need: Need, turn: TurnColumns): FillNeed | null {
  if (need.kind === 'concentric') {
    const [from, to] = need.features.map((name) => {
      const { face, at } = featureNamed(job, name);
      return turn.landing(`feature ${name}`, face, at);
    });
    return apart(from!, to!);
  }
  if (need.kind === 'misalignment')
    return apart(
      turn.landing(`front of ${need.name}`, 'front', need.at),
      turn.landing(`back of ${need.name}`, 'back', need.at),
    );
  return null;
}

const apart =
  (from: LandingColumns, to: LandingColumns): FillNeed =>
  (draws, count, out, at) => {
    from.load(draws, count);
    to.load(draws, count);
    for (let i = 0; i < count; i++) {
      out[at + i] = to.x[i]! - from.x[i]!;
      out[at + BATCH + i] = to.y[i]! - from.y[i]!;
    }
  };
