import { cosineOf, sineOf } from '../num/elementary.ts';
import { BATCH } from '../num/batch.ts';
import { unreachable } from '../num/invariant.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Job, Need } from '../job/job.ts';
import { greatestGap } from '../plane/greatest-gap.ts';
import { leastGap } from '../plane/least-gap.ts';
import { pathAreaMm2 } from '../plane/path-measure.ts';
import { ringGaps, ringStep, type RingGaps } from '../plane/ring-gap.ts';
import { reachOfRing } from '../plane/ring.ts';
import { reach } from '../plane/support.ts';
import { wallFinder } from './edge-line.ts';
import type { PartsLanded } from './parts-landed.ts';
import type { Landing } from './turnover.ts';
import { webFinder } from './web.ts';

/** Writes what a need comes to in a trial whose parts are landed: at `at`, and a second figure a column on. */
export type NeedReading = (draws: Float64Array, i: number, out: Float64Array, at: number) => void;

/** Source: registration.md rules 6, 10 and 18. */
export function needReading(job: Job, need: Need, parts: PartsLanded): NeedReading {
  switch (need.kind) {
    case 'concentric':
      return apart(parts.landing(need.features[0]), parts.landing(need.features[1]));
    // Misalignment is back minus front, its point one feature on each face.
    case 'misalignment':
      return apart(
        parts.landingAt(`front of ${need.name}`, 'front', need.at),
        parts.landingAt(`back of ${need.name}`, 'back', need.at),
      );
    case 'depth':
      return depthReading(need.feature, parts);
    case 'web': {
      const [one, other] = need.features;
      const web = webFinder(job, [parts.feature(one), parts.feature(other)], parts.heights());
      return (draws, i, out, at) => {
        out[at] = web(draws, i);
      };
    }
    case 'wall': {
      const wall = wallFinder(job, need.to, parts.edges(), reachOf(need.feature, parts));
      return (_draws, _i, out, at) => {
        out[at] = wall();
      };
    }
    case 'size': {
      const reaches = reachOf(need.feature, parts);
      const [ux, uy] = need.along === 'x' ? [1, 0] : [0, 1];
      return (_draws, _i, out, at) => {
        out[at] = reaches(ux, uy) + reaches(-ux, -uy);
      };
    }
    case 'lip':
      return lipReading(need, parts);
    case 'meets': {
      const step = stepBetween(need.features, parts);
      return (_draws, _i, out, at) => {
        out[at] = step();
      };
    }
    case 'parallel':
      return turnBetween(need.features, parts);
    case 'goes-on':
      return (_draws, _i, out, at) => {
        out[at] = parts.spareMm();
      };
    default:
      return unreachable(need);
  }
}

const apart =
  (from: Landing, to: Landing): NeedReading =>
  (_draws, _i, out, at) => {
    out[at] = to.x() - from.x();
    out[at + BATCH] = to.y() - from.y();
  };

function depthReading(name: string, parts: PartsLanded): NeedReading {
  const feature = parts.feature(name);
  const depth = parts.heights().depthOf(feature);
  return (draws, i, out, at) => {
    depth.load(draws, i);
    out[at] = feature.depthMm + depth.deeper(feature.at);
  };
}

/** The smaller outline is the inner one. */
function lipReading(need: Extract<Need, { kind: 'lip' }>, parts: PartsLanded): NeedReading {
  const [one, other] = need.features;
  const { lowMm, highMm } = need.limits;
  const areaOf = (name: string): number => pathAreaMm2(featurePath(parts.feature(name)));
  const gaps = areaOf(one) < areaOf(other) ? gapsOf(other, one, parts) : gapsOf(one, other, parts);
  return (_draws, _i, out, at) => {
    if (lowMm !== null) out[at] = gaps.least();
    if (highMm !== null) out[lowMm === null ? at : at + BATCH] = gaps.most();
  };
}

function gapsOf(outerName: string, innerName: string, parts: PartsLanded): RingGaps {
  const [outer, inner] = [parts.rounded(outerName), parts.rounded(innerName)];
  if (outer === null || inner === null)
    return ringGaps(parts.ring(outerName), parts.ring(innerName));
  return { least: () => leastGap(outer, inner), most: () => greatestGap(outer, inner) };
}

function stepBetween([a, b]: readonly [string, string], parts: PartsLanded): () => number {
  const [one, other] = [parts.rounded(a), parts.rounded(b)];
  if (one === null || other === null) return ringStep(parts.ring(a), parts.ring(b));
  return () => Math.max(-leastGap(one, other), -leastGap(other, one));
}

/** How far a feature's outline reaches in a direction of length 1. */
function reachOf(name: string, parts: PartsLanded): (ux: number, uy: number) => number {
  const landed = parts.rounded(name);
  if (landed !== null) return (ux, uy) => reach(landed, ux, uy);
  const ring = parts.ring(name);
  return (ux, uy) => reachOfRing(ring, ux, uy);
}

/** How much further the second feature turned than the first, counter-clockwise, mm per 100. */
function turnBetween(names: readonly [string, string], parts: PartsLanded): NeedReading {
  const turns = names.map((name) => {
    const { off } = parts.affine(name);
    const { turnedRad } = parts.feature(name);
    const [c, s] = [cosineOf(turnedRad), sineOf(turnedRad)];
    return (): number => {
      const offX = off[2]! * c + off[3]! * s;
      const offY = off[4]! * c + off[5]! * s;
      return (c * offY - s * offX) / (1 + c * offX + s * offY);
    };
  });
  return (_draws, _i, out, at) => {
    const [one, other] = [turns[0]!(), turns[1]!()];
    out[at] = (100 * (other - one)) / (1 + one * other);
  };
}
