import type { Holding } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import { pieceOf } from '../sweep/piece.ts';
import { locatorsOf, supportOf } from './locators.ts';
import { holdNumbers } from './numbers.ts';
import { screwTie } from './piece-hold.ts';
import type { PlacedScrew } from './screws.ts';
import type { StrapPlace } from './strap-place.ts';
import { frictionOf, type Held } from './verdict.ts';

/** Everything that holds the blank, or the part that lies there, in a placing. */
export function heldBy(
  job: Job,
  holding: Holding,
  placing: Placing,
  straps: readonly StrapPlace[],
  screws: readonly PlacedScrew[],
): Held {
  const { thickMm } = job.blank;
  const { vacuum, tape } = holding;
  const { box, outline } = pieceOf(job, placing);
  const [widthMm, heightMm] = [box.highX - box.lowX, box.highY - box.lowY];
  const locators = locatorsOf(job, placing);
  const quarter = (areaShare: number): readonly (readonly [number, number])[] =>
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([x, y]) => [
      box.lowX + widthMm * (0.5 + 0.25 * Math.sqrt(areaShare) * x!),
      box.lowY + heightMm * (0.5 + 0.25 * Math.sqrt(areaShare) * y!),
    ]);
  const share = (areaMm2: number): number => Math.min(1, areaMm2 / (widthMm * heightMm));
  const sucked =
    vacuum === null ? 0 : (vacuum.gaugeKPa / 1000) * vacuum.areaMm2 * holdNumbers.vacuumShare;
  return {
    presses: [
      ...straps.map(({ padAt, leastN }) => ({
        at: [padAt.x, padAt.y, thickMm] as const,
        newtons: leastN,
      })),
      ...(vacuum === null
        ? []
        : quarter(share(vacuum.areaMm2)).map(([x, y]) => ({
            at: [x, y, 0] as const,
            newtons: sucked / 4,
          }))),
    ],
    ties: [
      ...screws.map((screw) => screwTie(screw, holdNumbers.safety.byFriction)),
      ...locators.dowels,
      ...(tape === null
        ? []
        : quarter(share(tape.areaMm2)).map(([x, y]) => ({
            at: [x, y, 0] as const,
            sidewaysN: ((tape.shearKPa / 1000) * tape.areaMm2) / 4,
            downN: 0,
          }))),
    ],
    stops: locators.stops,
    support: supportOf(outline),
    friction: frictionOf(holding),
  };
}
