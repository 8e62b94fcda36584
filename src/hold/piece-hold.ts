import type { Holding } from '../job/holding.ts';
import type { Feature, Job } from '../job/job.ts';
import { grown, intersectionOf } from '../plane/clip.ts';
import { toEdgeMm } from '../plane/distance.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import type { Program } from '../sweep/program/program.ts';
import type { Change } from './change.ts';
import { forceOf } from './force.ts';
import type { FreedPiece } from './freed.ts';
import { kerfChordMm, kerfOf } from './kerf.ts';
import { locatorsOf, supportOf } from './locators.ts';
import { holdNumbers } from './numbers.ts';
import type { PlacedScrew } from './screws.ts';
import type { StrapPlace } from './strap-place.ts';
import { tabN } from './tabs.ts';
import { frictionOf, verdictOf, type Held, type Verdict } from './verdict.ts';
import { strengthsOf } from './wood.ts';

/** How a piece is held when it is freed. */
export interface PieceHold {
  readonly piece: FreedPiece;
  /** `now`: a cut of this placing frees it; `before`: it came free in the first placing and is cut at again. */
  readonly freed: 'now' | 'before';
  readonly by: readonly string[];
  /** Null when nothing at all holds it. */
  readonly verdict: Verdict | null;
  readonly isHeld: boolean;
  /** What would hold it, each planned anew and found good; empty until they are looked for. */
  readonly remedies: readonly Change[];
}

/** What a piece is held with, in a placing. */
export interface PieceSetting {
  readonly job: Job;
  readonly holding: Holding;
  readonly placing: Placing;
  readonly screws: readonly PlacedScrew[];
  readonly program: Program | null;
}

/** The cuts of a placing that a piece has to bear once it is free; empty when none comes by it. */
export function cutsAt(piece: FreedPiece, placing: Placing): readonly Feature[] {
  const later = piece.later.filter(
    (cut) => cut.face === placing.faceUp && passesBy(kerfOf(cut), piece.region.outlines),
  );
  return piece.by.face === placing.faceUp ? [piece.by, ...later] : later;
}

/** Whether a place of the layout is on a piece. */
export const isOn = (
  { job, placing }: PieceSetting,
  { region }: FreedPiece,
  at: { readonly x: number; readonly y: number },
): boolean => isWithin(blankInLayout(job, placing.mirror, at), region.outlines);

/** Whether a piece's own clamps, screws, tabs or skin hold it against the cutter that frees it and passes it later. */
export function pieceHold(
  setting: PieceSetting,
  piece: FreedPiece,
  straps: readonly StrapPlace[],
): PieceHold {
  const { job, holding, placing, screws } = setting;
  const { outlines } = piece.region;
  const own = straps.filter(({ padAt }) => isOn(setting, piece, padAt));
  const ownScrews = screws.filter(({ inBlank }) => isWithin(inBlank, outlines));
  const wood = strengthsOf(job.blank.material);
  const cuts = cutsAt(piece, placing);
  const force = forceOf(job, holding, cuts, setting.program);
  const line = outlines[0]!.map((p) => blankInLayout(job, placing.mirror, p));
  const cutAt = cuts
    .flatMap((cut) => kerfOf(cut))
    .flat()
    .map((p) => blankInLayout(job, placing.mirror, p));
  const locators = locatorsOf(job, placing);
  const links = linkTies(piece, line, wood);
  const taped = holding.tape !== null;
  const by = [
    ...own.map(({ bodies }) => bodies[0]!.name),
    ...ownScrews.map(({ name }) => name),
    ...(piece.link.kind === 'none' ? [] : [linkName(piece)]),
    ...(taped ? ['tape'] : []),
    ...(holding.vacuum !== null ? ['vacuum'] : []),
  ];
  const topMm = job.blank.thickMm;
  const neededFactor = piece.isRest ? holdNumbers.safety.byFriction : holdNumbers.safety.freed;
  const held: Held = {
    presses: [
      ...own.map(({ padAt, leastN }) => ({
        at: [padAt.x, padAt.y, topMm] as const,
        newtons: leastN,
      })),
      ...spread(job, piece, line, holding),
    ],
    ties: [
      ...ownScrews.map((screw) => screwTie(screw, neededFactor)),
      ...links,
      ...locators.dowels.filter(({ at }) => isOn(setting, piece, { x: at[0], y: at[1] })),
      ...(holding.tape === null ? [] : tapeTies(line, piece, holding.tape.shearKPa)),
    ],
    // A stop bears on the piece that touches it.
    stops: locators.stops.filter(({ at }) =>
      outlines.some(
        (outline) =>
          toEdgeMm(blankInLayout(job, placing.mirror, { x: at[0], y: at[1] }), outline) <
          TOUCHES_MM,
      ),
    ),
    support: supportOf(line),
    friction: frictionOf(holding),
  };
  const verdict =
    by.length === 0
      ? null
      : verdictOf(held, { ...force, box: boundsOf(cutAt), topMm }, neededFactor);
  return {
    piece,
    freed: piece.by.face === placing.faceUp ? 'now' : 'before',
    by,
    verdict,
    isHeld: verdict?.isHeld === true,
    remedies: [],
  };
}

/** Whether a cut touches a piece, or goes along its edge. */
const passesBy = (
  kerf: readonly Outline<'blank'>[],
  outlines: readonly Outline<'blank'>[],
): boolean => intersectionOf(grown(kerf, TOUCHES_MM, kerfChordMm), outlines).length > 0;

/** Nearer than this a piece touches a stop, mm. */
const TOUCHES_MM = 1;

/**
 * A screw's figures have their own factors: withdrawal is an average ultimate, the sideways load an allowed one. The factor
 * that is asked for is taken out of them again.
 */
export const screwTie = (
  { at, downN, sidewaysN }: PlacedScrew,
  neededFactor: number,
): Held['ties'][number] => ({
  at: [at.x, at.y, 0],
  sidewaysN: sidewaysN * neededFactor,
  downN: (downN * neededFactor) / holdNumbers.screwSafety,
});

const linkName = ({ link, by }: FreedPiece): string =>
  link.kind === 'tabs'
    ? `${link.tabs.count} tabs at ${by.name}`
    : link.kind === 'skin'
      ? `a skin of ${link.thickMm.toFixed(1)} mm`
      : '';

/** Places where a skin is taken to bear. */
const SKIN_PLACES = 8;

function linkTies(
  { link }: FreedPiece,
  line: readonly Point<'layout'>[],
  wood: ReturnType<typeof strengthsOf>,
): Held['ties'] {
  if (link.kind === 'none') return [];
  const tabs = link.kind === 'tabs';
  const count = tabs ? link.tabs.count : SKIN_PLACES;
  // Ultimate: the piece's factor is the tabs' own.
  const each = tabs
    ? tabN(link.tabs, wood) * holdNumbers.tabSafety
    : tabN({ widthMm: link.lengthMm / SKIN_PLACES, thickMm: link.thickMm }, wood) *
      holdNumbers.tabSafety;
  return evenly(line, count).map(({ x, y }) => ({
    at: [x, y, 0],
    // Bears in one direction at a time: shared between sideways and down.
    sidewaysN: each * Math.SQRT1_2,
    downN: each * Math.SQRT1_2,
  }));
}

/** Places spaced evenly along a closed line. */
function evenly(line: readonly Point<'layout'>[], count: number): readonly Point<'layout'>[] {
  const lengths = line.map((p, k) => {
    const q = line[(k + 1) % line.length]!;
    return Math.hypot(q.x - p.x, q.y - p.y);
  });
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return Array.from({ length: count }, (_, k) => {
    let way = (total * (k + 0.5)) / count;
    for (let i = 0; i < line.length; i++) {
      if (way <= lengths[i]!) {
        const [p, q] = [line[i]!, line[(i + 1) % line.length]!];
        const share = lengths[i] === 0 ? 0 : way / lengths[i]!;
        return { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
      }
      way -= lengths[i]!;
    }
    return line[0]!;
  });
}

/** A piece has its share, by area, of a vacuum; a through cut lets air in, so only the sure half counts. */
function spread(
  job: Job,
  { region }: FreedPiece,
  line: readonly Point<'layout'>[],
  { vacuum }: Holding,
): Held['presses'] {
  if (vacuum === null) return [];
  const share = region.areaMm2 / (job.blank.widthMm * job.blank.heightMm);
  const newtons = (vacuum.gaugeKPa / 1000) * vacuum.areaMm2 * holdNumbers.vacuumShare * share;
  return evenly(line, 4).map(({ x, y }) => ({ at: [x, y, 0] as const, newtons: newtons / 4 }));
}

function tapeTies(
  line: readonly Point<'layout'>[],
  { region }: FreedPiece,
  shearKPa: number,
): Held['ties'] {
  const newtons = ((shearKPa / 1000) * region.areaMm2) / 4;
  return evenly(line, 4).map(({ x, y }) => ({
    at: [x, y, 0] as const,
    sidewaysN: newtons,
    downN: 0,
  }));
}
