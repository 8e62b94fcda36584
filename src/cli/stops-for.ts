import type { StopPart } from '../jig/stop-part.ts';
import { stopsOf } from '../jig/stops.ts';
import { touchClashText, touchRoom } from '../jig/touch-room.ts';
import type { StopsJob } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { Refusal } from './exit.ts';

/** The placings and their stops. @throws Refusal when no stop can be made, saying what would fit. */
export function stopsFor(job: StopsJob): {
  readonly placings: ReturnType<typeof placingsOf>;
  readonly parts: readonly StopPart[];
} {
  const placings = placingsOf(job);
  const stops = stopsOf(job, placings);
  if (stops.kind === 'cannot') {
    throw new Refusal(
      `${job.name}: no stop can be made: ${stops.because}; what would fit: ${stops.wouldFit}`,
    );
  }
  const clash = touchRoom(job, placings, stops.parts)[0];
  if (clash !== undefined) throw new Refusal(`${job.name}: ${touchClashText(clash)}`);
  return { placings, parts: stops.parts };
}
