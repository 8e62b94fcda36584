import { hypotenuse } from '../../num/elementary.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { Path, PathVertex } from '../../plane/path.ts';
import { reversedPath } from '../../plane/path.ts';
import { flattened, pathAreaMm2 } from '../../plane/path-measure.ts';
import type { Point } from '../../plane/point.ts';
import { said } from '../text/said.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import { crossingOf } from './crossing.ts';
import type { Chain, Pieces } from './pieces.ts';

/** Ends this near are one place, mm: drawings round to a few decimals, and nobody mills finer. */
export const JOINED_MM = 0.01;
/** More corners than any part has; more are a picture that was traced. */
const MOST_VERTICES = 5000;

/** All pieces joined into one closed path, counter-clockwise; or why they are not one. */
export function closedPath({ chains, called }: Pieces): Result<Path, TextFault> {
  const count = chains.reduce((sum, { vertices }) => sum + vertices.length, 0);
  if (count > MOST_VERTICES)
    return textFault(
      `${called} has ${count} corners, and at most ${MOST_VERTICES} are read`,
      'draw it with fewer lines and arcs',
    );
  const far = chains.flatMap(({ vertices }) => vertices).find(({ at }) => isFar(at));
  if (far !== undefined)
    return textFault(
      `${called} reaches ${said(far.at.x)}, ${said(far.at.y)} mm, farther than anything here can be`,
      'check the units of the drawing',
    );
  const joined = joinedChain(chains, called);
  if (!joined.ok) return joined;
  const path = withoutDoubles(joined.value);
  const area = path.length < 2 ? 0 : pathAreaMm2(path);
  if (Math.abs(area) < JOINED_MM * JOINED_MM)
    return textFault(`${called} has no area`, 'draw one closed outline');
  const crossing = crossingOf(flattened(path, JOINED_MM));
  if (crossing !== null)
    return textFault(
      `${called} crosses itself near ${said(crossing.x)}, ${said(crossing.y)} mm`,
      'draw one closed outline that does not',
    );
  return ok(area < 0 ? reversedPath(path) : path);
}

const isFar = ({ x, y }: Point<'blank'>): boolean =>
  !(Math.abs(x) <= 10_000 && Math.abs(y) <= 10_000);

const isSamePlace = (a: Point<'blank'>, b: Point<'blank'>): boolean =>
  hypotenuse(a.x - b.x, a.y - b.y) <= JOINED_MM;

function joinedChain(chains: readonly Chain[], called: string): Result<Path, TextFault> {
  const [first] = chains;
  if (first === undefined)
    return textFault(`${called} holds no line, arc, polyline or circle`, 'draw the outline on it');
  const whole = chains.find(({ isClosed }) => isClosed);
  if (whole !== undefined) {
    const other = chains.find((chain) => chain !== whole);
    if (other === undefined) return ok(whole.vertices);
    return textFault(
      `${called} holds more than one outline: ${whole.what} is closed by itself, and so ${other.what} is one too many`,
      'give each outline its own name',
    );
  }
  const open = [...chains];
  let vertices = [...open.shift()!.vertices];
  let end = first;
  while (open.length > 0) {
    const place = vertices.at(-1)!.at;
    const next = open.filter((one) => touches(one, place));
    const [only] = next;
    if (only === undefined) return openAt(called, end, place, open.length);
    if (next.length > 1)
      return textFault(
        `${called} branches at ${said(place.x)}, ${said(place.y)} mm: ${only.what} and ${next[1]!.what} both begin there`,
        'draw one closed outline',
      );
    open.splice(open.indexOf(only), 1);
    const onward = isSamePlace(only.vertices[0]!.at, place)
      ? only.vertices
      : backward(only.vertices);
    // The place where two pieces meet is that of the one that was there before.
    vertices = [
      ...vertices.slice(0, -1),
      { at: place, bulge: onward[0]!.bulge },
      ...onward.slice(1),
    ];
    end = only;
  }
  const [start, last] = [vertices[0]!.at, vertices.at(-1)!.at];
  if (!isSamePlace(start, last)) return openAt(called, end, last, 0);
  return ok(vertices.slice(0, -1));
}

const touches = ({ vertices }: Chain, place: Point<'blank'>): boolean =>
  isSamePlace(vertices[0]!.at, place) || isSamePlace(vertices.at(-1)!.at, place);

function openAt(
  called: string,
  { what }: Chain,
  { x, y }: Point<'blank'>,
  leftCount: number,
): Result<never, TextFault> {
  const more = leftCount === 0 ? '' : `, and ${leftCount} more pieces are left`;
  return textFault(
    `${called} is not closed: ${what} ends at ${said(x)}, ${said(y)} mm, and nothing begins within ${JOINED_MM} mm of there${more}`,
    'close the outline, or give each outline its own name',
  );
}

/** An open run the other way round: the bulge belongs to the piece that leaves a vertex. */
function backward(vertices: readonly PathVertex[]): readonly PathVertex[] {
  return vertices.toReversed().map(({ at }, index) => {
    const before = vertices[vertices.length - 2 - index];
    return { at, bulge: before === undefined || before.bulge === 0 ? 0 : -before.bulge };
  });
}

/** Without vertices that stand on the one before them. */
function withoutDoubles(path: Path): Path {
  const kept: PathVertex[] = [];
  for (const vertex of path) {
    const before = kept.at(-1);
    if (before !== undefined && isSamePlace(before.at, vertex.at))
      kept[kept.length - 1] = { at: before.at, bulge: vertex.bulge };
    else kept.push(vertex);
  }
  const isClosedTwice = kept.length > 1 && isSamePlace(kept[0]!.at, kept.at(-1)!.at);
  return isClosedTwice ? kept.slice(0, -1) : kept;
}
