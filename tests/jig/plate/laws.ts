import { expect } from 'vitest';
import { checkMesh } from '../../../src/jig/mesh.ts';
import { stopNumbers } from '../../../src/jig/numbers.ts';
import { plateFootMm, plateSolid } from '../../../src/jig/plate/plate-solid.ts';
import { plateOutline, sinksOf, type Plate, type Sink } from '../../../src/jig/plate/plate.ts';
import { facetsOf } from '../../../src/jig/solid.ts';
import { signedAreaMm2 } from '../../../src/plane/measure.ts';
import { toEdgeMm, isInside } from '../../../src/plane/distance.ts';
import { manifoldOf } from '../oracle.ts';

/** Everything that must hold of the solid of any plate. */
export async function expectLawfulPlate(plate: Plate): Promise<void> {
  const facets = facetsOf(plateSolid(plate));
  const { openEdgeCount, signedVolumeMm3 } = checkMesh(facets);
  expect(openEdgeCount).toBe(0);
  expect(Math.abs(signedVolumeMm3 - volumeMm3(plate))).toBeLessThan(1e-9 * signedVolumeMm3);
  const oracle = await manifoldOf(facets);
  expect(oracle.status).toBe('closed');
  expect(oracle.genus).toBe(
    plate.holes.filter((hole) => hole.depthMm === null).length + (plate.windows ?? []).length,
  );
  // The other library keeps places in 24 bits.
  expect(Math.abs(oracle.volumeMm3 - signedVolumeMm3)).toBeLessThan(1e-5 * signedVolumeMm3);
  const sinks = sinksOf(plate);
  plate.holes.forEach((hole, i) => {
    const sink = sinks[i]!;
    const loop = (hole.seat === null ? sink : sink.within!).loop;
    // A pin of the nominal size touches no chord of its hole.
    for (const end of hole.ends) {
      expect(isInside(end, loop)).toBe(true);
      expect(toEdgeMm(end, loop)).toBeGreaterThan(hole.radiusMm - 1e-9);
      expect(toEdgeMm(end, loop)).toBeLessThan(hole.radiusMm + stopNumbers.chordMm);
    }
  });
}

/**
 * Outline times thickness less the foot's chamfer and what is hollow, in closed form: a foot drawn in
 * by c over its perimeter P loses P c^2 / 2, less what its corners count twice, c^3 / 3 for every
 * tangent of half a corner's turn (both halves of each).
 */
function volumeMm3(plate: Plate): number {
  const outline = plateOutline(plate);
  const c = plateFootMm(plate);
  let perimeter = 0;
  let tangents = 0;
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    const r = outline[(i + 2) % outline.length]!;
    const [dx, dy, ex, ey] = [q.x - p.x, q.y - p.y, r.x - q.x, r.y - q.y];
    perimeter += Math.hypot(dx, dy);
    tangents += Math.tan(Math.atan2(dx * ey - dy * ex, dx * ex + dy * ey) / 2);
  });
  const lost = (perimeter * c * c) / 2 - (tangents * c ** 3) / 3;
  const hollow = sinksOf(plate).reduce((sum, sink) => sum + hollowMm3(sink, plate.thickMm), 0);
  return signedAreaMm2(outline) * plate.thickMm - lost - hollow;
}

function hollowMm3({ mouth, ...sink }: Sink, downMm: number): number {
  if (mouth === undefined) return straightMm3(sink, downMm);
  const middle = sink.loop.map((p, i) => ({
    x: (p.x + mouth.loop[i]!.x) / 2,
    y: (p.y + mouth.loop[i]!.y) / 2,
  }));
  // Every vertex runs straight, so the area is quadratic in z: Simpson is exact.
  const areas = [sink.loop, middle, middle, middle, middle, mouth.loop].map(signedAreaMm2);
  const flared = (mouth.deepMm * areas.reduce((sum, a) => sum + a, 0)) / 6;
  return flared + straightMm3(sink, downMm - mouth.deepMm);
}

function straightMm3({ loop, islands, depthMm, within }: Sink, downMm: number): number {
  const area = signedAreaMm2(loop) - islands.reduce((sum, one) => sum + signedAreaMm2(one), 0);
  if (depthMm === null) return area * downMm;
  return area * depthMm + (within === null ? 0 : hollowMm3(within, downMm - depthMm));
}
