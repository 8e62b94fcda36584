import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { PathVertex } from '../../plane/path.ts';
import { suggestion } from '../schema/closest.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import { placesOnCurve, CURVE_MM } from './curve.ts';
import type { Chain, Pieces } from './pieces.ts';
import type { DrawingUnits } from './read.ts';
import type { Element } from './svg-elements.ts';
import { elementsOf } from './svg-elements.ts';
import type { Map2 } from './svg-map.ts';
import { keepsCircles, mapOf, mappedBy, pageOf, windingOf } from './svg-map.ts';
import type { SubPath } from './svg-path.ts';
import { shapeOf } from './svg-shape.ts';

/** What an SVG drawing holds under an id or label, mm from the lower-left corner of the page, y up. */
export function svgPieces(
  text: string,
  named: string,
  units: DrawingUnits | null,
): Result<Pieces, TextFault> {
  const elements = elementsOf(text);
  if (units !== null) return textFault('an SVG drawing says its own units', 'take out units');
  const page = pageOf(elements.find(({ name }) => name === 'svg'));
  if (!page.ok) return page;
  const wanted = elements.filter((element) => namesOf(element).includes(named));
  const [one, another] = wanted;
  if (one === undefined) {
    const ids = elements.filter(({ name }) => SHAPES.has(name)).flatMap(namesOf);
    return textFault(
      `nothing in it has the id ${named}`,
      suggestion(named, [...new Set(ids)].slice(0, 20), 'shape with an id'),
    );
  }
  if (another !== undefined)
    return textFault(
      `the ${one.name} in line ${one.line} and the ${another.name} in line ${another.line} are both called ${named}`,
      'give each its own id',
    );
  const chains: Chain[] = [];
  const faults: TextFault[] = [];
  let curveCount = 0;
  for (const element of elements.filter((each) => each === one || each.within.includes(one))) {
    const read = chainsOf(element, page.value);
    if (read === null) continue;
    if (!read.ok) faults.push(...read.faults);
    else {
      chains.push(...read.value.chains);
      curveCount += read.value.curveCount;
    }
  }
  if (faults.length > 0) return faulty(faults);
  const curves = curveCount === 1 ? 'a curve' : `${curveCount} curves`;
  return ok({
    chains,
    called: `element ${named}`,
    note:
      curveCount === 0
        ? null
        : `${curves} of ${named} ${curveCount === 1 ? 'is' : 'are'} read as straight pieces at most ${CURVE_MM} mm off; arcs and lines are kept as they are`,
  });
}

const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'polygon', 'polyline', 'line', 'g']);

/** What an element is called: its id, and the label that drawing programs show. */
const namesOf = ({ attributes }: Element): readonly string[] =>
  [...attributes].flatMap(([key, value]) =>
    key === 'id' || key.endsWith(':label') ? [value] : [],
  );

interface Read {
  readonly chains: readonly Chain[];
  readonly curveCount: number;
}

function chainsOf(element: Element, page: Map2): Result<Read, TextFault> | null {
  const drawn = shapeOf(element);
  if (drawn === null) return null;
  const what = `the ${element.name} in line ${element.line}`;
  const named = (faults: readonly TextFault[]): Result<never, TextFault> =>
    faulty(
      faults.map(({ message, instead }) => ({
        message: message.startsWith('the ') ? message : `${what}: ${message}`,
        instead,
      })),
    );
  if (!drawn.ok) return named(drawn.faults);
  const map = mapOf(element, page);
  if (!map.ok) return map;
  const hasArcs = drawn.value.some(({ pieces }) => pieces.some(({ kind }) => kind === 'arc'));
  if (hasArcs && !keepsCircles(map.value))
    return textFault(
      `${what} is stretched or skewed by a transform, so its arcs are no circles any more`,
      'apply the transform in the drawing program, and draw circular arcs',
    );
  const chains = drawn.value.map((one) => ({
    what,
    vertices: verticesOf(one, map.value),
    isClosed: one.isClosed,
  }));
  const curveCount = drawn.value.reduce(
    (sum, { pieces }) => sum + pieces.filter(({ kind }) => kind === 'curve').length,
    0,
  );
  const isFinite = chains.every(({ vertices }) =>
    vertices.every(({ at }) => Number.isFinite(at.x + at.y)),
  );
  return isFinite
    ? ok({ chains, curveCount })
    : named([{ message: 'it has a place that is no number', instead: 'save the drawing again' }]);
}

function verticesOf({ from, pieces, isClosed }: SubPath, map: Map2): readonly PathVertex[] {
  const winding = windingOf(map);
  const vertices: { at: PathVertex['at']; bulge: number }[] = [
    { at: mappedBy(map, from.x, from.y), bulge: 0 },
  ];
  for (const piece of pieces) {
    const start = vertices.at(-1)!;
    const to = mappedBy(map, piece.to.x, piece.to.y);
    if (piece.kind === 'arc') start.bulge = piece.bulge * winding;
    if (piece.kind === 'curve') {
      const by = piece.by.map(({ x, y }) => mappedBy(map, x, y));
      for (const at of placesOnCurve([start.at, ...by, to])) vertices.push({ at, bulge: 0 });
    }
    vertices.push({ at: to, bulge: 0 });
  }
  const [first, last] = [vertices[0]!, vertices.at(-1)!];
  // A closed path that also returns to its beginning has that place twice.
  const returns =
    isClosed && vertices.length > 1 && first.at.x === last.at.x && first.at.y === last.at.y;
  return returns ? vertices.slice(0, -1) : vertices;
}
