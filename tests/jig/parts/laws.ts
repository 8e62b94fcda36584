import { expect } from 'vitest';
import { checkMesh } from '../../../src/jig/mesh.ts';
import { partFacets, type JigPart } from '../../../src/jig/parts/part.ts';
import { manifoldOf } from '../oracle.ts';
import { expectLawfulPlate } from '../plate/laws.ts';

/** Everything that must hold of any part: one closed body of the right volume, that stands on the bed. */
export async function expectLawfulPart(part: JigPart): Promise<void> {
  if (part.form.kind === 'plate') await expectLawfulPlate(part.form.plate);
  const facets = partFacets(part);
  const { openEdgeCount, signedVolumeMm3 } = checkMesh(facets);
  expect(openEdgeCount).toBe(0);
  const oracle = await manifoldOf(facets);
  expect(oracle.status).toBe('closed');
  expect(Math.abs(oracle.volumeMm3 - signedVolumeMm3)).toBeLessThan(1e-5 * signedVolumeMm3);
  const zs = facets.flat().map((p) => p.z);
  expect(zs.reduce((low, z) => Math.min(low, z), Infinity)).toBe(0);
  expect(part.count).toBeGreaterThan(0);
  for (const note of [part.purpose, ...part.notes]) expect(note).toMatch(/^[A-Z0-9].*\.$/s);
}
