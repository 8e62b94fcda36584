import { cutterAtFaceMm } from '../job/cutting.ts';
import type { Feature, Job } from '../job/job.ts';
import { grown } from '../plane/clip.ts';
import { boundsOf, type Bounds } from '../plane/measure.ts';
import type { Outline } from '../plane/outline.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import { surfaceMm } from './axis.ts';
import { outlineOf } from './feature-outline.ts';
import { sweepChordMm } from './numbers.ts';
import { pieceOf } from './piece.ts';
import type { PlacedMove } from './placed-moves.ts';

/** How a program lies against the features that the job cuts from that face. */
export type Against =
  | { readonly kind: 'agrees' }
  /** It fits mirrored too, so nobody can tell from it whether it was mirrored. */
  | { readonly kind: 'agrees-either-way' }
  | { readonly kind: 'not-mirrored' }
  | { readonly kind: 'mirrored' }
  | { readonly kind: 'mirrored-other-way' }
  | { readonly kind: 'turned-half' }
  /** It fits when moved by this much, mm on the bed: its zero is not the placing's. */
  | { readonly kind: 'wrong-zero'; readonly byMm: { readonly x: number; readonly y: number } }
  /** `line` is the first that cuts outside of all features. */
  | { readonly kind: 'differs'; readonly line: number; readonly outsideShare: number }
  | { readonly kind: 'cuts-nothing' };

export interface ProgramFit {
  readonly against: Against;
  /** Features of this face that the program never enters, when it agrees otherwise. */
  readonly missed: readonly string[];
  /** Deepest cut of the program and of the job, mm below the surface. */
  readonly deepestMm: number;
  readonly deepestWantedMm: number;
  /** Lines that go sideways at rapid below the top of the blank, within it. */
  readonly lowRapids: readonly number[];
}

/** Cuts may stray from the features by this: roundings of programs and finishing allowances, mm. An estimate. */
const SLACK_MM = 0.6;
/** A zero within this of the placing's is the same, mm: programs are set by hand. */
const SAME_ZERO_MM = 0.2;
/** So many of a thousand places may lie outside: a lead-in or a touch of the border. */
const STRAY_SHARE = 0.01;
const MOST_PLACES = 4000;

/** Whether a placing's program is the one for this face, the right way round, from the right zero. */
export function programAgainstJob(
  job: Job,
  placing: Placing,
  moves: readonly PlacedMove[],
): ProgramFit {
  const topMm = surfaceMm(job, placing);
  const cuts = cutPlaces(moves, topMm);
  const features = job.features.filter(({ face }) => face === placing.faceUp);
  const deepestMm = cuts.reduce((most, { z }) => Math.max(most, topMm - z), 0);
  const deepestWantedMm = features.reduce((most, { depthMm }) => Math.max(most, depthMm), 0);
  const allowed = features.map((feature) => reachOf(feature));
  const fit = (against: Against, missed: readonly string[] = []): ProgramFit => ({
    against,
    missed,
    deepestMm,
    deepestWantedMm,
    lowRapids: lowRapidsOf(pieceOf(job, placing).box, moves, topMm),
  });
  if (cuts.length === 0) return fit({ kind: 'cuts-nothing' });
  const views = viewsOf(job, placing);
  const fits = views.filter(({ inBlank }) => outside(cuts, inBlank, allowed).share <= STRAY_SHARE);
  const [expected] = views;
  if (fits.includes(expected!)) {
    const missed = features.filter(
      (_, k) => !cuts.some((cut) => isWithin(expected!.inBlank(cut), allowed[k]!)),
    );
    // Turned half round it may fit as well; that is for a part that is the same both ways.
    const mirrorsToo = fits.some((view) => view !== expected && view.otherwise !== 'turned-half');
    const kind = mirrorsToo ? 'agrees-either-way' : 'agrees';
    return fit(
      { kind },
      missed.map(({ name }) => name),
    );
  }
  const other = fits[0];
  if (other !== undefined) return fit({ kind: other.otherwise });
  const byMm = shiftOf(cuts, expected!.inBlank, placing, allowed);
  if (byMm !== null) return fit({ kind: 'wrong-zero', byMm });
  const stray = outside(cuts, expected!.inBlank, allowed);
  return fit({ kind: 'differs', line: stray.line, outsideShare: stray.share });
}

function lowRapidsOf(
  { lowX, lowY, highX, highY }: Bounds,
  moves: readonly PlacedMove[],
  topMm: number,
): readonly number[] {
  const isIn = ({ x, y }: { readonly x: number; readonly y: number }): boolean =>
    x > lowX && y > lowY && x < highX && y < highY;
  return moves.flatMap(({ kind, line, places }) => {
    const [from, to] = [places[0]!, places.at(-1)!];
    const goesAside = Math.hypot(to.x - from.x, to.y - from.y) > SAME_ZERO_MM;
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const isLow = Math.max(from.z, to.z) < topMm && [from, middle, to].some(isIn);
    return kind === 'rapid' && goesAside && isLow ? [line] : [];
  });
}

interface CutPlace {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly line: number;
}

/** Places at which the program cuts below the surface, thinned evenly. */
function cutPlaces(moves: readonly PlacedMove[], topMm: number): readonly CutPlace[] {
  const all = moves.flatMap(({ kind, places, line }) =>
    kind === 'rapid'
      ? []
      : places.filter(({ z }) => z < topMm).map(({ x, y, z }) => ({ x, y, z, line })),
  );
  const every = Math.max(1, Math.ceil(all.length / MOST_PLACES));
  return every === 1 ? all : all.filter((_, k) => k % every === 0);
}

type InBlank = (p: { readonly x: number; readonly y: number }) => { x: number; y: number };

interface View {
  readonly inBlank: InBlank;
  readonly otherwise: 'not-mirrored' | 'mirrored' | 'mirrored-other-way' | 'turned-half';
}

/** The ways in which a program may have been turned; the first is the right one for this placing. */
function viewsOf(job: Job, { mirror, zero, lies }: Placing): readonly View[] {
  const { widthMm, heightMm } = job.blank;
  // Turning over twice brings a place back: the same map serves both ways.
  const inBlank: InBlank = (p) => blankInLayout(job, mirror, { x: p.x, y: p.y });
  // A program is turned about its zero, about the middle of what is drawn, or about the line of the dowels.
  const centres = [
    { x: (lies.x + widthMm) / 2, y: (lies.y + heightMm) / 2 },
    { x: lies.x + widthMm / 2, y: lies.y + heightMm / 2 },
    { x: zero.x, y: zero.y },
  ];
  const flips = [
    { x: false, y: false },
    { x: true, y: false },
    { x: false, y: true },
    { x: true, y: true },
  ];
  return flips.flatMap((flip) =>
    (flip.x || flip.y ? centres : [zero]).map((centre) => ({
      inBlank: (p: { readonly x: number; readonly y: number }) =>
        inBlank({
          x: flip.x ? 2 * centre.x - p.x : p.x,
          y: flip.y ? 2 * centre.y - p.y : p.y,
        }),
      otherwise: nameOf(flip, mirror),
    })),
  );
}

/** What a program was done that fits when it is flipped like this. */
function nameOf(
  flip: { readonly x: boolean; readonly y: boolean },
  mirror: Placing['mirror'],
): View['otherwise'] {
  if (mirror === 'none') return flip.x && flip.y ? 'turned-half' : 'mirrored';
  if (flip.x && flip.y) return 'mirrored-other-way';
  return flip[mirror] ? 'not-mirrored' : 'turned-half';
}

/** Where the axis may be while it cuts a feature, blank frame, with the slack. */
function reachOf(feature: Feature): readonly Outline<'blank'>[] {
  const radius = feature.cutter.diameterMm / 2;
  const outline = outlineOf(feature, sweepChordMm);
  const beyond =
    feature.cut === 'profile-outside'
      ? radius
      : feature.cut === 'chamfer-outside'
        ? cutterAtFaceMm(feature)
        : 0;
  const by = beyond + SLACK_MM;
  const inward = feature.cut === 'pocket' || feature.cut === 'profile-inside' ? -radius + by : by;
  const reach = grown([outline], inward, sweepChordMm);
  return reach.length > 0 ? reach : grown([outline], SLACK_MM, sweepChordMm);
}

function outside(
  cuts: readonly CutPlace[],
  inBlank: InBlank,
  allowed: readonly (readonly Outline<'blank'>[])[],
): { readonly share: number; readonly line: number } {
  const boxes = allowed.map((outlines) => boundsOf(outlines.flat()));
  const stray = cuts.filter((cut) => {
    const p = inBlank(cut);
    return !allowed.some((outlines, k) => isInBox(p, boxes[k]!) && isWithin(p, outlines));
  });
  return { share: stray.length / cuts.length, line: stray[0]?.line ?? 0 };
}

const isInBox = (p: { readonly x: number; readonly y: number }, box: Bounds): boolean =>
  p.x >= box.lowX && p.x <= box.highX && p.y >= box.lowY && p.y <= box.highY;

/** How far the program lies from where it fits, mm on the bed; null when it fits nowhere. */
function shiftOf(
  cuts: readonly CutPlace[],
  inBlank: InBlank,
  { mirror }: Placing,
  allowed: readonly (readonly Outline<'blank'>[])[],
): { readonly x: number; readonly y: number } | null {
  if (allowed.length === 0) return null;
  const have = boundsOf(cuts.map(inBlank));
  const want = boundsOf(allowed.flat(2));
  const by = {
    x: (want.lowX + want.highX - have.lowX - have.highX) / 2,
    y: (want.lowY + want.highY - have.lowY - have.highY) / 2,
  };
  if (Math.hypot(by.x, by.y) < SAME_ZERO_MM) return null;
  const moved: InBlank = (p) => {
    const q = inBlank(p);
    return { x: q.x + by.x, y: q.y + by.y };
  };
  if (outside(cuts, moved, allowed).share > STRAY_SHARE) return null;
  return { x: mirror === 'x' ? by.x : -by.x, y: mirror === 'y' ? by.y : -by.y };
}
