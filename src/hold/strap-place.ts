import type { Strap } from '../job/holding.ts';
import type { Bounds } from '../plane/measure.ts';
import { moved } from '../plane/move.ts';
import { circleOutline, type Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import type { Body } from '../sweep/body.ts';
import { boltSizes, type BoltPlace } from './bolts.ts';
import { boltForceN, strapForceN } from './clamp-force.ts';
import { holdNumbers } from './numbers.ts';

/** A strap laid over an edge of the blank from one bolt. */
export interface StrapPlace {
  readonly strap: Strap;
  readonly bolt: BoltPlace;
  readonly side: 'near' | 'far' | 'left' | 'right';
  /** Where it presses, and how large that is. */
  readonly pad: Outline<'layout'>;
  readonly padAt: Point<'layout'>;
  readonly padMm2: number;
  readonly boltToWorkMm: number;
  readonly boltToHeelMm: number;
  readonly leastN: number;
  readonly mostN: number;
  /** The bar, the bolt, and the heel block. */
  readonly bodies: readonly Body[];
}

/** What straps are laid over, layout frame. */
export interface Lying {
  readonly box: Bounds;
  readonly thickMm: number;
}

/** A pad bites at least this far; a heel stands on this much of the strap's end. Common practice, mm. */
const LEAST_BITE_MM = 5;
const HEEL_MM = 10;

/** Every way to lay a strap from a bolt: over each side that it can reach squarely. */
export function strapPlaces(lying: Lying, strap: Strap, bolt: BoltPlace): readonly StrapPlace[] {
  const { lowX, lowY, highX, highY } = lying.box;
  const [widthMm, heightMm] = [highX - lowX, highY - lowY];
  const [x, y] = [bolt.at.x - lowX, bolt.at.y - lowY];
  const sides = [
    { side: 'near', gapMm: -y, alongMm: x, lengthMm: widthMm },
    { side: 'far', gapMm: y - heightMm, alongMm: x, lengthMm: widthMm },
    { side: 'left', gapMm: -x, alongMm: y, lengthMm: heightMm },
    { side: 'right', gapMm: x - widthMm, alongMm: y, lengthMm: heightMm },
  ] as const;
  return sides.flatMap(({ side, gapMm, alongMm, lengthMm }) => {
    const half = strap.padMm[0] / 2;
    const head = boltSizes[strap.thread].headMm / 2;
    if (gapMm < head || alongMm < half || alongMm > lengthMm - half) return [];
    const biteMm = biteOf(strap, gapMm);
    return biteMm === null ? [] : [laid(lying.thickMm, strap, bolt, side, gapMm, biteMm)];
  });
}

/** How far the nose reaches over the edge; null when the slot allows none. */
function biteOf({ slotMm, padMm }: Strap, gapMm: number): number | null {
  const wanted = Math.min(Math.max(padMm[1], slotMm[0] - gapMm), slotMm[1] - gapMm);
  return wanted >= LEAST_BITE_MM ? wanted : null;
}

function laid(
  thickMm: number,
  strap: Strap,
  bolt: BoltPlace,
  side: StrapPlace['side'],
  gapMm: number,
  biteMm: number,
): StrapPlace {
  const padLong = Math.min(strap.padMm[1], biteMm);
  const noseMm = gapMm + biteMm;
  const boltToWorkMm = noseMm - padLong / 2;
  const boltToHeelMm = strap.lengthMm - noseMm - HEEL_MM / 2;
  const half = strap.padMm[0] / 2;
  /** Places by how far they are from the bolt towards the work, and across. */
  const at = (ahead: number, across: number): Point<'layout'> => {
    const { x, y } = bolt.at;
    if (side === 'near') return { x: x - across, y: y + ahead };
    if (side === 'far') return { x: x + across, y: y - ahead };
    return side === 'left' ? { x: x + ahead, y: y + across } : { x: x - ahead, y: y - across };
  };
  const box = (from: number, to: number): Outline<'layout'> => [
    at(from, half),
    at(from, -half),
    at(to, -half),
    at(to, half),
  ];
  const { headMm, stackMm, diameterMm } = boltSizes[strap.thread];
  const name = `${strap.name} at ${Math.round(bolt.onBed.x)}, ${Math.round(bolt.onBed.y)}`;
  const topMm = thickMm + strap.heightMm;
  return {
    strap,
    bolt,
    side,
    pad: wound(box(noseMm - padLong, noseMm)),
    padAt: at(boltToWorkMm, 0),
    padMm2: padLong * strap.padMm[0],
    boltToWorkMm,
    boltToHeelMm,
    ...strapForceN({ torqueNm: strap.torqueNm, boltMm: diameterMm, boltToWorkMm, boltToHeelMm }),
    bodies: [
      {
        name,
        outline: wound(box(noseMm - strap.lengthMm, noseMm)),
        lowMm: thickMm,
        highMm: topMm,
      },
      {
        name: `the bolt of ${name}`,
        outline: moved<'layout'>(circleOutline<'layout'>(headMm / 2, 0.05), bolt.at),
        lowMm: 0,
        highMm: topMm + stackMm,
      },
      {
        name: `the heel of ${name}`,
        outline: wound(box(noseMm - strap.lengthMm, noseMm - strap.lengthMm + HEEL_MM)),
        lowMm: 0,
        highMm: thickMm,
      },
    ],
  };
}

/** What a strap's bolt may pull with on what it is screwed into, N. */
export const boltMostN = ({ strap }: StrapPlace): number =>
  boltForceN(strap.torqueNm, boltSizes[strap.thread].diameterMm, holdNumbers.nutFactor.low);

const wound = (box: Outline<'layout'>): Outline<'layout'> => {
  const [a, b, c] = box as readonly [Point<'layout'>, Point<'layout'>, Point<'layout'>];
  const turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
  return turn > 0 ? box : box.toReversed();
};
