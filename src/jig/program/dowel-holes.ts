import type { Cutter, Job } from '../../job/job.ts';
import { blankInLayout } from '../../setup/place.ts';
import { dowelHolesIn } from '../../job/located.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { cannot, figure, mm, type Step } from '../answer.ts';
import { boreHoles, boringCutter, type Bore } from './bore-holes.ts';
import type { Program } from './program.ts';
import { noRoomOverBlank } from './room-over-blank.ts';

const NAME = 'bore the dowel holes';

/** How deep a dowel stands in the bed: 1.5 to 2 of its diameters. Common practice, no source. */
const DEPTH_PER_DIAMETER = 2;

/**
 * Bores the holes for the dowels that locate the blank: through the blank and on into the bed in the
 * first placing, or, where the blank is drilled separately, into the bed alone. Null: no dowels.
 */
export function boreDowelHoles(
  job: Job,
  placings: Placings,
): Step<{ readonly program: Program; readonly cutter: Cutter }> | null {
  const holes = dowelHolesIn(job);
  if (holes === null) return null;
  const first = placings.frontUp.order === 'first' ? placings.frontUp : placings.backUp;
  const { diameterMm } = holes;
  const withBlank = holes.drilled === 'with-the-blank';
  const { thickMm } = job.blank;
  const bedMm = job.shop.bed.spoilboard.thickMm;
  const depthMm = DEPTH_PER_DIAMETER * diameterMm;
  if (depthMm > bedMm)
    return cannot(
      `a dowel of ${mm(diameterMm)} stands ${mm(depthMm)} deep, and the spoilboard is ${mm(bedMm)} thick`,
      `dowels of ${figure(bedMm / DEPTH_PER_DIAMETER)} or less, or a thicker spoilboard`,
    );
  const bores = holes.at.map((at): Bore => ({
    at: blankInLayout(job, first.mirror, at),
    diameterMm,
    topMm: withBlank ? thickMm : 0,
    bottomMm: -depthMm,
  }));
  const cutter = boringCutter(job.shop.cutters, bores);
  if (cutter.kind === 'cannot') return cutter;
  const low = withBlank ? noRoomOverBlank(job, cutter.value, -depthMm, NAME) : null;
  if (low !== null) return low;
  const zero = first.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const onTop = withBlank && zero.z.on === 'top';
  const program = boreHoles(
    {
      name: NAME,
      jobName: job.name,
      header: [
        `For: ${bores.length} holes of ${figure(diameterMm)} mm for the dowels that locate the blank.`,
        withBlank
          ? `On the bed: the blank, ${first.faceUp} up, held down, as for the first placing. It is bored through, ${figure(depthMm)} mm on into the bed.`
          : `On the bed: nothing. The bed is bored ${figure(depthMm)} mm deep; the blank is drilled by itself.`,
        'X and Y zero: as for the first placing. Keep it: the dowels stand from here on.',
        `Z zero: ${onTop ? 'top of the blank' : 'surface of the spoilboard'}.`,
        'The hole comes out as wide as the cutter cuts: try a dowel in scrap first.',
      ],
      zeroAt: first.zero,
      zeroHighMm: onTop ? thickMm : 0,
      bores,
      highestMm: withBlank ? thickMm : 0,
      over: 'the first hole',
    },
    cutter.value,
  );
  return program.kind === 'cannot'
    ? program
    : { kind: 'made', value: { program: program.value, cutter: cutter.value } };
}
