import type { Outline } from '../../plane/outline.ts';
import type { Html } from '../../sheet/html.ts';
import { joined, markup } from '../../sheet/html.ts';
import { drawing } from '../../sheet/svg.ts';
import type { LevelFace } from './block.ts';
import type { Scene, Thing } from './scene.ts';

const WIDTH_MM = 150;
const MARGIN_MM = 2;
/** Seen from near left, from this far round and above. */
const ROUND_RAD = (-28 * Math.PI) / 180;
const ABOVE_RAD = (38 * Math.PI) / 180;
/** Places on paper are whole steps, so many to a millimetre: fine enough for a screen, and short. */
const STEPS_TO_MM = 12;
const whole = (mm: number): number => Math.round(mm * STEPS_TO_MM);
/** Walls are drawn in stretches no longer than this, so that their middles tell which is further off, mm. */
const STRETCH_MM = 18;

/** The scene seen from near left and above, without a script; what hides is drawn over what is hidden. */
export function stillPicture(scene: Scene, name: string): Html {
  const places = scene.things.flatMap(({ blocks }) =>
    blocks.flatMap(({ layers }) =>
      layers.flatMap(({ loops, lowMm, highMm }) =>
        loops.flatMap((loop) => loop.flatMap((p) => [seen(p, lowMm), seen(p, highMm)])),
      ),
    ),
  );
  const least = (of: (p: Flat) => number): number =>
    places.reduce((low, p) => Math.min(low, of(p)), Infinity);
  const [left, right] = [least(({ x }) => x), -least(({ x }) => -x)];
  const [top, bottom] = [least(({ y }) => y), -least(({ y }) => -y)];
  const scale = (WIDTH_MM - 2 * MARGIN_MM) / (right - left);
  const onPaper = ({ x, y }: Flat): string =>
    `${whole(MARGIN_MM + (x - left) * scale)} ${whole(MARGIN_MM + (y - top) * scale)}`;
  const height = 2 * MARGIN_MM + (bottom - top) * scale;
  return drawing(
    name,
    WIDTH_MM,
    height,
    markup`<g transform="scale(${1 / STEPS_TO_MM})" stroke-linecap="round">${drawn(piecesOf(scene), onPaper)}</g>`,
  );
}

interface Flat {
  readonly x: number;
  readonly y: number;
}

type At = { readonly x: number; readonly y: number };

/** Onto the page: right, and down. */
function seen({ x, y }: At, z: number): Flat {
  return {
    x: x * Math.cos(ROUND_RAD) + y * Math.sin(ROUND_RAD),
    y: -(z * Math.cos(ABOVE_RAD) + away({ x, y }) * Math.sin(ABOVE_RAD)),
  };
}

/** How far off along the bed. */
const away = ({ x, y }: At): number => y * Math.cos(ROUND_RAD) - x * Math.sin(ROUND_RAD);

interface Piece {
  readonly loops: readonly (readonly Flat[])[];
  readonly fill: string;
  /** Edges that are drawn as lines. */
  readonly edges: readonly (readonly Flat[])[];
}

/**
 * Slab by slab between the heights at which anything begins or ends, lowest first; in each slab its walls, furthest
 * first, then the faces on top of it. A line of sight goes down and away, so nothing drawn later is behind what is
 * drawn before.
 */
function piecesOf({ things }: Scene): readonly Piece[] {
  const layers = things.flatMap((thing) =>
    thing.blocks.flatMap(({ layers: all }) =>
      all.map((layer, k) => ({ thing, ...layer, isLowest: k === 0 })),
    ),
  );
  const faces = things.flatMap((thing) =>
    thing.blocks.flatMap((block) =>
      block.faces.filter(({ looks }) => looks === 'up').map((face) => ({ thing, face })),
    ),
  );
  const heights = [...new Set(layers.flatMap(({ lowMm, highMm }) => [lowMm, highMm]))].sort(
    (a, b) => a - b,
  );
  return heights.slice(1).flatMap((high, k) => {
    const low = heights[k]!;
    const walls = layers
      .filter(({ lowMm, highMm }) => lowMm <= low && highMm >= high)
      .flatMap(({ thing, loops, lowMm, isLowest }) =>
        loops.flatMap((loop) => wallsOf(thing, loop, low, high, isLowest && lowMm === low)),
      )
      .sort((a, b) => b.away - a.away);
    const tops = faces
      .filter(({ face }) => face.atMm === high)
      .map(({ thing, face }) => topOf(thing, face));
    return [...walls.map(({ piece }) => piece), ...tops];
  });
}

function wallsOf(
  thing: Thing,
  loop: Outline<'layout'>,
  low: number,
  high: number,
  standsHere: boolean,
) {
  return loop.flatMap((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length === 0) return [];
    // Outwards is to the right of the way round.
    const normal = { x: (q.y - p.y) / length, y: (p.x - q.x) / length };
    if (away(normal) > -1e-9) return [];
    const count = Math.max(1, Math.ceil(length / STRETCH_MM));
    const fill = SHADES[thing.kind][away(normal) < -0.75 ? 1 : 2];
    return Array.from({ length: count }, (_, j) => {
      const at = (share: number): At => ({
        x: p.x + share * (q.x - p.x),
        y: p.y + share * (q.y - p.y),
      });
      const [a, b, middle] = [at(j / count), at((j + 1) / count), at((j + 0.5) / count)];
      const foot: readonly [Flat, Flat] = [seen(a, low), seen(b, low)];
      const edges = [
        ...(standsHere ? [foot] : []),
        ...(j === 0 && turnsAt(loop, i) ? [[seen(a, low), seen(a, high)] as const] : []),
        ...(j === count - 1 && turnsAt(loop, (i + 1) % loop.length)
          ? [[seen(b, low), seen(b, high)] as const]
          : []),
      ];
      const loops = [[...foot, seen(b, high), seen(a, high)]];
      return { away: away(middle), piece: { loops, fill, edges } };
    });
  });
}

/** Whether an outline turns enough at a corner for an edge to be seen there: 20 degrees. */
function turnsAt(loop: Outline<'layout'>, i: number): boolean {
  const [o, p, q] = [loop.at(i - 1)!, loop[i]!, loop[(i + 1) % loop.length]!];
  const [ax, ay, bx, by] = [p.x - o.x, p.y - o.y, q.x - p.x, q.y - p.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > Math.PI / 9;
}

function topOf(thing: Thing, { loops, atMm }: LevelFace): Piece {
  const flat = loops.map((loop) => loop.map((p) => seen(p, atMm)));
  const edges = flat.map((loop) => [...loop, loop[0]!]);
  return { loops: flat, fill: SHADES[thing.kind][0], edges };
}

/** Of what looks up, towards the viewer, and aside: by how dark they are, not by their colour alone. */
const SHADES: Readonly<Record<Thing['kind'], readonly [string, string, string]>> = {
  bed: ['#f4f3ef', '#e4e2db', '#d8d5cc'],
  blank: ['#ecd9b4', '#d3b987', '#bfa26d'],
  locates: ['#b9c9d6', '#8ea6b8', '#6f899c'],
  holds: ['#8b8f96', '#6a6e75', '#51555b'],
};

/** Neighbours in the order that are filled alike go into one path, as long as none of them has edges to draw. */
function drawn(pieces: readonly Piece[], onPaper: (p: Flat) => string): Html {
  const out: Html[] = [];
  let run = { fill: '', shape: '' };
  const close = (): void => {
    if (run.shape !== '') out.push(filled(run.shape, run.fill, 'nonzero'));
    run = { fill: '', shape: '' };
  };
  for (const { loops, fill, edges } of pieces) {
    const shape = loops.map((loop) => `M${loop.map(onPaper).join('L')}Z`).join('');
    if (run.fill !== fill || loops.length > 1) close();
    if (loops.length > 1) out.push(filled(shape, fill, 'evenodd'));
    else run = { fill, shape: run.shape + shape };
    if (edges.length === 0) continue;
    close();
    const lines = edges.map((line) => `M${line.map(onPaper).join('L')}`).join('');
    out.push(
      markup`<path d="${lines}" fill="none" stroke="#33302a" stroke-width="${0.22 * STEPS_TO_MM}"/>`,
    );
  }
  close();
  return joined(out);
}

/** The thin stroke in its own colour closes the hairline to its neighbours. */
const filled = (shape: string, fill: string, rule: 'nonzero' | 'evenodd'): Html =>
  markup`<path d="${shape}" fill="${fill}" fill-rule="${rule}" stroke="${fill}" stroke-width="${0.12 * STEPS_TO_MM}"/>`;
