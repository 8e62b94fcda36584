import type { Feature, Job } from '../job/job.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { badge } from '../sheet/badges.ts';
import type { Html } from '../sheet/html.ts';
import { joined, markup } from '../sheet/html.ts';
import { boxAround, roomFor, type Box } from '../sheet/label-room.ts';
import { scaleBar } from '../sheet/scale-bar.ts';
import { ACCENT, FAINT, INK, dot, drawing, pointsText, textAt } from '../sheet/svg.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { displaced, type LandedCut } from './landed.ts';
import { magnification, type Spot } from './landing-spots.ts';

/** A drawing, and how many times as large as the part its misses are. */
export interface LandingMap {
  readonly picture: Html;
  readonly times: number;
  readonly ghostCount: number;
}

const PAPER_MM = 180;
const EDGE_MM = 9;
const MOST_HIGH_MM = 118;
const FOOT_MM = 16;
const BADGE_MM = 5.4;
/** Misses are drawn no further than this from their place. */
const MOST_MISS_MM = 15;
/** Parts whose whole outlines are drawn. */
const GHOSTS = 20;

/** The part to scale, seen from the front, with where the back lands on it: misses magnified, limits with them. */
export function landingMap(
  job: Job,
  backs: readonly LandedCut[],
  spots: readonly Spot[],
): LandingMap {
  const { widthMm, heightMm } = job.blank;
  const reduction = Math.max(
    widthMm / (PAPER_MM - 2 * EDGE_MM),
    heightMm / (MOST_HIGH_MM - 2 * EDGE_MM),
  );
  const left = (PAPER_MM - widthMm / reduction) / 2;
  const bottom = EDGE_MM + heightMm / reduction;
  const onPaper = (p: Point<'blank'>) => ({
    x: left + p.x / reduction,
    y: bottom - p.y / reduction,
  });
  const polygon = (outline: Outline<'blank'>, look: Html): Html =>
    markup`<polygon points="${pointsText(outline.map(onPaper))}" ${look}/>`;
  const times = magnification(spots, reduction, MOST_MISS_MM);
  const chordMm = 0.06 * reduction;
  const corner = onPaper({ x: 0, y: heightMm });
  const height = bottom + EDGE_MM + FOOT_MM;
  const field = { x: 0, y: 0, width: PAPER_MM, height: bottom + EDGE_MM };
  const ghosts = backs.flatMap((back) => {
    const outline = outlineOf(back.feature, chordMm * 2);
    const lines = back.misses.slice(0, GHOSTS).map((miss) => displaced(outline, back, miss, times));
    return lines.map((line) => `M${pointsText(line.map(onPaper)).replaceAll(' ', 'L')}Z`);
  });
  const perMm = times / reduction;
  const picture = drawing(
    'the part seen from the front, to scale, and where the cuts of the back land on it',
    PAPER_MM,
    height,
    joined([
      markup`<rect x="${dot(corner.x)}" y="${dot(corner.y)}" width="${dot(widthMm / reduction)}" height="${dot(heightMm / reduction)}" fill="#ffffff" stroke="${INK}" stroke-width="0.5"/>`,
      ...job.features
        .filter(({ face }) => face === 'front')
        .map((feature) =>
          polygon(
            outlineOf(feature, chordMm),
            markup`fill="#000000" fill-opacity="0.05" stroke="${INK}" stroke-width="0.5" stroke-linejoin="round"`,
          ),
        ),
      markup`<path d="${ghosts.join('')}" fill="none" stroke="${ACCENT}" stroke-width="0.16" stroke-opacity="0.5" stroke-linejoin="round"/>`,
      ...job.features
        .filter(({ face }) => face === 'back')
        .map((feature) =>
          polygon(
            outlineOf(feature, chordMm),
            markup`fill="none" stroke="${INK}" stroke-width="0.4" stroke-dasharray="2 1.3" stroke-linejoin="round"`,
          ),
        ),
      ...spots.map((spot) => cloud(spot, onPaper(spot.at), perMm)),
      numbers(job, spots, onPaper, chordMm, field, perMm),
      ...foot(job, reduction, perMm, height),
    ]),
  );
  return { picture, times, ghostCount: Math.min(GHOSTS, backs[0]?.misses.length ?? 0) };
}

type Place = { readonly x: number; readonly y: number };

/** A mark a part, a cross where it is beyond the limit; the front's own place as a fine cross, the limit as a ring. */
function cloud({ cloud: misses, limit }: Spot, { x, y }: Place, perMm: number): Html {
  const within = limit?.mm ?? Infinity;
  const spot = ([mx, my]: readonly [number, number]) => ({
    x: dot(x + mx * perMm),
    y: dot(y - my * perMm),
  });
  const isIn = ([mx, my]: readonly [number, number]): boolean => Math.hypot(mx, my) <= within;
  const near = misses.filter((miss) => Math.hypot(...miss) * perMm <= 1.6 * MOST_MISS_MM);
  const dots = near.filter(isIn).map((miss) => {
    const at = spot(miss);
    return `M${at.x} ${at.y}h0`;
  });
  const crosses = near
    .filter((miss) => !isIn(miss))
    .map((miss) => {
      const at = spot(miss);
      return `M${dot(at.x - 0.6)} ${dot(at.y - 0.6)}l1.2 1.2m0 -1.2l-1.2 1.2`;
    });
  return joined([
    markup`<path d="${dots.join('')}" stroke="${ACCENT}" stroke-width="0.62" stroke-linecap="round" fill="none"/>`,
    markup`<path d="${crosses.join('')}" stroke="${INK}" stroke-width="0.3" fill="none"/>`,
    markup`<path d="M${dot(x - 2.4)} ${dot(y)}h4.8M${dot(x)} ${dot(y - 2.4)}v4.8" stroke="${INK}" stroke-width="0.3"/>`,
    limit === null
      ? markup``
      : markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${dot(limit.mm * perMm)}" fill="none" stroke="${INK}" stroke-width="0.7"/>`,
  ]);
}

/** Numbers of the cuts beside their outlines and letters of the needs beside their rings, where they cover nothing. */
function numbers(
  job: Job,
  spots: readonly Spot[],
  onPaper: (p: Point<'blank'>) => Place,
  chordMm: number,
  field: Box,
  perMm: number,
): Html {
  const taken: Box[] = spots.map((spot) => {
    const { x, y } = onPaper(spot.at);
    const reach = 2 * Math.max(2.4, (spot.limit?.mm ?? 0) * perMm);
    return boxAround(x, y, reach, reach);
  });
  const put = (
    round: readonly Place[],
    centre: Place,
    name: string,
    shape: 'circle' | 'square',
  ) => {
    const { box, spot } = roomFor(beside(round, centre), taken, field);
    taken.push(box);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    return joined([
      markup`<line x1="${dot(spot.x)}" y1="${dot(spot.y)}" x2="${dot(x)}" y2="${dot(y)}" stroke="${INK}" stroke-width="0.25"/>`,
      badge(name, box, shape),
    ]);
  };
  const cuts = job.features.map((feature, k) => {
    const outline = outlineOf(feature, chordMm).map(onPaper);
    return put(outline, onPaper(middleOf(feature)), String(k + 1), 'circle');
  });
  const rings = spots.flatMap(({ at, limit }, k) => {
    if (limit === null) return [];
    const { x, y } = onPaper(at);
    const ring = Array.from({ length: 24 }, (_, i) => ({
      x: x + limit.mm * perMm * Math.cos((i * Math.PI) / 12),
      y: y + limit.mm * perMm * Math.sin((i * Math.PI) / 12),
    }));
    return [put(ring, { x, y }, letterOf(k), 'square')];
  });
  return joined([...rings, ...cuts]);
}

/** A, B, ... of the places that a need judges. */
export const letterOf = (k: number): string => String.fromCharCode(65 + (k % 26));

const middleOf = ({ at }: Feature): Point<'blank'> => at;

/** On the line, or beside it with a leader; up and to the right is where a reader looks first. */
function beside(round: readonly Place[], centre: Place) {
  const some = Array.from({ length: 24 }, (_, i) => round[((i * round.length) / 24) | 0]!);
  return some.flatMap((spot) => {
    const away = Math.hypot(spot.x - centre.x, spot.y - centre.y) || 1;
    const slant = Math.abs(spot.x - centre.x - (centre.y - spot.y)) / away;
    return [0, 4, 7, 11, -4, 16, 24].map((out) => ({
      box: boxAround(
        spot.x + ((spot.x - centre.x) / away) * out,
        spot.y + ((spot.y - centre.y) / away) * out,
        BADGE_MM,
        BADGE_MM,
      ),
      cost: Math.abs(out - (away < BADGE_MM ? 4 : 0)) + slant,
      spot,
    }));
  });
}

/** Two rules: of the part, and of its misses. */
function foot(job: Job, reduction: number, perMm: number, height: number): readonly Html[] {
  const { units } = job.shop;
  const words = (x: number, text: string): Html =>
    textAt({ x, y: height - 1.2 }, text, { sizeMm: 3.2, fill: FAINT });
  return [
    scaleBar({ x: EDGE_MM, y: height - 1 }, 'start', 1 / reduction, 34, units),
    words(EDGE_MM + 37, 'on the part'),
    scaleBar({ x: PAPER_MM / 2, y: height - 1 }, 'start', perMm, 26, units),
    words(PAPER_MM / 2 + 29, 'of missing, drawn larger'),
  ];
}
