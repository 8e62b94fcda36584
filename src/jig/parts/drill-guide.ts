import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { boundsOf } from '../../plane/measure.ts';
import { cannot, figure, made, type Step } from '../answer.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import { roundedBox } from '../plate/curve.ts';
import type { PlateHole } from '../plate/plate.ts';
import type { StopPart } from '../stop-part.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/**
 * A block that leads the drill for the pins of each stop: screwed to the same inserts as the stop, its
 * guide holes stand where the pins of the stop will be.
 */
export function drillGuide(
  stops: readonly StopPart[],
  sizes: JigSizesOf<'drill-guide'>,
): Step<readonly JigPart[]> {
  const pinned = stops.filter(({ pins }) => pins.length > 0);
  if (pinned.length === 0)
    return cannot(
      'drill-guide: no stop of this job stands on pins, so there is nothing to guide a drill to',
      'made: on-bed-pins under stops, or no drill-guide',
    );
  const [thickMm, clearanceMm] = [given(sizes.thick), given(sizes.clearance)];
  const refusal = unmet('drill-guide', [
    {
      what: 'thick',
      isMm: thickMm,
      least: 2 * stopNumbers.pinDiameterMm,
      because: 'a shorter hole does not keep a drill upright',
    },
    { what: 'clearance', isMm: clearanceMm, most: 0.5, because: 'the drill would wander' },
  ]);
  if (refusal !== null) return refusal;
  return made(
    pinned.map((stop): JigPart => {
      const places = [...stop.pins.map((pin) => pin.at), ...stop.screws.map((s) => s.at)];
      const box = boundsOf(places);
      const marginMm = stopNumbers.holeWallMm + screwNumbers.M8.holeMm;
      const hole = (at: { x: number; y: number }, radiusMm: number): PlateHole => ({
        ends: [{ x: at.x, y: at.y }],
        radiusMm,
        depthMm: null,
        seat: null,
      });
      const name = `drill guide for the ${stop.name}`;
      return {
        name,
        purpose: `Leads the drill for the pins of the ${stop.name}.`,
        count: 1,
        form: {
          kind: 'plate',
          plate: {
            name,
            thickMm,
            outline: roundedBox(
              { x: box.lowX - marginMm, y: box.lowY - marginMm },
              { x: box.highX + marginMm, y: box.highY + marginMm },
              partNumbers.cornerMm,
            ),
            holes: [
              ...stop.pins.map((pin) => hole(pin.at, (pin.diameterMm + clearanceMm) / 2)),
              ...stop.screws.map((s) => hole(s.at, screwNumbers[s.thread].holeMm / 2)),
            ],
            words: [],
          },
        },
        notes: [
          `Screw it to the inserts of the ${stop.name} and drill ${figure(stop.pins[0]!.diameterMm)} mm through its guide holes. For more than a few holes press steel bushes in.`,
          'Pins bring a stop back; how true it stood when they were drilled, it stands for ever.',
        ],
      };
    }),
  );
}
