import type { Holding, ScrewKind } from '../job/holding.ts';
import type { Job } from '../job/job.ts';
import { toEdgeMm } from '../plane/distance.ts';
import { moved } from '../plane/move.ts';
import { circleOutline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import { blankInLayout, layoutOnBed } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from '../sweep/body.ts';
import { kerfOf } from './kerf.ts';
import { holdNumbers } from './numbers.ts';
import { edgeDistancesMm, sidewaysN, withdrawalFromBoardN, withdrawalN } from './screw.ts';
import { strengthsOf } from './wood.ts';

/** A screw through the waste into the spoilboard, in one placing. */
export interface PlacedScrew {
  readonly name: string;
  readonly inBlank: Point<'blank'>;
  readonly at: Point<'layout'>;
  readonly body: Body;
  /** Ultimate withdrawal out of the spoilboard, and allowed sideways load, N. */
  readonly downN: number;
  readonly sidewaysN: number;
  /** What is wrong with it where it is. */
  readonly faults: readonly string[];
}

/** The job's screws as they stand in a placing: the same holes of the blank, mirrored with it. */
export function placedScrews(job: Job, holding: Holding, placing: Placing): readonly PlacedScrew[] {
  const { screw } = holding;
  if (screw === null) return [];
  return holding.screws.map((inBlank, k) => {
    const at = blankInLayout(job, placing.mirror, inBlank);
    const threadMm = Math.max(0, screw.lengthMm - job.blank.thickMm);
    const { gravity } = strengthsOf(job.blank.material);
    const board = boardOf(holding);
    const name = `screw ${k + 1}`;
    return {
      name,
      inBlank,
      at,
      body: {
        name,
        outline: moved<'layout'>(circleOutline<'layout'>(screw.headMm / 2, 0.05), at),
        lowMm: 0,
        highMm: job.blank.thickMm + screw.headHighMm,
      },
      downN: board.withdrawalN(screw.shankMm, threadMm),
      sidewaysN: sidewaysN(Math.min(gravity, board.gravity), screw.shankMm),
      faults: [
        ...screwFaults(job, holding.screws, k, screw),
        ...nearOldHoles(job, at, holding.board.oldHoles),
      ],
    };
  });
}

/** MDF of 650 kg/m3, when nobody said what the spoilboard is. An estimate. */
const SPOILBOARD_GRAVITY = 0.6;

/** How a spoilboard holds screws: solid wood by the Wood Handbook's formula, boards by Eckelman's, plywood as solid wood of its density. */
function boardOf({ board }: Holding): {
  readonly gravity: number;
  readonly withdrawalN: (shankMm: number, threadMm: number) => number;
} {
  const { kind, gravity } =
    board.material === null
      ? { kind: 'mdf' as const, gravity: SPOILBOARD_GRAVITY }
      : strengthsOf(board.material);
  const isBoard = kind === 'mdf' || kind === 'plastic';
  return {
    gravity: isBoard ? Math.min(gravity, SPOILBOARD_GRAVITY) : gravity,
    withdrawalN: (shankMm, threadMm) =>
      isBoard
        ? withdrawalFromBoardN(SPOILBOARD_GRAVITY, shankMm, threadMm, 'face')
        : withdrawalN(gravity, shankMm, threadMm),
  };
}

/** A new hole beside an old one breaks into it: on the very same place, or well away. */
function nearOldHoles(
  job: Job,
  at: Point<'layout'>,
  oldHoles: readonly Point<'bed'>[],
): readonly string[] {
  const onBed = layoutOnBed(job, at);
  return oldHoles.flatMap((hole) => {
    const apart = Math.hypot(hole.x - onBed.x, hole.y - onBed.y);
    if (apart < SAME_HOLE_MM || apart >= holdNumbers.holesApartMm) return [];
    return [
      `comes ${apart.toFixed(1)} mm beside the old hole at ${hole.x}, ${hole.y} on the bed: put it into that hole, or ${holdNumbers.holesApartMm} mm away`,
    ];
  });
}

function screwFaults(
  job: Job,
  screws: readonly Point<'blank'>[],
  index: number,
  screw: ScrewKind,
): readonly string[] {
  const at = screws[index]!;
  const { widthMm, heightMm, thickMm } = job.blank;
  const { thickMm: boardMm } = job.shop.bed.spoilboard;
  const faults: string[] = [];
  const intoBoardMm = screw.lengthMm - thickMm;
  if (intoBoardMm > boardMm - holdNumbers.aboveBedMm)
    faults.push(
      `is ${screw.lengthMm} long: it would end ${(intoBoardMm - boardMm + holdNumbers.aboveBedMm).toFixed(1)} mm too low in a spoilboard of ${boardMm}`,
    );
  if (intoBoardMm < 2 * screw.shankMm)
    faults.push(
      `reaches ${Math.max(0, intoBoardMm).toFixed(1)} mm into the spoilboard, too little to hold`,
    );
  const { edgeMm } = edgeDistancesMm(screw.shankMm, 'bored');
  const toEdge = Math.min(at.x, at.y, widthMm - at.x, heightMm - at.y);
  if (toEdge < edgeMm)
    faults.push(
      `stands ${toEdge.toFixed(1)} mm from an edge, and ${edgeMm.toFixed(1)} mm keep the wood from splitting (bored)`,
    );
  for (const feature of job.features) {
    const kerf = kerfOf(feature);
    const apart = isWithin(at, kerf)
      ? 0
      : Math.min(...kerf.map((outline) => toEdgeMm(at, outline)));
    const needed = screw.headMm / 2 + holdNumbers.besideMm;
    if (apart < needed)
      faults.push(
        `stands ${apart.toFixed(1)} mm from the cut of ${feature.name}, and its head needs ${needed.toFixed(1)} mm`,
      );
  }
  screws.forEach((other, k) => {
    const apart = Math.hypot(other.x - at.x, other.y - at.y);
    if (k < index && apart < holdNumbers.holesApartMm)
      faults.push(
        `stands ${apart.toFixed(1)} mm from screw ${k + 1}, less than ${holdNumbers.holesApartMm}`,
      );
  });
  return [...faults, ...nearItsMirror(job, screws, index)];
}

/** Turned over, every screw wants a hole again: where an old one is, or well away from all. */
function nearItsMirror(
  job: Job,
  screws: readonly Point<'blank'>[],
  index: number,
): readonly string[] {
  const at = screws[index]!;
  const mirrored = blankInLayout(job, job.turn === 'about-y' ? 'x' : 'y', at);
  return screws.flatMap((other, k) => {
    const apart = Math.hypot(other.x - mirrored.x, other.y - mirrored.y);
    if (apart < SAME_HOLE_MM || apart >= holdNumbers.holesApartMm) return [];
    return [
      `comes ${apart.toFixed(1)} mm beside the hole of screw ${k + 1} when the blank is turned over: put it on its very mirror, or ${holdNumbers.holesApartMm} mm away`,
    ];
  });
}

/** A hole is the same within this, mm. */
const SAME_HOLE_MM = 0.3;
