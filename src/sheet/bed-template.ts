import type { Job } from '../job/job.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { StopPart } from '../jig/stop-part.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Point } from '../plane/point.ts';
import type { Html } from './html.ts';
import { joined, markup } from './html.ts';
import { INK, FAINT, FONTS, dot, pointsText, type Spot } from './svg.ts';

/** What both A4 and Letter paper leave room for, mm, and where the sheet's own words go. */
const TILE = { widthMm: 180, heightMm: 240 };
const HEAD_MM = 14;
const BAR_MM = 100;
const ROUND_MM = 10;

/** One sheet of paper: its name and what part of the bed it shows, places on the bed. */
export interface Tile {
  readonly name: string;
  readonly lowX: number;
  readonly lowY: number;
}

/**
 * The stops, the blank and the holes of the bed on paper at their true size, in sheets that lie over each
 * other by `overlapMm`, each with a bar to check the printer by.
 */
export function bedTemplate(
  job: Job,
  stops: readonly StopPart[],
  overlapMm: number,
  version: string,
): string {
  const tiles = tilesOf(job, stops, overlapMm);
  const page = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<title>Template of the bed: ${job.name}</title>
<style>${STYLE}</style>
</head>
<body>
<svg width="0" height="0" style="position:absolute" aria-hidden="true"><defs><g id="bed" font-family="${FONTS}">${bedPicture(job, stops)}</g></defs></svg>
${tiles.map((tile) => tilePage(job, tile, tiles, overlapMm, version))}
</body>
</html>
`;
  return page.html;
}

/** Sheets from the near left corner on, row by row, until everything lies on one. */
export function tilesOf(job: Job, stops: readonly StopPart[], overlapMm: number): readonly Tile[] {
  const { widthMm, heightMm } = job.blank;
  const corners: Point<'layout'>[] = [
    { x: 0, y: 0 },
    { x: widthMm, y: heightMm },
  ];
  const box = boundsOf(
    [...corners, ...stops.flatMap((stop) => stop.body.outline)].map((p) => layoutOnBed(job, p)),
  );
  const low = { x: box.lowX - ROUND_MM, y: box.lowY - ROUND_MM };
  const count = (longMm: number, tileMm: number): number =>
    Math.max(1, Math.ceil((longMm - overlapMm) / (tileMm - overlapMm) - 1e-9));
  const columns = count(box.highX + ROUND_MM - low.x, TILE.widthMm);
  const rows = count(box.highY + ROUND_MM - low.y, TILE.heightMm);
  return Array.from({ length: rows * columns }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return {
      name: `${String.fromCharCode(65 + column)}${row + 1}`,
      lowX: low.x + column * (TILE.widthMm - overlapMm),
      lowY: low.y + row * (TILE.heightMm - overlapMm),
    };
  });
}

/** The page's y points down, the bed's away from the operator. */
const spot = ({ x, y }: { readonly x: number; readonly y: number }): Spot => ({ x, y: -y });

function bedPicture(job: Job, stops: readonly StopPart[]): Html {
  const { widthMm, heightMm } = job.blank;
  const onBed = (p: Point<'layout'>): Spot => spot(layoutOnBed(job, p));
  const blank = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  const { inserts } = job.shop.bed;
  const places =
    inserts === null
      ? []
      : Array.from({ length: inserts.count.x * inserts.count.y }, (_, i) => ({
          x: inserts.first.x + (i % inserts.count.x) * inserts.pitchMm.x,
          y: inserts.first.y + Math.floor(i / inserts.count.x) * inserts.pitchMm.y,
        }));
  return joined([
    markup`<polygon points="${pointsText(blank.map(onBed))}" fill="none" stroke="${FAINT}" stroke-width="0.3" stroke-dasharray="4 2"/>`,
    ...places.map((p) => cross(spot(p), 3, FAINT)),
    ...stops.map(
      ({ body }) =>
        markup`<polygon points="${pointsText(body.outline.map(onBed))}" fill="none" stroke="${INK}" stroke-width="0.25"/>`,
    ),
    ...stops.flatMap(({ screws }) => screws.map(({ at }) => cross(onBed(at), 5, INK))),
    ...stops.flatMap(({ pins }) =>
      pins.map(({ at, diameterMm }) => {
        const { x, y } = onBed(at);
        return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${diameterMm / 2}" fill="none" stroke="${INK}" stroke-width="0.2"/>${cross({ x, y }, 2, INK)}`;
      }),
    ),
  ]);
}

const cross = ({ x, y }: Spot, half: number, colour: string): Html =>
  markup`<path d="M${dot(x - half)} ${dot(y)}H${dot(x + half)}M${dot(x)} ${dot(y - half)}V${dot(y + half)}" stroke="${colour}" stroke-width="0.2" fill="none"/>`;

function tilePage(
  job: Job,
  tile: Tile,
  tiles: readonly Tile[],
  overlapMm: number,
  version: string,
): Html {
  const { widthMm, heightMm } = TILE;
  const top = -(tile.lowY + heightMm);
  return markup`<section class="tile"><svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="sheet ${tile.name}" width="${widthMm}mm" height="${heightMm + HEAD_MM}mm" viewBox="0 0 ${widthMm} ${heightMm + HEAD_MM}" font-family="${FONTS}">
<text x="0" y="4" font-size="3.4"><tspan font-weight="700">Sheet ${tile.name} of ${String(tiles.length)}</tspan> · ${job.name} · print at 100 %, not fitted to the page. Flipwright ${version}</text>
<path class="bar" d="M0 9H${BAR_MM}M0 7.5V10.5M${BAR_MM} 7.5V10.5" stroke="${INK}" stroke-width="0.25" fill="none"/>
<text x="${BAR_MM + 3}" y="10" font-size="3">${String(BAR_MM)} mm: measure it before you use the sheet.</text>
<svg x="0" y="${HEAD_MM}" width="${widthMm}" height="${heightMm}" viewBox="${dot(tile.lowX)} ${dot(top)} ${widthMm} ${heightMm}"><use href="#bed"/>
<rect x="${dot(tile.lowX)}" y="${dot(top)}" width="${widthMm}" height="${heightMm}" fill="none" stroke="${FAINT}" stroke-width="0.3"/>
<rect x="${dot(tile.lowX + overlapMm)}" y="${dot(top + overlapMm)}" width="${widthMm - 2 * overlapMm}" height="${heightMm - 2 * overlapMm}" fill="none" stroke="${FAINT}" stroke-width="0.15" stroke-dasharray="1 3"/>
</svg></svg></section>
`;
}

const STYLE: Html = {
  html: `
@page { margin: 10mm; }
html { background: #fff; color: #111; }
body { margin: 0; }
.tile { break-after: page; break-inside: avoid; }
.tile svg { display: block; }
`,
};
