// The only file that speaks to three.
import {
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  EdgesGeometry,
  Float32BufferAttribute,
  Group,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  Scene,
  ShapeUtils,
  Vector2,
  WebGLRenderer,
} from 'three';
import type { Orbit } from './orbit.ts';
import type { Placed, Thing } from './scene.ts';

/** Both placings ready to be drawn on a canvas. */
export interface Stage {
  /** Shows one placing, without the things whose kind is hidden. */
  readonly show: (placing: number, hidden: ReadonlySet<string>) => void;
  readonly draw: (from: Orbit) => void;
}

const COLOURS: Readonly<Record<Thing['kind'], string>> = {
  bed: '#efece4',
  blank: '#e6cc9c',
  locates: '#8fb0c9',
  holds: '#70757d',
};
const EDGES = '#2b2822';
/** Two flats that bend less are one skin, degrees. */
const BEND_DEG = 22;

/** @throws Error where the page can draw no solids. */
export function stageOn(canvas: HTMLCanvasElement, placings: readonly Placed[]): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
  const scene = new Scene();
  const box = boxOf(placings);
  const groups = placings.map(({ things }) => {
    const made = things.map((thing) => ({ kind: thing.kind, group: groupOf(thing, box.middle) }));
    scene.add(...made.map(({ group }) => group));
    return made;
  });
  scene.add(new HemisphereLight(new Color('#ffffff'), new Color('#8d8677'), 2.1));
  const lamp = new DirectionalLight(new Color('#ffffff'), 1.5);
  scene.add(lamp);
  const { radius } = box;
  const camera = new OrthographicCamera(-1, 1, 1, -1, 0, 4 * radius);
  return {
    show: (placing, hidden) => {
      groups.forEach((made, k) => {
        for (const { kind, group } of made) group.visible = k === placing && !hidden.has(kind);
      });
    },
    draw: ({ turnDeg, aboveDeg, zoom }) => {
      const [width, height] = [Math.max(1, canvas.clientWidth), Math.max(1, canvas.clientHeight)];
      renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
      renderer.setSize(width, height, false);
      const [turn, above] = [(turnDeg * Math.PI) / 180, (aboveDeg * Math.PI) / 180];
      const [flat, up] = [Math.cos(above), Math.sin(above)];
      camera.position.set(
        2 * radius * flat * Math.sin(turn),
        -2 * radius * flat * Math.cos(turn),
        2 * radius * up,
      );
      // Away from the operator is up on the page, also from straight above.
      camera.up.set(-up * Math.sin(turn), up * Math.cos(turn), flat);
      camera.lookAt(0, 0, 0);
      const tall =
        Math.max(radius * 0.72, (radius * height) / width, (radius * 1.02 * height) / width) / zoom;
      const wide = (tall * width) / height;
      Object.assign(camera, { left: -wide, right: wide, top: tall, bottom: -tall });
      camera.updateProjectionMatrix();
      lamp.position.set(
        radius * Math.sin(turn - 0.6),
        -radius * Math.cos(turn - 0.6),
        1.6 * radius,
      );
      renderer.render(scene, camera);
    },
  };
}

interface Middle {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The middle of all that stands in any placing, and how far the furthest is from it, mm. */
function boxOf(placings: readonly Placed[]): { readonly middle: Middle; readonly radius: number } {
  const [xs, ys] = [0, 1].map((axis) =>
    placings.flatMap(({ things }) =>
      things.flatMap(({ walls }) =>
        walls.flatMap(({ loop }) => loop.filter((_, i) => i % 2 === axis)),
      ),
    ),
  ) as [number[], number[]];
  const ends = (values: readonly number[]): readonly [number, number] => [
    values.reduce((a, b) => Math.min(a, b), Infinity) / 100,
    values.reduce((a, b) => Math.max(a, b), -Infinity) / 100,
  ];
  const [[x0, x1], [y0, y1]] = [ends(xs), ends(ys)];
  return {
    middle: { x: (x0 + x1) / 2, y: (y0 + y1) / 2, z: 8 },
    radius: Math.hypot(x1 - x0, y1 - y0) / 2,
  };
}

function groupOf(thing: Thing, middle: Middle): Group {
  const geometry = new BufferGeometry();
  const corners = [...wallCorners(thing), ...faceCorners(thing), ...skinCorners(thing)];
  const values = corners.map((value, i) => value / 100 - [middle.x, middle.y, middle.z][i % 3]!);
  geometry.setAttribute('position', new Float32BufferAttribute(values, 3));
  geometry.computeVertexNormals();
  const skin = new MeshLambertMaterial({
    color: new Color(COLOURS[thing.kind]),
    side: DoubleSide,
    // Lines lie on the skin, not half within it.
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  });
  const lines = new LineSegments(
    new EdgesGeometry(geometry, BEND_DEG),
    new LineBasicMaterial({ color: new Color(EDGES) }),
  );
  const group = new Group();
  group.add(new Mesh(geometry, skin), lines);
  return group;
}

const wallCorners = ({ walls }: Thing): readonly number[] =>
  walls.flatMap(({ loop, low, high }) => {
    const out: number[] = [];
    for (let i = 0; i < loop.length; i += 2) {
      const [x, y] = [loop[i]!, loop[i + 1]!];
      const [u, v] = [loop[(i + 2) % loop.length]!, loop[(i + 3) % loop.length]!];
      if (x === u && y === v) continue;
      out.push(x, y, low, u, v, low, u, v, high, x, y, low, u, v, high, x, y, high);
    }
    return out;
  });

const faceCorners = ({ faces }: Thing): readonly number[] =>
  faces.flatMap(({ loops, at, up }) => {
    const [outer, ...holes] = loops.map(placesOf);
    if (outer === undefined) return [];
    const all = [outer, ...holes].flat();
    return ShapeUtils.triangulateShape(outer, holes).flatMap(([a, b, c]) =>
      (up ? [a, b, c] : [a, c, b]).flatMap((k) => [all[k]!.x, all[k]!.y, at]),
    );
  });

const skinCorners = ({ triangles: { corners, indexes } }: Thing): readonly number[] =>
  indexes.flatMap((k) => corners.slice(3 * k, 3 * k + 3));

function placesOf(loop: readonly number[]): Vector2[] {
  const places: Vector2[] = [];
  for (let i = 0; i < loop.length; i += 2) places.push(new Vector2(loop[i]!, loop[i + 1]!));
  return places;
}
