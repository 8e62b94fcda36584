import { invariant, unreachable } from '../num/invariant.ts';
import type { Curve, Drawing, Figure, Layer, Xy } from '../jig/plate/drawing.ts';
import { plainWords } from './plain-words.ts';

/**
 * The drawing as DXF, millimetres, with true circles and arcs, each kind of work on its own layer and
 * depths as text on the layer `MARK`. Release 12, which every program reads; lines end in CRLF; ASCII;
 * the same bytes for the same drawing.
 * Source: the published DXF reference (group codes; bulge = tangent of a quarter of the arc's angle).
 */
export function dxfOf(drawing: Drawing): string {
  const layers: readonly Layer[] = ['through', 'pocket', 'drill', 'engrave', 'mark'];
  const groups: Group[] = [
    [999, `Flipwright - ${plainWords(drawing.name).slice(0, 100)} - millimetres`],
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, 4],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, 1],
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, '0.0'],
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, layers.length + 1],
    ...layerGroups('0', 7),
    ...layers.flatMap((layer, i) => layerGroups(layer.toUpperCase(), i + 1)),
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...drawing.figures.flatMap(figureGroups),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${code}\r\n${value}\r\n`).join('');
}

type Group = readonly [code: number, value: string | number];

const layerGroups = (name: string, colour: number): readonly Group[] => [
  [0, 'LAYER'],
  [2, name],
  [70, 0],
  [62, colour],
  [6, 'CONTINUOUS'],
];

function figureGroups(figure: Figure): readonly Group[] {
  const layer: Group = [8, figure.layer.toUpperCase()];
  switch (figure.kind) {
    case 'circle':
      return [
        [0, 'CIRCLE'],
        layer,
        ...place(figure.at),
        [40, number(figure.radiusMm)],
        ...depthText(figure.depthMm, figure.at),
      ];
    case 'curve':
      return [
        [0, 'POLYLINE'],
        layer,
        [66, 1],
        ...place({ x: 0, y: 0 }),
        [70, figure.ends === 'closed' ? 1 : 0],
        ...vertices(figure.curve, layer),
        [0, 'SEQEND'],
        layer,
        ...(figure.layer === 'engrave' ? [] : depthText(figure.depthMm, figure.curve[0]!)),
      ];
    case 'text':
      return textGroups(figure.layer, figure.at, figure.heightMm, figure.words);
    default:
      return unreachable(figure);
  }
}

const vertices = (curve: Curve, layer: Group): readonly Group[] =>
  curve.flatMap((v): readonly Group[] => [
    [0, 'VERTEX'],
    layer,
    ...place(v),
    ...(v.bulge === 0 ? [] : [[42, number(v.bulge)] as const]),
  ]);

const DEPTH_TEXT_MM = 3;

const depthText = (depthMm: number | null, at: Xy): readonly Group[] =>
  depthMm === null ? [] : textGroups('mark', at, DEPTH_TEXT_MM, `${plain(depthMm)} deep`);

function textGroups(layer: Layer, at: Xy, heightMm: number, words: string): readonly Group[] {
  const text = plainWords(words).slice(0, 200);
  if (text === '') return [];
  return [[0, 'TEXT'], [8, layer.toUpperCase()], ...place(at), [40, number(heightMm)], [1, text]];
}

const place = ({ x, y }: Xy): readonly Group[] => [
  [10, number(x)],
  [20, number(y)],
  [30, '0.0'],
];

const plain = (mm: number): string => String(Number(mm.toFixed(2)));

/** A plain decimal: some readers know no exponent, and some take a whole number for an integer. */
function number(value: number): string {
  invariant(Number.isFinite(value), `a drawing's number of ${value}`);
  const text = value.toFixed(6).replace(/0+$/, '').replace(/\.$/, '.0');
  return text === '-0.0' ? '0.0' : text;
}
