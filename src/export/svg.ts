import { unreachable } from '../num/invariant.ts';
import { boundsOf } from '../plane/measure.ts';
import { arcOf, onCurve } from '../jig/plate/curve.ts';
import type { Curve, Drawing, Figure, Layer } from '../jig/plate/drawing.ts';
import { plainWords } from './plain-words.ts';

const COLOURS: Record<Layer, string> = {
  through: '#c00000',
  pocket: '#0040c0',
  drill: '#008040',
  engrave: '#000000',
  mark: '#808080',
};

/** Round the drawing, so that no line is cut off, mm. */
const MARGIN_MM = 5;
const LINE_MM = 0.2;

/** The drawing as SVG at its true size, each kind of work a group of its own; the same text every time. */
export function svgOf(drawing: Drawing): string {
  const box = boundsOf(drawing.figures.flatMap(placesOf));
  const low = { x: box.lowX - MARGIN_MM, y: box.lowY - MARGIN_MM };
  const wide = box.highX - box.lowX + 2 * MARGIN_MM;
  const high = box.highY - box.lowY + 2 * MARGIN_MM;
  const onPage: Turn = {
    x: (x) => number(x - low.x),
    y: (y) => number(low.y + high - y),
  };
  const groups = (Object.keys(COLOURS) as Layer[]).flatMap((layer) => {
    const figures = drawing.figures.filter((figure) => figure.layer === layer);
    if (figures.length === 0) return [];
    return [
      `<g id="${layer}" fill="none" stroke="${COLOURS[layer]}" stroke-width="${LINE_MM}">`,
      ...figures.map((figure) => figureText(figure, onPage)),
      '</g>',
    ];
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(wide)}mm" height="${number(high)}mm" viewBox="0 0 ${number(wide)} ${number(high)}">`,
    `<title>${plainWords(drawing.name)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

interface Turn {
  readonly x: (mm: number) => string;
  readonly y: (mm: number) => string;
}

function placesOf(figure: Figure): readonly { readonly x: number; readonly y: number }[] {
  switch (figure.kind) {
    case 'circle':
      return [1, -1].map((way) => ({
        x: figure.at.x + way * figure.radiusMm,
        y: figure.at.y + way * figure.radiusMm,
      }));
    case 'curve':
      return onCurve(figure.curve, 0.01);
    case 'text':
      return [
        figure.at,
        {
          x: figure.at.x + figure.words.length * figure.heightMm * 0.7,
          y: figure.at.y + figure.heightMm,
        },
      ];
    default:
      return unreachable(figure);
  }
}

function figureText(figure: Figure, on: Turn): string {
  switch (figure.kind) {
    case 'circle':
      return `<circle cx="${on.x(figure.at.x)}" cy="${on.y(figure.at.y)}" r="${number(figure.radiusMm)}">${depthTitle(figure.depthMm)}</circle>`;
    case 'curve':
      return `<path d="${pathText(figure.curve, figure.ends, on)}">${depthTitle(figure.depthMm)}</path>`;
    case 'text':
      return `<text x="${on.x(figure.at.x)}" y="${on.y(figure.at.y)}" font-size="${number(figure.heightMm)}" font-family="sans-serif" fill="${COLOURS[figure.layer]}" stroke="none">${plainWords(figure.words)}</text>`;
    default:
      return unreachable(figure);
  }
}

const depthTitle = (depthMm: number | null): string =>
  depthMm === null ? '' : `<title>${Number(depthMm.toFixed(2))} mm deep</title>`;

function pathText(curve: Curve, ends: 'closed' | 'open', on: Turn): string {
  const [first] = curve;
  if (first === undefined) return '';
  const count = ends === 'closed' ? curve.length : curve.length - 1;
  const legs = curve.slice(0, count).map((from, i) => {
    const to = curve[(i + 1) % curve.length]!;
    const end = `${on.x(to.x)} ${on.y(to.y)}`;
    if (from.bulge === 0) return `L${end}`;
    const { radiusMm } = arcOf(from, to);
    const isLarge = Math.abs(from.bulge) > 1 ? 1 : 0;
    // The page's y points down: counter-clockwise is its negative direction.
    return `A${number(radiusMm)} ${number(radiusMm)} 0 ${isLarge} ${from.bulge > 0 ? 0 : 1} ${end}`;
  });
  return `M${on.x(first.x)} ${on.y(first.y)}${legs.join('')}${ends === 'closed' ? 'Z' : ''}`;
}

const number = (mm: number): string => {
  const text = mm.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
};
