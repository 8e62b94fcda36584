import { invariant } from '../../num/invariant.ts';
import type { Facet } from '../mesh.ts';
import { stopNumbers } from '../numbers.ts';
import { facesBetween, solidOfFacets, type Solid } from '../solid.ts';
import type { Xy } from './drawing.ts';
import { shifted } from './shifted.ts';
import { plateOutline, sinksOf, type Plate, type Sink } from './plate.ts';

type Loop = readonly Xy[];

/**
 * The solid of a plate, lying on z = 0, its foot drawn in against the swelling of first layers. Built
 * from rings, without a boolean, so that hundreds of holes take a fraction of a second and every place
 * is exact.
 */
export const plateSolid = (plate: Plate): Solid => solidOfFacets(plateFacets(plate));

/** Its facets, counter-clockwise seen from outside. */
export const plateFacets = (plate: Plate): readonly Facet[] =>
  facetsWithFoot(plate, plateFootMm(plate));

/** How far the foot of a plate is drawn in, mm: not at all where its sides are too short for it. */
export function plateFootMm(plate: Plate): number {
  const wantedMm = Math.min(stopNumbers.footChamferMm, plate.thickMm / 4);
  return shifted(plateOutline(plate), wantedMm) === null ? 0 : wantedMm;
}

/** The same with a foot of its own; a picture has none, its chamfer would show as specks. */
export function facetsWithFoot(plate: Plate, footMm: number): readonly Facet[] {
  const outline = plateOutline(plate);
  const topMm = plate.thickMm;
  const sinks = sinksOf(plate);
  const foot = drawnIn(outline, footMm);
  return [
    ...facesBetween(
      [
        outline,
        ...sinks.flatMap(({ loop, islands, mouth }) => [
          (mouth?.loop ?? loop).toReversed(),
          ...islands,
        ]),
      ],
      topMm,
    ),
    ...downwards(
      facesBetween([foot, ...sinks.flatMap(throughLoops).map((loop) => loop.toReversed())], 0),
    ),
    ...(footMm === 0 ? [] : walls(foot, 0, outline, footMm)),
    ...walls(outline, footMm, outline, topMm),
    ...sinks.flatMap((sink) => sinkFacets(sink, topMm, topMm)),
  ];
}

/** Walls and floor of what is open at `fromMm` in a body whose top is at `topMm`. */
export function sinkFacets(sink: Sink, fromMm: number, topMm: number): readonly Facet[] {
  const { loop, islands, depthMm, within, mouth } = sink;
  const floorMm = depthMm === null ? 0 : topMm - depthMm;
  invariant(floorMm >= 0 && floorMm < fromMm, `a hole from ${fromMm} to ${floorMm}`);
  const inside = loop.toReversed();
  const mouthMm = mouth === undefined ? fromMm : fromMm - mouth.deepMm;
  return [
    ...walls(inside, floorMm, inside, mouthMm),
    ...(mouth === undefined ? [] : walls(inside, mouthMm, mouth.loop.toReversed(), fromMm)),
    ...islands.flatMap((island) => walls(island, floorMm, island, fromMm)),
    ...(depthMm === null
      ? []
      : facesBetween(
          [
            loop,
            ...islands.map((island) => island.toReversed()),
            ...(within === null ? [] : [within.loop.toReversed()]),
          ],
          floorMm,
        )),
    ...(within === null ? [] : sinkFacets(within, floorMm, topMm)),
  ];
}

const throughLoops = ({ loop, depthMm, within }: Sink): readonly Loop[] =>
  depthMm === null ? [loop] : within === null ? [] : throughLoops(within);

/** Upright or sloping between two loops of as many places; material on the left going round. */
function walls(low: Loop, lowMm: number, high: Loop, highMm: number): readonly Facet[] {
  return low.map((a, i) => {
    const k = (i + 1) % low.length;
    const [b, c, d] = [low[k]!, high[k]!, high[i]!];
    return [
      { ...a, z: lowMm },
      { ...b, z: lowMm },
      { ...c, z: highMm },
      { ...d, z: highMm },
    ].map(({ x, y, z }) => ({ x, y, z }));
  });
}

const downwards = (facets: readonly Facet[]): readonly Facet[] =>
  facets.map((facet) => facet.toReversed());

/** Every side moved inwards, its direction kept, so that the slope between is flat. */
export function drawnIn(outline: Loop, byMm: number): Loop {
  const moved = shifted(outline, byMm);
  invariant(moved !== null, `an outline too fine to draw in by ${byMm}`);
  return moved;
}
