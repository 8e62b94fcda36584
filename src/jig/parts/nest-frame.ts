import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { moved } from '../../plane/move.ts';
import { unionOf } from '../../plane/clip.ts';
import { signedAreaMm2 } from '../../plane/measure.ts';
import { circleOutline } from '../../plane/outline.ts';
import { layoutOnBed } from '../../setup/place.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { cannot, figure, made, type Step } from '../answer.ts';
import { nestShape } from '../nest/nest-shape.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import { roundedBox } from '../plate/curve.ts';
import type { Xy } from '../plate/drawing.ts';
import type { PlateHole } from '../plate/plate.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

const CHORD_MM = 0.05;

/**
 * A frame whose opening is the nest of the job, corners relieved, upper inner edge chamfered as a
 * lead-in: screwed to the bed it stands for a nest that is cut. Its places are those of the layout.
 */
export function nestFrame(
  job: Job,
  placings: Placings,
  sizes: JigSizesOf<'nest-frame'>,
): Step<readonly JigPart[]> {
  if (job.locating !== 'nest')
    return cannot(
      'nest-frame: this job does not locate in a nest',
      'nest: in the job, or no nest-frame',
    );
  const { nest } = job;
  const placing =
    (nest.around === null) === (placings.frontUp.order === 'first')
      ? placings.frontUp
      : placings.backUp;
  const thread = job.shop.bed.inserts?.thread ?? 'M6';
  const screw = screwNumbers[thread];
  const thickMm = sizes.thick ?? nest.wallMm;
  const [rimMm, leadMm] = [given(sizes.rim), given(sizes.lead)];
  const refusal = unmet('nest-frame', [
    {
      what: 'rim',
      isMm: rimMm,
      least: screw.headMm + 2 * stopNumbers.holeWallMm,
      because: 'its screws would have no wall round them',
    },
    {
      what: 'thick',
      isMm: thickMm,
      least: stopNumbers.lowestStopMm,
      most: job.blank.thickMm - stopNumbers.belowTopMm,
      because: `it stands round a blank ${figure(job.blank.thickMm)} thick`,
    },
    {
      what: 'lead',
      isMm: leadMm,
      most: thickMm / 3,
      because: 'hardly any wall would be left below',
    },
  ]);
  if (refusal !== null) return refusal;
  const shape = nestShape(job, nest, placing);
  const reliefMm = nest.cutter.diameterMm / 2;
  const loop = unionOf([
    shape.outline,
    ...shape.reliefs.map((at) => moved(circleOutline<'layout'>(reliefMm, CHORD_MM), at)),
  ])
    .filter((one) => signedAreaMm2(one) > 0)
    .toSorted((a, b) => signedAreaMm2(b) - signedAreaMm2(a))[0];
  if (loop === undefined)
    return cannot('nest-frame: the nest has no outline', 'a nest with an outline');
  const { lowX, lowY, highX, highY } = shape.box;
  const reachMm = shape.reliefs.length === 0 ? 0 : 1;
  const [low, high] = [
    { x: lowX - rimMm - reachMm, y: lowY - rimMm - reachMm },
    { x: highX + rimMm + reachMm, y: highY + rimMm + reachMm },
  ];
  const inMm = (rimMm + reachMm) / 2;
  const screws: readonly Xy[] = [low.x + inMm, high.x - inMm].flatMap((x) =>
    [low.y + inMm, high.y - inMm].map((y) => ({ x, y })),
  );
  const seatMm = Math.max(
    0,
    Math.min(
      screw.headHighMm + stopNumbers.counterboreBelowTopMm,
      thickMm - stopNumbers.headFloorMm,
    ),
  );
  const hole = (at: Xy): PlateHole => ({
    ends: [at],
    radiusMm: screw.holeMm / 2,
    depthMm: null,
    seat:
      seatMm < stopNumbers.counterboreLeastMm
        ? null
        : {
            shape: {
              kind: 'round',
              radiusMm: (screw.headMm + stopNumbers.counterboreOverHeadMm) / 2,
            },
            depthMm: seatMm,
          },
  });
  const onBed = screws.map((at) => layoutOnBed(job, at));
  return made([
    {
      name: 'nest frame',
      purpose: `The ${nest.around === null ? 'blank' : 'part'} lies in it, ${placing.faceUp} up.`,
      count: 1,
      form: {
        kind: 'plate',
        plate: {
          name: 'nest frame',
          thickMm,
          outline: roundedBox(low, high, partNumbers.cornerMm),
          holes: screws.map(hole),
          words: [],
          windows: [{ loop, leadMm }],
        },
      },
      notes: [
        `Its opening is ${figure(shape.gapMm)} mm wider than what lies in it on every side. A print strays by 0.15 mm or so: try the fit first, or cut it in place with the program.`,
        `Its screws ${thread} stand at ${onBed.map(({ x, y }) => `[${x.toFixed(1)}, ${y.toFixed(1)}]`).join(', ')} mm on the bed: put inserts there, or wood screws with washers.`,
        ...(seatMm < screw.headHighMm
          ? [
              `Their heads stand ${figure(screw.headHighMm - (seatMm < stopNumbers.counterboreLeastMm ? 0 : seatMm))} mm over the frame: see that nothing strikes them.`,
            ]
          : []),
        'The floor is the bed itself: it must be flat there.',
      ],
    },
  ]);
}
