import type { Cutter, StopsJob } from '../../job/job.ts';
import { cornerAt } from '../../setup/place.ts';
import { figure, type Step } from '../answer.ts';
import type { StopPart } from '../stop-part.ts';
import { boreHoles, boringCutter, type Bore } from './bore-holes.ts';
import { cornerWords } from './corner-words.ts';
import type { Program } from './program.ts';

/** How deep a pin goes into the bed: twice its diameter. Common practice, no source. */
const DEPTH_PER_DIAMETER = 2;

/** Bores the holes for the pins of the stops into the spoilboard, from the corner the stops will make. */
export function borePinHoles(
  job: StopsJob,
  stops: readonly StopPart[],
): Step<{ readonly program: Program; readonly cutter: Cutter }> {
  const thickMm = job.shop.bed.spoilboard.thickMm;
  const pins = stops.flatMap((stop) => stop.pins);
  const bores = pins.map(({ at, diameterMm }): Bore => ({
    at,
    diameterMm,
    topMm: 0,
    bottomMm: -Math.min(DEPTH_PER_DIAMETER * diameterMm, thickMm),
  }));
  const cutter = boringCutter(job.shop.cutters, bores);
  if (cutter.kind === 'cannot') return cutter;
  const corner = job.stops.corner.frontUp;
  const program = boreHoles(
    {
      name: 'bore the pin holes',
      jobName: job.name,
      header: [
        `For: holes of ${figure(bores[0]?.diameterMm ?? 0)} mm in the spoilboard for the pins of the stops.`,
        'On the bed: nothing at all. The stops come later.',
        `X and Y zero: ${cornerWords(corner)} corner of where the blank will lie.`,
        'Z zero: surface of the spoilboard.',
      ],
      zeroAt: cornerAt(job, corner),
      zeroHighMm: 0,
      bores,
      highestMm: 0,
      over: 'the first hole',
    },
    cutter.value,
  );
  return program.kind === 'cannot'
    ? program
    : { kind: 'made', value: { program: program.value, cutter: cutter.value } };
}
