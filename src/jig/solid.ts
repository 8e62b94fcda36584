import jscad from '@jscad/modeling';
import { invariant } from '../num/invariant.ts';
import { signedAreaMm2 } from '../plane/measure.ts';
import type { Frame } from '../plane/point.ts';
import type { Outline } from '../plane/outline.ts';
import type { Facet } from './mesh.ts';
import type { Level, Profile } from './stop-part.ts';

const { extrudeFromSlices, slice } = jscad.extrusions;

/** A solid of the modelling library. Never freeze one: reading it assigns to it. */
export type Solid = ReturnType<typeof jscad.geometries.geom3.create>;

/** The solid between the levels of a profile, mm, in the profile's own frame. */
export function solidOf(profile: Profile): Solid {
  const { levels } = profile;
  const first = levels[0];
  invariant(first !== undefined && levels.length >= 2, 'a profile has two levels or more');
  for (const level of levels) {
    invariant(
      shapeOf(level) === shapeOf(first),
      `level at ${level.zMm} has vertices ${shapeOf(level)}, the first ${shapeOf(first)}`,
    );
    // The library takes a hole wound like the outline for a second body inside the first, in silence.
    invariant(
      signedAreaMm2(level.outline) > 0 && level.holes.every((hole) => signedAreaMm2(hole) < 0),
      `level at ${level.zMm} has an outline or a hole wound the wrong way`,
    );
  }
  return extrudeFromSlices(
    {
      numberOfSlices: levels.length,
      callback: (_progress: number, index: number) => sliceAt(levels[index]!),
    },
    // The callback knows its levels; the library insists on a base to hand to it.
    sliceAt(first),
  );
}

/** The solid's facets, counter-clockwise seen from outside. */
export function facetsOf(solid: Solid): readonly Facet[] {
  return jscad.geometries.geom3
    .toPolygons(solid)
    .map((polygon) => polygon.vertices.map(([x, y, z]) => ({ x, y, z })));
}

/** A solid of facets that are already closed and rightly wound. */
export function solidOfFacets(facets: readonly Facet[]): Solid {
  const { geom3, poly3 } = jscad.geometries;
  return geom3.create(facets.map((facet) => poly3.create(facet.map((p) => [p.x, p.y, p.z]))));
}

/** Triangles between some loops at one height: outer ones counter-clockwise, holes clockwise. */
export function facesBetween(
  loops: readonly (readonly { readonly x: number; readonly y: number }[])[],
  zMm: number,
): readonly Facet[] {
  const flat = slice.create(loops.flatMap((loop) => edgesAt(loop, zMm)));
  return slice
    .toPolygons(flat)
    .map((polygon) => polygon.vertices.map(([x, y, z]) => ({ x, y, z })));
}

/** Grid to which the STL writer rounds this solid, mm. */
export function snapGridMm(solid: Solid): number {
  return jscad.measurements.measureEpsilon(solid);
}

function sliceAt(level: Level): ReturnType<typeof slice.create> {
  return slice.create([level.outline, ...level.holes].flatMap((loop) => edgesAt(loop, level.zMm)));
}

type Edge3 = [[number, number, number], [number, number, number]];

function edgesAt(loop: Outline<Frame>, zMm: number): Edge3[] {
  return loop.map((p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return [
      [p.x, p.y, zMm],
      [q.x, q.y, zMm],
    ];
  });
}

const shapeOf = (level: Level): string =>
  [level.outline, ...level.holes].map((loop) => loop.length).join('+');
