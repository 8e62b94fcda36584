import type { Made } from '../job/job.ts';
import { screwNumbers, stopNumbers, type Thread } from './numbers.ts';

/** How a stop of some height is bored for its screws, mm. */
export interface ScrewFit {
  readonly thread: Thread;
  readonly holeRadiusMm: number;
  readonly seatRadiusMm: number;
  readonly counterboreMm: number;
  /** How far the heads stand above the stop's top. */
  readonly headProudMm: number;
  readonly headRadiusMm: number;
  /** How far a screw may stand to either side in its slot; 0 for round holes. */
  readonly travelMm: number;
  /** From a hole's middle to the nearest outside of the stop, at least. */
  readonly marginMm: number;
}

/** Slots (with washers) where a stop is squared by hand, round holes where nothing is to be moved. */
export function screwFit(thread: Thread, made: Made['kind'], topMm: number): ScrewFit {
  const screw = screwNumbers[thread];
  const byHand = made === 'set-by-hand';
  const overMm = byHand ? screw.washerMm : screw.headMm;
  const stackMm = screw.headHighMm + (byHand ? screw.washerThickMm : 0);
  const seatRadiusMm = (overMm + stopNumbers.counterboreOverHeadMm) / 2;
  const roomMm = Math.min(
    stackMm + stopNumbers.counterboreBelowTopMm,
    topMm - stopNumbers.headFloorMm,
  );
  const counterboreMm = roomMm >= stopNumbers.counterboreLeastMm ? roomMm : 0;
  const travelMm = byHand ? stopNumbers.slotTravelMm : 0;
  const wallMm = Math.max(
    screw.holeMm / 2 + stopNumbers.holeWallMm,
    seatRadiusMm + stopNumbers.counterboreWallMm,
  );
  return {
    thread,
    holeRadiusMm: screw.holeMm / 2,
    seatRadiusMm,
    counterboreMm,
    headProudMm: Math.max(0, stackMm - counterboreMm),
    headRadiusMm: overMm / 2,
    travelMm,
    marginMm: wallMm + travelMm,
  };
}
