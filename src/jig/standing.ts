import type { StopsJob } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Point } from '../plane/point.ts';
import type { Placings } from '../sweep/clearances.ts';
import { cannot, made, mm, type Step } from './answer.ts';
import { outlineInLayout } from './corner-frame.ts';
import { layoutOnBed } from '../setup/place.ts';
import { betterPlace } from './better-place.ts';
import { seatsFor } from './inserts.ts';
import { screwed, type PieceSize, type ScrewedPiece } from './layout-of-screws.ts';
import { leastSizes } from './least-size.ts';
import { roundingMm, stopNumbers } from './numbers.ts';
import { isBar, piecesOf, type Piece } from './pieces.ts';
import type { ScrewFit } from './screw-holes.ts';
import { clearOfPins } from './steel-buttons.ts';
import { supported } from './supports.ts';
import { finalFaces, stopOutline } from './stop-outline.ts';

export interface StandingPiece extends ScrewedPiece {
  readonly piece: Piece;
}

/** The pieces, big enough to find their screws, on the bed; or why not, and another place on the bed. */
export function standing(
  job: StopsJob,
  placings: Placings,
  topMm: number,
  fit: ScrewFit,
): Step<readonly StandingPiece[]> {
  const stand = standOf(job, placings, topMm, fit);
  if (stand.kind === 'cannot') return stand;
  const here = stand.value(job);
  if (here.kind === 'made') return here;
  const better = betterPlace(job, stand.value);
  return better === null
    ? cannot(
        here.because,
        'inserts closer together, or a bed without inserts (screw where it suits)',
      )
    : cannot(here.because, `on-bed: [${better.x}, ${better.y}]`);
}

/** The same without a search for another place: much faster, and says nothing of what would fit. */
export function standingHere(
  job: StopsJob,
  placings: Placings,
  topMm: number,
  fit: ScrewFit,
): Step<readonly StandingPiece[]> {
  const stand = standOf(job, placings, topMm, fit);
  return stand.kind === 'cannot' ? stand : stand.value(job);
}

/** Where the stops can stand, when they cannot here; null when they can, or nowhere can. */
export function placeElsewhere(
  job: StopsJob,
  placings: Placings,
  topMm: number,
  fit: ScrewFit,
): Point<'bed'> | null {
  const stand = standOf(job, placings, topMm, fit);
  if (stand.kind === 'cannot' || stand.value(job).kind === 'made') return null;
  return betterPlace(job, stand.value);
}

type Stand = (there: StopsJob) => Step<readonly StandingPiece[]>;

/** Stands the pieces of a job wherever it lies on the bed. */
function standOf(job: StopsJob, placings: Placings, topMm: number, fit: ScrewFit): Step<Stand> {
  const pieces = piecesOf(job, placings);
  const least = leastSizes(job, pieces, topMm, fit.marginMm);
  if (least.kind === 'cannot') return least;
  return made((there) => standAt(there, pieces, least.value, topMm, fit.marginMm));
}

function standAt(
  job: StopsJob,
  pieces: readonly Piece[],
  least: readonly PieceSize[],
  topMm: number,
  marginMm: number,
): Step<readonly StandingPiece[]> {
  const stood: StandingPiece[] = [];
  for (const [i, piece] of pieces.entries()) {
    const size = least[i]!;
    const longest = {
      fenceArmMm: Math.max(size.fenceArmMm, piece.frame.fenceLengthMm - beside(stood, least, i)),
      sideArmMm: isBar(piece) ? size.sideArmMm : Math.max(size.sideArmMm, piece.frame.sideLengthMm),
    };
    const seats = clearOfPins(piece, seatsFor(job, piece, size, marginMm), marginMm);
    const held = screwed(size, longest, seats, marginMm);
    const one = { piece, ...supported(piece, held, longest, seats, topMm, marginMm) };
    if (held.seats.length === 0)
      return cannot(`no insert of the bed lies where the ${piece.name}, can be screwed down`, '');
    if (one.seats.length < 2)
      return cannot(`the ${piece.name}, finds one screw only; it would turn about it`, '');
    const off = offBedMm(job, one);
    if (off > roundingMm)
      return cannot(`the ${piece.name}, reaches ${mm(off)} beyond the spoilboard`, '');
    stood.push(one);
  }
  return made(stood);
}

/** What the other piece on the fence takes of its length, with the gap; 0 when there is none. */
function beside(
  stood: readonly StandingPiece[],
  least: readonly PieceSize[],
  index: number,
): number {
  const other = 1 - index;
  const size = stood[other]?.size ?? least[other];
  return size === undefined ? 0 : size.fenceArmMm + stopNumbers.betweenPiecesMm;
}

function offBedMm(job: StopsJob, { piece, size }: StandingPiece): number {
  const { xMm, yMm } = job.shop.bed.spoilboard;
  const outline = outlineInLayout(piece.frame, stopOutline(piece, size, finalFaces));
  const b = boundsOf(outline.map((p) => layoutOnBed(job, p)));
  return Math.max(-b.lowX, -b.lowY, b.highX - xMm, b.highY - yMm);
}
