import type { Units } from '../job/job.ts';
import type { BedSurvey } from '../measure/bed-survey.ts';
import { planeAt } from '../measure/bed-plane.ts';
import type { ShimPlan } from '../measure/shims.ts';
import type { Point } from '../plane/point.ts';
import { type Html, joined, markup } from './html.ts';
import { drawing, dot, FAINT, INK, textAt, type Spot } from './svg.ts';
import { lengthText, MM_PER_INCH, trueMinus } from './words.ts';

/** What a map of the bed shows, bed frame, mm. */
export interface BedMap {
  readonly survey: BedSurvey;
  readonly board: { readonly xMm: number; readonly yMm: number };
  readonly units: Units;
  /** The rectangle in which the part lies; null without a job. */
  readonly part: { readonly at: Point<'bed'>; readonly xMm: number; readonly yMm: number } | null;
  readonly plan: ShimPlan | null;
  readonly title: string;
}

const [WIDTH_MM, MARGIN_MM, HEAD_MM, FOOT_MM] = [180, 8, 10, 16];
const [LOW, MIDDLE, HIGH] = ['#2b6cb0', '#f7f7f2', '#b5472a'] as const;

/** The bed from above, near edge down: colours by height, every reading, bed screws and their shims, the part. */
export function bedMap(map: BedMap): Html {
  const { survey, board, units } = map;
  const scale = (WIDTH_MM - 2 * MARGIN_MM) / board.xMm;
  const heightMm = board.yMm * scale;
  const spot = ({ x, y }: Point<'bed'>): Spot => ({
    x: MARGIN_MM + x * scale,
    y: HEAD_MM + (board.yMm - y) * scale,
  });
  const screws: readonly Screw[] = (map.plan?.at ?? []).map((one) => ({
    at: spot(one.screw),
    words: one.stack.pieces.length === 0 ? 'no shim' : one.stack.pieces.join(' + '),
    isLifted: one.stack.pieces.length > 0,
  }));
  const mean = survey.plane.heightMm;
  const largest = Math.max(...survey.heights.map(({ heightMm: mm }) => Math.abs(mm - mean)), 1e-6);
  const colour = (mm: number): string => shade((mm - mean) / largest);
  const frame = markup`<rect x="${dot(MARGIN_MM)}" y="${dot(HEAD_MM)}" width="${dot(board.xMm * scale)}" height="${dot(heightMm)}" fill="none" stroke="${INK}" stroke-width="0.4"/>`;
  const shown = units === 'inch' ? 'thousandths of an inch' : 'hundredths of a millimetre';
  return drawing(
    `${map.title}: heights of the bed from above`,
    WIDTH_MM,
    HEAD_MM + heightMm + FOOT_MM,
    joined([
      textAt({ x: MARGIN_MM, y: HEAD_MM - 3.5 }, map.title, { sizeMm: 4, weight: 700 }),
      field(map, spot, scale, colour),
      frame,
      partBox(map, spot, scale),
      // Signs first, words on top of them: a reading may be taken right beside a screw.
      ...screws.map((one) => screwSign(one.at)),
      ...survey.heights.map(({ at, heightMm: mm }) => reading(spot(at), mm - mean, units, screws)),
      ...screws.map(shimWords),
      textAt(
        { x: MARGIN_MM, y: HEAD_MM + heightMm + 6 },
        `Heights over the mean plane's middle in ${shown}; red stands high, blue low.`,
        { sizeMm: 3, fill: FAINT },
      ),
      textAt(
        { x: MARGIN_MM, y: HEAD_MM + heightMm + 11 },
        `Near edge down. Greatest less least ${lengthText(survey.rangeMm, units)}.`,
        { sizeMm: 3, fill: FAINT },
      ),
    ]),
  );
}

/** Cells coloured by the plane and, near readings, by how far those stand off it (weights by distance, for the eye only). */
function field(
  { survey, board }: BedMap,
  spot: (at: Point<'bed'>) => Spot,
  scale: number,
  colour: (mm: number) => string,
): Html {
  const [nx, ny] = [36, 24];
  const [w, h] = [board.xMm / nx, board.yMm / ny];
  const reach = Math.max(w, h) * 2;
  return joined(
    Array.from({ length: nx * ny }, (_, k) => {
      const at = { x: ((k % nx) + 0.5) * w, y: (Math.floor(k / nx) + 0.5) * h };
      let [sum, weights] = [0, 0];
      survey.heights.forEach((height, i) => {
        const far = Math.hypot(height.at.x - at.x, height.at.y - at.y);
        const weight = 1 / (far * far + reach * reach) ** 2;
        sum += weight * survey.plane.residualsMm[i]!;
        weights += weight;
      });
      const corner = spot({ x: at.x - w / 2, y: at.y + h / 2 });
      const paint = colour(planeAt(survey.plane, at) + sum / weights);
      return markup`<rect x="${dot(corner.x)}" y="${dot(corner.y)}" width="${dot(w * scale + 0.05)}" height="${dot(h * scale + 0.05)}" fill="${paint}"/>`;
    }),
  );
}

interface Screw {
  readonly at: Spot;
  readonly words: string;
  readonly isLifted: boolean;
}

/** The figure stands over its dot, or beside it where the sign of a screw or its words are in the way. */
function reading(at: Spot, offMm: number, units: Units, screws: readonly Screw[]): Html {
  const value = units === 'inch' ? (offMm / MM_PER_INCH) * 1000 : offMm * 100;
  const words = trueMinus(value.toFixed(0));
  const places = [
    { x: at.x, y: at.y - 1.6, anchor: 'middle' },
    { x: at.x + 1.8, y: at.y + 1.1, anchor: 'start' },
    { x: at.x - 1.8, y: at.y + 1.1, anchor: 'end' },
    { x: at.x, y: at.y + 4.2, anchor: 'middle' },
  ] as const;
  const long = words.length * READING_WIDE_MM;
  const free = ({ x, y, anchor }: (typeof places)[number]): boolean => {
    const left = anchor === 'start' ? x : anchor === 'end' ? x - long : x - long / 2;
    return screws.every(
      (one) =>
        !meet([left, left + long, y - 2.6, y], signBox(one)) &&
        !meet([left, left + long, y - 2.6, y], wordsBox(one)),
    );
  };
  const place = places.find(free) ?? places[0];
  return markup`<circle cx="${dot(at.x)}" cy="${dot(at.y)}" r="0.8" fill="${INK}"/>${textAt(place, words, { sizeMm: 3.2, anchor: place.anchor, rim: 'white' })}`;
}

/** Widths of a letter at the sizes used here, mm: widest of common sans-serif faces. */
const READING_WIDE_MM = 2;
const SHIM_WIDE_MM = 1.7;

/** Left, right, top, bottom on the page. */
type Box = readonly [number, number, number, number];

const meet = (a: Box, b: Box): boolean => a[0] < b[1] && b[0] < a[1] && a[2] < b[3] && b[2] < a[3];
const signBox = ({ at }: Screw): Box => [at.x - 2, at.x + 2, at.y - 2, at.y + 2];
const wordsBox = ({ at, words }: Screw): Box => {
  const half = (words.length * SHIM_WIDE_MM) / 2;
  return [at.x - half, at.x + half, at.y + 3, at.y + 5.8];
};

const screwSign = (at: Spot): Html =>
  markup`<circle cx="${dot(at.x)}" cy="${dot(at.y)}" r="1.8" fill="#ffffff" stroke="${INK}" stroke-width="0.5"/><line x1="${dot(at.x - 1.2)}" y1="${dot(at.y)}" x2="${dot(at.x + 1.2)}" y2="${dot(at.y)}" stroke="${INK}" stroke-width="0.5"/>`;

const shimWords = ({ at, words, isLifted }: Screw): Html =>
  textAt({ x: at.x, y: at.y + 5.2 }, words, {
    sizeMm: 2.8,
    anchor: 'middle',
    rim: 'white',
    weight: isLifted ? 700 : 400,
  });

function partBox({ part }: BedMap, spot: (at: Point<'bed'>) => Spot, scale: number): Html {
  if (part === null) return markup``;
  const corner = spot({ x: part.at.x, y: part.at.y + part.yMm });
  return markup`<rect x="${dot(corner.x)}" y="${dot(corner.y)}" width="${dot(part.xMm * scale)}" height="${dot(part.yMm * scale)}" fill="none" stroke="${INK}" stroke-width="0.5" stroke-dasharray="2 1.2"/>${textAt({ x: corner.x + 2, y: corner.y + 4 }, 'the part', { sizeMm: 3, rim: 'white' })}`;
}

/** From low (-1) over level (0) to high (1). */
function shade(share: number): string {
  const by = Math.min(1, Math.abs(share));
  const [from, to] = [MIDDLE, share < 0 ? LOW : HIGH].map(channels) as [number[], number[]];
  const mixed = from.map((value, k) => Math.round(value + by * (to[k]! - value)));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

const channels = (hex: string): number[] => [1, 3, 5].map((k) => parseInt(hex.slice(k, k + 2), 16));
