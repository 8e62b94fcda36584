import type { StopsJob } from '../job/job.ts';
import { cannot, figure, made, mm, type Cannot, type Step } from './answer.ts';
import { roundingMm, stopNumbers } from './numbers.ts';
import { isBar, type Piece, type Reach } from './pieces.ts';
import { pinsDeepMm } from './steel-buttons.ts';
import type { PieceSize } from './layout-of-screws.ts';

const n = stopNumbers;

/** The plan sizes that lands, height and stiffness ask for, before any screw. */
export function leastSizes(
  job: StopsJob,
  pieces: readonly Piece[],
  topMm: number,
  marginMm: number,
): Step<readonly PieceSize[]> {
  const notchRadiusMm = notchRadius(job);
  const sizes: PieceSize[] = [];
  for (const [i, piece] of pieces.entries()) {
    const depthMm = depth(job, piece, topMm, marginMm);
    const bad = badLands(piece, notchRadiusMm, i === 0 ? 'front-up corner' : 'other end');
    if (bad !== null) return bad;
    const shareMm =
      pieces.length === 1
        ? piece.frame.fenceLengthMm
        : (piece.frame.fenceLengthMm - n.betweenPiecesMm) / 2;
    sizes.push({
      fenceDepthMm: depthMm,
      sideDepthMm: isBar(piece) ? n.betweenBackMm : depthMm,
      fenceArmMm: armMm(piece.fenceLands, piece.frame.fenceLengthMm, shareMm),
      sideArmMm: isBar(piece)
        ? -n.betweenBackMm
        : armMm(piece.sideLands, piece.frame.sideLengthMm, piece.frame.sideLengthMm),
      notchRadiusMm: isBar(piece) ? 0 : notchRadiusMm,
    });
  }
  const [first, second] = sizes;
  const fenceMm = pieces[0]?.frame.fenceLengthMm ?? 0;
  if (first !== undefined && second !== undefined) {
    const overMm = first.fenceArmMm + second.fenceArmMm + n.betweenPiecesMm - fenceMm;
    if (overMm > roundingMm)
      return cannot(
        `two stops on a fence ${mm(fenceMm)} long are ${mm(overMm)} too long together`,
        'places of fence-touch nearer to the ends of the edge, or the same corner for both placings',
      );
  }
  return made(sizes);
}

function notchRadius(job: StopsJob): number {
  const made = job.stops.made;
  const cutterMm = made.kind === 'milled-in-place' ? made.cutter.diameterMm : 0;
  return Math.max(n.notchDiameterMm, cutterMm + n.notchOverCutterMm) / 2;
}

/** Behind the contact line: thick enough, and a base in proportion to the height. */
function depth(job: StopsJob, piece: Piece, topMm: number, marginMm: number): number {
  const pinsMm = pinsDeepMm(piece);
  const ownPlacesMm =
    job.shop.bed.inserts === null ? Math.max(0, pinsMm - n.betweenBackMm) + 2 * marginMm : 0;
  const grooveMm = pinsMm === 0 ? 0 : pinsMm + n.holeWallMm - n.betweenBackMm;
  return n.betweenBackMm + Math.max(n.bodyThickMm, n.basePerHeight * topMm, ownPlacesMm, grooveMm);
}

function armMm(lands: readonly Reach[], edgeMm: number, mostMm: number): number {
  const wishMm = Math.min(
    Math.max(n.armShortestMm, n.armShareOfEdge * edgeMm),
    n.armLongestMm,
    mostMm,
  );
  const needsMm = lands.map((land) => land.toMm + n.betweenBackMm + n.pastLandMm);
  return Math.max(wishMm, ...needsMm);
}

/** `from`: the end of the fence at which the piece stands; places are written from the front-up corner. */
function badLands(
  piece: Piece,
  notchRadiusMm: number,
  from: 'front-up corner' | 'other end',
): Cannot | null {
  // The notch, about the inside corner of the body, reaches its radius along the face; that corner
  // lies as far behind the blank's as the flank of a land is long: the two cancel.
  const nearestMm = notchRadiusMm + leastFlatMm;
  for (const [key, lands] of [
    ['fence-touch', piece.fenceLands],
    ['side-touch', piece.sideLands],
  ] as const) {
    const limit = (offCornerMm: number): string =>
      key === 'fence-touch' && from === 'other end'
        ? `${figure(piece.frame.fenceLengthMm - offCornerMm)} or less`
        : `${figure(offCornerMm)} or more`;
    for (const [i, land] of lands.entries()) {
      if (land.fromMm < nearestMm - roundingMm)
        return cannot(
          `the ${piece.name}, would touch from ${mm(land.fromMm)} off its corner (${key}), inside the corner's relief`,
          `${key}: a button at ${limit(nearestMm + n.landMm / 2)}, or the end of an arm at ${limit(nearestMm)}`,
        );
      if (land.toMm - land.fromMm < n.landMm - roundingMm)
        return cannot(
          `the ${piece.name}, has a face only ${mm(land.toMm - land.fromMm)} long (${key})`,
          `${key}: an arm at least ${mm(n.landMm)} long, clear of the middle of the fence`,
        );
      const next = lands[i + 1];
      const apartMm = 2 * n.betweenBackMm + leastFlatMm;
      if (next !== undefined && next.fromMm - land.toMm < apartMm - roundingMm)
        return cannot(
          `the ${piece.name}, has buttons only ${mm(next.fromMm - land.fromMm)} apart (${key})`,
          `${key}: buttons at least ${mm(apartMm + n.landMm)} apart, or an arm`,
        );
    }
  }
  return null;
}

/** A straight between two flanks, or a flank and the notch: a line that a printer can draw. */
const leastFlatMm = 0.5;
