import { intersectionOf } from '../plane/clip.ts';
import { regionsOf } from '../plane/regions.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { partOf } from '../sweep/piece.ts';
import { fitTogether } from './candidates.ts';
import { freedPieces, type FreedPiece } from './freed.ts';
import { kerfChordMm } from './kerf.ts';
import { isInStock } from './layout.ts';
import { cutsAt, isOn, pieceHold, type PieceHold, type PieceSetting } from './piece-hold.ts';
import type { StrapPlace } from './strap-place.ts';

export interface PiecesHeld {
  readonly pieces: readonly PieceHold[];
  /** Straps that were put on pieces besides those that hold the blank. */
  readonly added: readonly StrapPlace[];
}

/**
 * How every piece is held that comes free in a placing, or came free before and is cut at again. A piece
 * that nothing holds gets straps of its own, one or two, where any can lie on it.
 */
export function piecesHeld(
  setting: PieceSetting,
  straps: readonly StrapPlace[],
  free: readonly StrapPlace[],
): PiecesHeld {
  const pieces = piecesIn(setting);
  let all = straps;
  for (const piece of pieces) {
    if (pieceHold(setting, piece, all).isHeld) continue;
    all = [...all, ...strapsFor(setting, piece, all, free)];
  }
  return {
    pieces: pieces.map((piece) => pieceHold(setting, piece, all)),
    added: all.slice(straps.length),
  };
}

function piecesIn({ job, holding, placing }: PieceSetting): readonly FreedPiece[] {
  const part = placing.order === 'second' ? partOf(job) : null;
  return freedPieces(job, holding.tabs).filter((piece) => {
    if (cutsAt(piece, placing).length === 0) return false;
    if (piece.by.face === placing.faceUp) return true;
    // The rest is what the blank's own clamps hold.
    if (piece.isRest) return false;
    if (part === null) return true;
    // The waste is not there any more, and the part is what the whole placing holds.
    return piece.by !== part && mostlyIn(piece, [outlineOf(part, kerfChordMm)]);
  });
}

const mostlyIn = (
  { region }: FreedPiece,
  outlines: Parameters<typeof intersectionOf<'blank'>>[1],
): boolean =>
  regionsOf(intersectionOf<'blank'>(region.outlines, outlines)).reduce(
    (sum, { areaMm2 }) => sum + areaMm2,
    0,
  ) >
  region.areaMm2 / 2;

/** The best one or two straps on a piece that hold it, beside those that lie already; none when none do. */
function strapsFor(
  setting: PieceSetting,
  piece: FreedPiece,
  lying: readonly StrapPlace[],
  free: readonly StrapPlace[],
): readonly StrapPlace[] {
  const own = free.filter(
    (one) => isOn(setting, piece, one.padAt) && lying.every((other) => fitTogether(one, other)),
  );
  const sets = [
    ...own.map((one) => [one]),
    ...own.flatMap((one, k) =>
      own
        .slice(k + 1)
        .filter((other) => fitTogether(one, other))
        .map((other) => [one, other]),
    ),
  ].filter((set) => isInStock([...lying, ...set]));
  let best: { readonly set: readonly StrapPlace[]; readonly factor: number } | null = null;
  for (const set of sets.slice(0, MOST_SETS)) {
    if (best !== null && set.length > best.set.length) break;
    const { verdict, isHeld } = pieceHold(setting, piece, [...lying, ...set]);
    if (isHeld && (best === null || verdict!.factor > best.factor))
      best = { set, factor: verdict!.factor };
  }
  return best?.set ?? [];
}

/** So many sets are tried for one piece. */
const MOST_SETS = 40;
