import { expect } from 'vitest';
import { grown } from '../../../src/plane/clip.ts';
import { signedAreaMm2 } from '../../../src/plane/measure.ts';
import { plateOutline, sinksOf, type Sink } from '../../../src/jig/plate/plate.ts';
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
  expectOnePieceWhenEroded(part);
  for (const note of [part.purpose, ...part.notes]) expect(note).toMatch(/^[A-Z0-9].*\.$/s);
}

/** Of a print, bench practice: 4 lines. */
const LEAST_WALL_MM = 1.6;

/** Half the least wall taken off all round leaves one piece, at the foot, at the top and between. */
function expectOnePieceWhenEroded({ form }: JigPart): void {
  const sections =
    form.kind === 'leaning'
      ? form.profile.levels.map(({ outline, holes }) => [outline, ...holes])
      : sectionsOf(form.plate.words.length === 0 ? form.plate : { ...form.plate, words: [] });
  for (const section of sections) {
    const left = grown(section, -LEAST_WALL_MM / 2, 0.02).filter((loop) => signedAreaMm2(loop) > 0);
    expect(left).toHaveLength(1);
  }
}

/** A plate cut level at its top and at its foot. */
function sectionsOf(plate: Parameters<typeof plateOutline>[0]) {
  const loops = (open: (sink: Sink) => Sink['loop'] | null) =>
    sinksOf(plate).flatMap((sink) => {
      const loop = open(sink);
      return loop === null ? [] : [loop.toReversed()];
    });
  const through = (sink: Sink): Sink['loop'] | null =>
    sink.depthMm === null ? sink.loop : sink.within === null ? null : through(sink.within);
  return [
    [plateOutline(plate), ...loops((sink) => sink.mouth?.loop ?? sink.loop)],
    [plateOutline(plate), ...loops(through)],
  ];
}
