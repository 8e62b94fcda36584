import stl from '@jscad/stl-serializer';
import { invariant } from '../num/invariant.ts';
import { checkMesh } from '../jig/mesh.ts';
import { facetsOf, type Solid } from '../jig/solid.ts';

/** The solid as a binary STL file, millimetres; the same bytes for the same solid. */
export function stlOf(solid: Solid): Uint8Array {
  const { openEdgeCount, signedVolumeMm3 } = checkMesh(facetsOf(solid));
  invariant(openEdgeCount === 0, `a solid with ${openEdgeCount} open edges must not be written`);
  invariant(signedVolumeMm3 > 0, `a solid of ${signedVolumeMm3} mm3 must not be written`);
  const parts = stl.serialize({ binary: true }, solid).map((part) => new Uint8Array(part));
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let from = 0;
  for (const part of parts) {
    bytes.set(part, from);
    from += part.length;
  }
  return bytes;
}
