import type { Corner, StopsJob } from '../../src/job/job.ts';
import type { Point } from '../../src/plane/point.ts';
import { cornerAt, placingsOf, sidesOf } from '../../src/setup/place.ts';
import type { SheetStop, StopsInput } from '../../src/sheet/sheet-input.ts';
import { clearancesOf } from '../../src/sweep/clearances.ts';
import { predictionFor } from './a-prediction.ts';

/** A whole sheet's input for a job, with plain L-shaped stops of our own drawing. */
export function inputFor(job: StopsJob, chances: readonly number[] = [0.9964, 0.9931]): StopsInput {
  const placings = placingsOf(job);
  const corners = [...new Set([job.stops.corner.frontUp, job.stops.corner.backUp])];
  const stops = corners.map((corner) => stopAt(job, corner, corners.length));
  return {
    made: 'stops',
    job,
    placings,
    prediction: predictionFor(job, chances),
    clearances: clearancesOf(
      job,
      placings,
      stops.map((stop) => stop.body),
    ),
    stops,
    stopPictures: [],
    fileNames: corners.map((corner) => `corner-stop-${corner}.stl`),
    hold: { plan: null, notes: [] },
    version: '0.1.0',
  };
}

function stopAt(job: StopsJob, corner: Corner, of: number): SheetStop {
  const { x, y } = cornerAt(job, corner);
  const [inX, inY] = [x > 0 ? -1 : 1, y > 0 ? -1 : 1] as const;
  const armX = Math.min(110, job.blank.widthMm / of - 3);
  const armY = Math.min(95, job.blank.heightMm - 2);
  const place = (u: number, v: number): Point<'layout'> => ({ x: x + inX * u, y: y + inY * v });
  const shape = [
    place(-24, -24),
    place(armX, -24),
    place(armX, 0),
    place(0, 0),
    place(0, armY),
    place(-24, armY),
  ];
  const placings = placingsOf(job);
  const contacts = [placings.frontUp, placings.backUp]
    .filter((p) => sidesOf(corner).includes(p.end.side) && sidesOf(corner).includes(p.base.side))
    .flatMap((p) => p.contacts.map((contact) => contact.id));
  return {
    body: {
      name: `corner stop, ${corner.replace('-', ' ')}`,
      outline: inX * inY > 0 ? shape : shape.toReversed(),
      lowMm: 0,
      highMm: job.stops.band.kind === 'plain' ? job.stops.band.heightMm : 16,
    },
    screws: [place(armX - 12, -12), place(-12, armY - 12)].map((at) => ({
      at,
      onBed: { x: at.x + 40, y: at.y + 40 },
      insert: null,
      thread: 'M6' as const,
      hole: { kind: 'round' } as const,
      counterboreMm: 6.5,
    })),
    lands: [{ face: 'fence', ends: [place(0, 0), place(armX, 0)], contacts }],
    allowanceMm: job.stops.made.kind === 'milled-in-place' ? 1.5 : 0,
    pins: [],
    heads: [],
    towardsBlank: { x: inX, y: inY },
    band: { lowMm: 10, highMm: 14 },
  };
}
