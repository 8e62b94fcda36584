import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { QUARTER_BULGE } from '../../plane/path.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import type { Element } from './svg-elements.ts';
import type { Piece, SubPath } from './svg-path.ts';
import { subPathsOf } from './svg-path.ts';

/** What an element draws, in its own units, y down; null when it draws no outline at all. */
export function shapeOf(element: Element): Result<readonly SubPath[], TextFault> | null {
  const figure = (key: string, otherwise = 0): number => {
    const written = element.attributes.get(key);
    if (written === undefined) return otherwise;
    return /^\s*[+-]?[\d.]+(e[+-]?\d+)?\s*(px)?\s*$/i.test(written) ? parseFloat(written) : NaN;
  };
  switch (element.name) {
    case 'path':
      return subPathsOf(element.attributes.get('d') ?? '');
    case 'rect':
      return rectangle(figure);
    case 'circle':
      return round(figure('cx'), figure('cy'), figure('r', NaN));
    case 'ellipse': {
      const [rx, ry] = [figure('rx', NaN), figure('ry', NaN)];
      if (rx !== ry) return textFault('it is an ellipse', 'draw it with circular arcs');
      return round(figure('cx'), figure('cy'), rx);
    }
    case 'polygon':
    case 'polyline':
      return corners(element.attributes.get('points') ?? '', element.name === 'polygon');
    case 'line':
      return sound({
        from: { x: figure('x1'), y: figure('y1') },
        pieces: [{ kind: 'line', to: { x: figure('x2'), y: figure('y2') } }],
        isClosed: false,
      });
    case 'use':
    case 'image':
    case 'text':
      return textFault(`it is a ${element.name}`, 'turn it into a path in the drawing program');
    default:
      return null;
  }
}

const NO_NUMBER = textFault(
  'it has a size or place that is no plain number',
  'write its sizes without units',
);

function sound(drawn: SubPath): Result<readonly SubPath[], TextFault> {
  const spots = [drawn.from, ...drawn.pieces.map(({ to }) => to)];
  return spots.every(({ x, y }) => Number.isFinite(x + y)) ? ok([drawn]) : NO_NUMBER;
}

function round(x: number, y: number, r: number): Result<readonly SubPath[], TextFault> {
  if (!(r > 0)) return NO_NUMBER;
  const half = (to: number): Piece => ({ kind: 'arc', to: { x: to, y }, bulge: 1 });
  return sound({ from: { x: x + r, y }, pieces: [half(x - r), half(x + r)], isClosed: true });
}

function rectangle(
  figure: (key: string, otherwise?: number) => number,
): Result<readonly SubPath[], TextFault> {
  const [x, y, w, h] = [figure('x'), figure('y'), figure('width', NaN), figure('height', NaN)];
  if (!(w > 0 && h > 0)) return NO_NUMBER;
  // Source: SVG 1.1, section 9.2: a radius that is left out is the other one, and none is more than half.
  const rx = Math.min(figure('rx', figure('ry')), w / 2);
  const ry = Math.min(figure('ry', figure('rx')), h / 2);
  if (Math.abs(rx - ry) > 1e-6 * Math.abs(rx))
    return textFault(`its corners are ellipses of ${rx} and ${ry}`, 'give it one corner radius');
  const line = (toX: number, toY: number): Piece => ({ kind: 'line', to: { x: toX, y: toY } });
  const corner = (toX: number, toY: number): Piece => ({
    kind: 'arc',
    to: { x: toX, y: toY },
    bulge: QUARTER_BULGE,
  });
  const [right, bottom] = [x + w, y + h];
  const pieces =
    rx === 0
      ? [line(right, y), line(right, bottom), line(x, bottom)]
      : [
          line(right - rx, y),
          corner(right, y + rx),
          line(right, bottom - rx),
          corner(right - rx, bottom),
          line(x + rx, bottom),
          corner(x, bottom - rx),
          line(x, y + rx),
          corner(x + rx, y),
        ];
  return sound({ from: { x: x + rx, y }, pieces, isClosed: true });
}

function corners(points: string, isClosed: boolean): Result<readonly SubPath[], TextFault> {
  const figures = points
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (figures.length % 2 === 1 || figures.length < 4) return NO_NUMBER;
  const spots = Array.from({ length: figures.length / 2 }, (_, i) => ({
    x: figures[2 * i]!,
    y: figures[2 * i + 1]!,
  }));
  const [from, ...others] = spots;
  return sound({ from: from!, pieces: others.map((to) => ({ kind: 'line', to })), isClosed });
}
