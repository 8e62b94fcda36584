import type { Facet } from '../../src/jig/mesh.ts';

/** Reads a binary STL file, straight from the description of the format: nothing of the writer's. */
export function readStl(bytes: Uint8Array): readonly Facet[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * count)
    throw new Error(`${bytes.length} bytes for ${count} triangles`);
  return Array.from({ length: count }, (_, i) =>
    [12, 24, 36].map((offset) => {
      const at = 84 + 50 * i + offset;
      return {
        x: view.getFloat32(at, true),
        y: view.getFloat32(at + 4, true),
        z: view.getFloat32(at + 8, true),
      };
    }),
  );
}
