import { hexagon, type Plate, type PlateHole } from './plate.ts';
import { polygonCurve, slotCurve } from './curve.ts';
import type { Drawing, Figure, Layer } from './drawing.ts';
import { strokesOf } from './lettering.ts';

/** The plate as it is cut from sheet: true circles and arcs, depths in words beside what is not through. */
export function plateDrawing(plate: Plate): Drawing {
  return {
    name: plate.name,
    figures: [
      {
        kind: 'curve',
        layer: 'through',
        curve: plate.outline,
        ends: 'closed',
        depthMm: null,
      },
      ...plate.holes.flatMap(holeFigures),
      ...(plate.windows ?? []).map(({ loop }): Figure => ({
        kind: 'curve',
        layer: 'through',
        curve: polygonCurve(loop),
        ends: 'closed',
        depthMm: null,
      })),
      ...plate.words.flatMap((lettering) =>
        strokesOf(lettering).map((line): Figure => ({
          kind: 'curve',
          layer: 'engrave',
          curve: polygonCurve(line),
          ends: 'open',
          depthMm: lettering.depthMm,
        })),
      ),
    ],
  };
}

function holeFigures(hole: PlateHole): readonly Figure[] {
  const layer = hole.depthMm === null ? 'through' : 'drill';
  const own = figure(hole.ends, hole.radiusMm, layer, hole.depthMm);
  if (hole.seat === null) return [own];
  const { shape, depthMm } = hole.seat;
  return [
    own,
    shape.kind === 'round'
      ? figure(hole.ends, shape.radiusMm, 'pocket', depthMm)
      : {
          kind: 'curve',
          layer: 'pocket',
          curve: polygonCurve(hexagon(hole.ends[0], shape.acrossFlatsMm)),
          ends: 'closed',
          depthMm,
        },
  ];
}

function figure(
  [from, to]: PlateHole['ends'],
  radiusMm: number,
  layer: Layer,
  depthMm: number | null,
): Figure {
  return to === undefined
    ? { kind: 'circle', layer, at: from, radiusMm, depthMm }
    : { kind: 'curve', layer, curve: slotCurve(from, to, radiusMm), ends: 'closed', depthMm };
}
