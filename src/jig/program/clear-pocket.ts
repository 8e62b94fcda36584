import { grown } from '../../plane/clip.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import { depthsTo, type Feeds } from './feeds.ts';
import type { Move } from './program.ts';

/** Lanes of a pocket overlap. Common practice, no source. */
const LANE_PER_DIAMETER = 0.45;
/** Left on the walls for the last round, mm. Common practice, no source. */
const LEAVE_MM = 0.3;
/** Over the surface, where it goes on slowly. */
const OVER_MM = 1;
const CHORD_MM = 0.01;

type At = { readonly x: number; readonly y: number };

/**
 * Clears what lies within an outline (counter-clockwise, from the program's zero) between two heights:
 * at each depth rounds from the inside out, then the walls once more over as much height as the flutes
 * reach. Every round climbs. No moves: the cutter does not go in.
 */
export function clearPocket(
  outline: Outline<'layout'>,
  topMm: number,
  bottomMm: number,
  fluteMm: number,
  feeds: Feeds,
): readonly Move[] {
  const r = feeds.radiusMm;
  const walls = loopsOf([outline], -r);
  if (walls.length === 0) return [];
  const rough = roundsIn(outline, r + LEAVE_MM, 2 * r * LANE_PER_DIAMETER);
  return [
    ...depthsTo(topMm, bottomMm, feeds.stepMm).flatMap((z) =>
      (rough.length === 0 ? walls : rough).flatMap((loop) => roundAt(loop, z, topMm, feeds)),
    ),
    ...depthsTo(topMm, bottomMm, fluteMm).flatMap((z) =>
      walls.flatMap((loop) => roundAt(loop, z, topMm, feeds)),
    ),
  ];
}

/** From the innermost outwards. */
function roundsIn(
  outline: Outline<'layout'>,
  firstMm: number,
  laneMm: number,
): readonly Outline<'layout'>[] {
  const all: (readonly Outline<'layout'>[])[] = [];
  for (let inMm = firstMm; ; inMm += laneMm) {
    const loops = loopsOf([outline], -inMm);
    if (loops.length === 0) break;
    all.unshift(loops);
  }
  return all.flat();
}

const loopsOf = (outlines: readonly Outline<'layout'>[], byMm: number): Outline<'layout'>[] =>
  grown(outlines, byMm, CHORD_MM).filter((loop) => signedAreaMm2(loop) > 1e-6);

/** Once round a loop at one height, coming down from the safe height and going up to it again. */
export function roundAt(
  loop: readonly At[],
  zMm: number,
  topMm: number,
  feeds: Feeds,
): readonly Move[] {
  const [first] = loop;
  if (first === undefined) return [];
  const cut = (p: At, z: number, feedMmPerMin: number): Move => ({
    kind: 'cut',
    to: { x: p.x, y: p.y, z },
    feedMmPerMin,
  });
  return [
    { kind: 'over', x: first.x, y: first.y },
    cut(first, topMm + OVER_MM, feeds.alongMmPerMin),
    cut(first, zMm, feeds.downMmPerMin),
    ...[...loop.slice(1), first].map((p) => cut(p, zMm, feeds.alongMmPerMin)),
    { kind: 'up' },
  ];
}
