import type { Html } from './html.ts';
import type { Box } from './label-room.ts';
import { markup } from './html.ts';

/** A place on the drawing paper: mm, x right, y down. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A piece of a drawing, and what other labels must keep clear of. */
export interface Drawn {
  readonly html: Html;
  readonly taken: readonly Box[];
}

export const INK = '#111111';
export const ACCENT = '#8a3a12';
export const FAINT = '#5a5a5a';

type Anchor = 'start' | 'middle' | 'end';

interface TextLook {
  readonly sizeMm: number;
  readonly weight?: 400 | 700;
  readonly anchor?: Anchor;
  readonly fill?: string;
  /** A white rim, for words that stand on lines. */
  readonly rim?: 'white' | 'none';
}

/** A line of text whose baseline starts, is centred or ends at `at`. */
export function textAt(at: Spot, words: string, look: TextLook): Html {
  const { sizeMm, weight = 400, anchor = 'start', fill = INK, rim = 'none' } = look;
  const paint =
    rim === 'none'
      ? markup``
      : markup` stroke="#ffffff" stroke-width="1.5" stroke-linejoin="round" paint-order="stroke"`;
  return markup`<text x="${dot(at.x)}" y="${dot(at.y)}" font-size="${sizeMm}" font-weight="${weight}" text-anchor="${anchor}" fill="${fill}"${paint}>${words}</text>`;
}

/** The same, reading upwards, centred on `at`. */
export function textUp(at: Spot, words: string, look: TextLook): Html {
  const { sizeMm, weight = 400, fill = INK } = look;
  return markup`<text transform="translate(${dot(at.x)} ${dot(at.y)}) rotate(-90)" font-size="${sizeMm}" font-weight="${weight}" text-anchor="middle" fill="${fill}">${words}</text>`;
}

/** `x,y x,y ...` of a polyline. */
export function pointsText(spots: readonly Spot[]): string {
  return spots.map((spot) => `${dot(spot.x)},${dot(spot.y)}`).join(' ');
}

/** A straight line with an arrow head at `to`. */
export function arrow(from: Spot, to: Spot, widthMm: number, colour: string): Html {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const head = Math.max(2.2, widthMm * 4.5);
  const foot = { x: to.x - along.x * head, y: to.y - along.y * head };
  const half = head * 0.42;
  const wings = [
    { x: foot.x - along.y * half, y: foot.y + along.x * half },
    { x: foot.x + along.y * half, y: foot.y - along.x * half },
  ];
  return markup`<line x1="${dot(from.x)}" y1="${dot(from.y)}" x2="${dot(foot.x)}" y2="${dot(foot.y)}" stroke="${colour}" stroke-width="${widthMm}"/><polygon points="${pointsText([to, ...wings])}" fill="${colour}"/>`;
}

/** A drawing of its true size on paper; the words say what it shows to who cannot see it. */
export function drawing(name: string, widthMm: number, heightMm: number, inside: Html): Html {
  return markup`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${name}" width="${dot(widthMm)}mm" height="${dot(heightMm)}mm" viewBox="0 0 ${dot(widthMm)} ${dot(heightMm)}" font-family="${FONTS}">${inside}</svg>`;
}

export const FONTS =
  "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif";

/** Hundredths of a millimetre are finer than any printer. */
export function dot(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}
