import { restingMoisture } from './emc.ts';
import { reachedShare } from './rest.ts';
import type { Material, Species } from './species.ts';

/** What happens to a blank between its placings. */
export interface Wait {
  readonly hours: number;
  /** The driest and the dampest air it may lie in, 0..1. */
  readonly humidityShare: readonly [number, number];
  readonly celsius: number;
}

export type Grain = 'along-x' | 'along-y' | 'sheet' | null;
export type Board = 'flat-sawn' | 'quarter-sawn';

/**
 * Strain along the grain for each % of moisture: a shrinkage of 0.1 to 0.2 % from green to oven-dry, over
 * 30 %. Source: Wood Handbook (FPL-GTR-282), chapter 4.
 */
const ALONG_GRAIN_PER_PERCENT = 5e-5;
/**
 * Strain of fibre and particle board in its plane for each % of relative humidity, on the safe side of the
 * limit of ANSI A208.2 (0.33 % from 50 to 90 %). Plywood moves less.
 */
const SHEET_PER_PERCENT_HUMIDITY = 1e-4;

/** How far a blank can move along X and Y, as a strain, and in words how that comes about. */
export interface Movement {
  readonly largestX: number;
  readonly largestY: number;
  readonly because: string;
}

/**
 * The largest movement between the placings: from rest in the driest air to what it reaches in the dampest,
 * or back. A blank may have come from either, so a spread goes both ways.
 */
export function movementIn(
  material: Material,
  grain: Grain,
  board: Board,
  thickMm: number,
  wait: Wait,
): Movement {
  const [dry, damp] = wait.humidityShare;
  const share = reachedShare(wait.hours, thickMm);
  if (material.kind === 'dry')
    return { largestX: 0, largestY: 0, because: `${material.name} takes up no moisture` };
  if (material.kind === 'sheet' || grain === 'sheet') {
    const strain = SHEET_PER_PERCENT_HUMIDITY * 100 * (damp - dry) * share;
    const name = material.kind === 'sheet' ? material.name : 'sheet goods';
    return { largestX: strain, largestY: strain, because: `${name} in its plane` };
  }
  const moisture = restingMoisture(damp, wait.celsius) - restingMoisture(dry, wait.celsius);
  const across = acrossPerPercent(material.species, board) * moisture * share;
  const along = ALONG_GRAIN_PER_PERCENT * moisture * share;
  const name = `${material.species.name}${material.isKnown ? '' : ' (which moves most)'}, ${board}`;
  if (grain === null)
    return {
      largestX: across,
      largestY: across,
      because: `${name}, no grain is given, so across it both ways`,
    };
  return {
    largestX: grain === 'along-x' ? along : across,
    largestY: grain === 'along-x' ? across : along,
    because: `${name}, grain ${grain}`,
  };
}

/** The width of a flat-sawn board runs along the rings, that of a quarter-sawn one across them. */
export const acrossPerPercent = (species: Species, board: Board): number =>
  board === 'quarter-sawn' ? species.radialPerPercent : species.tangentialPerPercent;
