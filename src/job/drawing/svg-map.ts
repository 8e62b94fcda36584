import { cosineOf, sineOf, tangentOf } from '../../num/elementary.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import type { Element } from './svg-elements.ts';

/** Affine: x' = a x + c y + e, y' = b x + d y + f. */
export interface Map2 {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

const SAME: Map2 = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const mappedBy = (m: Map2, x: number, y: number) => ({
  x: m.a * x + m.c * y + m.e,
  y: m.b * x + m.d * y + m.f,
});

/** First `inner`, then `outer`. */
const after = (outer: Map2, inner: Map2): Map2 => ({
  ...(({ x, y }) => ({ a: x, b: y }))(turned(outer, inner.a, inner.b)),
  ...(({ x, y }) => ({ c: x, d: y }))(turned(outer, inner.c, inner.d)),
  ...(({ x, y }) => ({ e: x, f: y }))(mappedBy(outer, inner.e, inner.f)),
});

const turned = (m: Map2, x: number, y: number) => ({ x: m.a * x + m.c * y, y: m.b * x + m.d * y });

/** Whether circles stay circles, to ulps of the figures that are written. */
export function keepsCircles({ a, b, c, d }: Map2): boolean {
  const size = a * a + b * b + c * c + d * d;
  return (
    Math.abs(a * a + b * b - c * c - d * d) <= 1e-9 * size && Math.abs(a * c + b * d) <= 1e-9 * size
  );
}

/** 1 when counter-clockwise stays so, -1 when it is turned round. */
export const windingOf = ({ a, b, c, d }: Map2): 1 | -1 => (a * d - b * c < 0 ? -1 : 1);

/** From the units of an element to mm on the page, from its lower-left corner, y up. */
export function mapOf(element: Element, page: Map2): Result<Map2, TextFault> {
  let map = page;
  for (const one of [...element.within, element]) {
    const own = transformOf(one);
    if (!own.ok) return own;
    map = after(map, own.value);
  }
  return ok(map);
}

/** The page of the outermost `svg`: its viewBox to mm. */
export function pageOf(svg: Element | undefined): Result<Map2, TextFault> {
  if (svg === undefined) return textFault('it holds no svg element', 'save the drawing as SVG');
  const size = (key: string): number | null => mmOf(svg.attributes.get(key) ?? '');
  const [width, height] = [size('width'), size('height')];
  if (width === null || height === null)
    return textFault(
      'its width and height are not in mm, cm or in, so its size is not known',
      'set the size of the page in mm',
    );
  const box = (svg.attributes.get('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x = NaN, y = NaN, w = NaN, h = NaN] = box;
  if (box.length !== 4 || !(Number.isFinite(x + y) && w > 0 && h > 0 && Number.isFinite(w + h)))
    return textFault('it has no viewBox, so its units are not known', 'save it with a viewBox');
  const [sx, sy] = [width / w, height / h];
  // A page rounded to a few decimals is still the page that was meant.
  if (Math.abs(sx - sy) > 1e-4 * sx)
    return textFault(
      'its viewBox does not have the shape of its width and height',
      'make the page as wide and high as the viewBox says',
    );
  return ok({ a: sx, b: 0, c: 0, d: -sx, e: -x * sx, f: (y + h) * sx });
}

/** Source: CSS Values and Units 3, section 6.2, absolute lengths. */
const MM_IN: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  Q: 0.25,
};

function mmOf(written: string): number | null {
  const parts = /^\s*([+]?[\d.]+(?:e[+-]?\d+)?)\s*([a-zA-Z]+)\s*$/.exec(written);
  const mm = Number(parts?.[1]) * (MM_IN[parts?.[2] ?? ''] ?? NaN);
  return mm > 0 && Number.isFinite(mm) ? mm : null;
}

function transformOf(element: Element): Result<Map2, TextFault> {
  const written = element.attributes.get('transform') ?? '';
  const wrong = (): Result<never, TextFault> =>
    textFault(
      `the ${element.name} in line ${element.line} has the transform ${written.slice(0, 40)}, which cannot be read`,
      'apply the transform in the drawing program',
    );
  let map = SAME;
  const rest = written.replace(
    /([a-zA-Z]+)\s*\(([^)]*)\)\s*,?/g,
    (_, name: string, list: string) => {
      const figures = list
        .trim()
        .split(/[\s,]+/)
        .map(Number);
      const own = figures.every(Number.isFinite) ? oneTransform(name, figures) : null;
      if (own === null) return '?';
      map = after(map, own);
      return '';
    },
  );
  return rest.trim() === '' ? ok(map) : wrong();
}

function oneTransform(name: string, list: readonly number[]): Map2 | null {
  const [p = NaN, q = NaN, r = NaN, s = NaN, t = NaN, u = NaN] = list;
  const n = list.length;
  const rad = (p * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return n === 6 ? { a: p, b: q, c: r, d: s, e: t, f: u } : null;
    case 'translate':
      return n === 1 || n === 2 ? { ...SAME, e: p, f: n === 2 ? q : 0 } : null;
    case 'scale':
      return n === 1 || n === 2 ? { ...SAME, a: p, d: n === 2 ? q : p } : null;
    case 'rotate': {
      const turn = {
        a: cosineOf(rad),
        b: sineOf(rad),
        c: -sineOf(rad),
        d: cosineOf(rad),
        e: 0,
        f: 0,
      };
      if (n === 1) return turn;
      return n === 3
        ? after({ ...SAME, e: q, f: r }, after(turn, { ...SAME, e: -q, f: -r }))
        : null;
    }
    case 'skewX':
      return n === 1 ? { ...SAME, c: tangentOf(rad) } : null;
    case 'skewY':
      return n === 1 ? { ...SAME, b: tangentOf(rad) } : null;
    default:
      return null;
  }
}
