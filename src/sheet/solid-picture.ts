import { backToFront } from '../jig/back-to-front.ts';
import { joinedFacets } from '../jig/joined-facets.ts';
import type { Corner3, Facet } from '../jig/mesh.ts';
import { facetsOf, solidOf } from '../jig/solid.ts';
import { strokesOf } from '../jig/plate/lettering.ts';
import { signedAreaMm2 } from '../plane/measure.ts';
import type { Profile, StopPart } from '../jig/stop-part.ts';
import { touchesBlank } from '../jig/touching-facet.ts';
import { dot, seenFacets, type SeenFacet } from '../jig/seen-facets.ts';
import type { Units } from '../job/job.ts';
import { MM_PER_INCH, unitText } from './words.ts';

export interface PictureWish {
  /** What is shown, for those who cannot see it, and the caption under it. */
  readonly title: string;
  readonly caption: string;
  /** From which side of the bed it is seen, always from above. */
  readonly from: { readonly x: 1 | -1; readonly y: 1 | -1 };
  /** Facets to tint, such as the faces that touch the blank. */
  readonly tinted: (facet: { readonly corners: Facet; readonly normal: Corner3 }) => boolean;
  /** Drawn over all else, such as words on top. */
  readonly lines?: readonly (readonly Corner3[])[];
  /** Width of the picture on the page, mm. */
  readonly widthMm: number;
}

/** A stop seen from the blank's side, with the faces that touch it tinted, and its size below. */
export function stopPicture(part: StopPart, widthMm: number, units: Units = 'mm'): string {
  const facets = facetsOf(solidOf(withoutFootChamfer(part.profile)));
  const places = facets.flat();
  const size = (axis: 'x' | 'y' | 'z'): string => {
    const along = places.map((p) => p[axis]);
    const mm = -least(along.map((a) => -a)) - least(along);
    return units === 'mm' ? mm.toFixed(0) : (mm / MM_PER_INCH).toFixed(2);
  };
  return solidPicture(facets, {
    title: `${part.name}, seen from the blank`,
    caption: `${part.name}: ${size('x')} × ${size('y')} × ${size('z')} ${unitText(units)}`,
    from: part.towardsBlank,
    tinted: (facet) => touchesBlank(part, facet),
    // As lines: hundreds of facets of letters would be sorted for nothing.
    lines: part.words.flatMap((one) =>
      strokesOf(one).map((line) => line.map((p) => ({ ...p, z: part.body.highMm }))),
    ),
    widthMm,
  });
}

/** The chamfer round the foot lies in the very direction of an isometric view: it shows as specks. */
function withoutFootChamfer({ levels }: Profile): Profile {
  const [, second, ...others] = levels;
  return { levels: second === undefined ? levels : [{ ...second, zMm: 0 }, ...others] };
}

/** The solid in isometric view, shaded, hidden parts hidden: an SVG element that prints well. */
export function solidPicture(facets: readonly Facet[], wish: PictureWish): string {
  const view = viewFrom(wish.from);
  const painted = backToFront(joinedFacets(seenFacets(facets, view.towardsViewer, bendRad)));
  const flat = (p: Corner3): Flat => ({ x: dot(p, view.right), y: -dot(p, view.up) });
  const places = painted.flatMap((facet) => facet.corners.map(flat));
  const low = { x: least(places.map((p) => p.x)), y: least(places.map((p) => p.y)) };
  const high = { x: -least(places.map((p) => -p.x)), y: -least(places.map((p) => -p.y)) };
  const scale = (pictureUnits - 2 * marginUnits) / (high.x - low.x);
  const onPage = (p: Corner3): Flat => {
    const { x, y } = flat(p);
    return {
      x: Math.round(marginUnits + (x - low.x) * scale),
      y: Math.round(marginUnits + (y - low.y) * scale),
    };
  };
  const drawingUnits = Math.round(2 * marginUnits + (high.y - low.y) * scale);
  const heightUnits = drawingUnits + captionUnits;
  const heightMm = Number(((wish.widthMm * heightUnits) / pictureUnits).toFixed(1));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${wish.widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${pictureUnits} ${heightUnits}">`,
    `<title>${escaped(wish.title)}</title>`,
    `<g stroke-linejoin="round" stroke-linecap="round">`,
    ...strokes(painted, (facet) => tone(facet, view, wish), onPage),
    ...(wish.lines ?? []).map(
      (line) =>
        `<path d="M${line.map((p) => `${onPage(p).x} ${onPage(p).y}`).join('L')}" fill="none" stroke="#555" stroke-width="6"/>`,
    ),
    '</g>',
    `<text x="${pictureUnits / 2}" y="${drawingUnits + captionUnits * 0.6}" text-anchor="middle" font-family="sans-serif" font-size="${captionUnits * 0.55}" fill="#222">${escaped(wish.caption)}</text>`,
    '</svg>',
  ].join('\n');
}

/** A picture is this many units wide, so that whole units are fine enough to draw in. */
const pictureUnits = 2000;
const marginUnits = 12;
const captionUnits = 90;

/** A skin that bends less is a curve, not an edge: 32 chords to a turn bend by 11 degrees. */
const bendRad = (20 * Math.PI) / 180;

interface Flat {
  readonly x: number;
  readonly y: number;
}

interface View {
  readonly right: Corner3;
  readonly up: Corner3;
  readonly towardsViewer: Corner3;
}

/** Isometric: all three axes foreshortened alike. */
function viewFrom({ x, y }: PictureWish['from']): View {
  const [s2, s3, s6] = [Math.SQRT1_2, 1 / Math.sqrt(3), 1 / Math.sqrt(6)];
  return {
    towardsViewer: { x: x * s3, y: y * s3, z: s3 },
    // Right on the page is to the left of the way the viewer came from, seen from above.
    right: { x: -y * s2, y: x * s2, z: 0 },
    up: { x: -x * s6, y: -y * s6, z: 2 * s6 },
  };
}

/** Facets of one flat face in a run as one path, then the edges of all of them. */
function strokes(
  painted: readonly SeenFacet[],
  toneOf: (facet: SeenFacet) => string,
  onPage: (p: Corner3) => Flat,
): readonly string[] {
  return runsOf(painted).flatMap((run) => {
    const fill = toneOf(run[0]!);
    const loops = run
      .map((facet) => facet.corners.map(onPage))
      .filter(isWideEnough)
      .map(loop);
    const lines = run.flatMap(({ corners, drawn }) =>
      corners.flatMap((p, i) =>
        drawn[i] ? [segment(onPage(p), onPage(corners[(i + 1) % corners.length]!))] : [],
      ),
    );
    return [
      // The thin stroke in its own colour closes the hairline to its neighbours.
      ...(loops.length === 0
        ? []
        : [`<path d="${loops.join('')}" fill="${fill}" stroke="${fill}" stroke-width="2"/>`]),
      ...(lines.length === 0
        ? []
        : [`<path d="${lines.join('')}" fill="none" stroke="#333" stroke-width="4"/>`]),
    ];
  });
}

/** Neighbours in the order that look the same way: one tone, and none hides another. */
function runsOf(painted: readonly SeenFacet[]): readonly (readonly SeenFacet[])[] {
  const runs: SeenFacet[][] = [];
  for (const facet of painted) {
    const run = runs.at(-1);
    const beside = run?.[0];
    if (run !== undefined && beside !== undefined && inOnePlane(beside, facet)) run.push(facet);
    else runs.push([facet]);
  }
  return runs;
}

/** To a ten-thousandth of a millimetre: far less than a picture shows. */
function inOnePlane(a: SeenFacet, b: SeenFacet): boolean {
  const level = dot(a.normal, a.corners[0]!);
  return (
    dot(a.normal, b.normal) > 1 - 1e-9 &&
    b.corners.every((p) => Math.abs(dot(a.normal, p) - level) < 1e-4)
  );
}

/** A facet seen edge-on would be nothing but its stroke, and show beside what hides it. */
function isWideEnough(places: readonly Flat[]): boolean {
  const lengths = places.map((p, i) => {
    const q = places[(i + 1) % places.length]!;
    return Math.hypot(p.x - q.x, p.y - q.y);
  });
  const longest = -least(lengths.map((length) => -length));
  return Math.abs(signedAreaMm2(places)) > longest;
}

const loop = (places: readonly Flat[]): string =>
  `M${places.map((p) => `${p.x} ${p.y}`).join('L')}Z`;

const segment = (a: Flat, b: Flat): string => `M${a.x} ${a.y}L${b.x} ${b.y}`;

/** Light enough for print: tops nearly white, sides by how they face the lamp. */
function tone(facet: SeenFacet, view: View, wish: PictureWish): string {
  const lamp = {
    x: 0.25 * view.right.x + 0.35 * view.towardsViewer.x,
    y: 0.25 * view.right.y + 0.35 * view.towardsViewer.y,
    z: 0.9,
  };
  const lit = Math.max(0, dot(facet.normal, lamp)) / Math.hypot(lamp.x, lamp.y, lamp.z);
  const base = wish.tinted(facet) ? [232, 150, 60] : [214, 222, 230];
  const share = 0.62 + 0.48 * lit;
  const channels = base.map((c) => Math.min(255, Math.round(c * share)));
  return `#${channels.map((c) => c.toString(16).padStart(2, '0')).join('')}`;
}

const least = (numbers: readonly number[]): number =>
  numbers.reduce((low, one) => Math.min(low, one), Infinity);

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
