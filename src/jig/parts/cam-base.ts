import type { Job } from '../../job/job.ts';
import { defaultJigSizes, type JigSizesOf } from '../../job/jig-sizes.ts';
import { cannot, figure, made, type Step } from '../answer.ts';
import { nutNumbers, screwNumbers, stopNumbers } from '../numbers.ts';
import { roundedBox } from '../plate/curve.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** Over the nut: what its bolt pulls against, mm. Common practice, no source. */
const OVER_NUT_MM = 4;

/**
 * A plate that carries the pivot of a cam where the bed has no insert: a captive nut from below, and a
 * slot by which it is screwed to the bed, beyond the reach of the disc. Drawn with its nut's side up,
 * as it is printed; turned over in use.
 */
export function camBase(job: Job, sizes: JigSizesOf<'cam-base'>): Step<readonly JigPart[]> {
  const thread = job.shop.bed.inserts?.thread ?? 'M6';
  const [bolt, nut] = [screwNumbers[thread], nutNumbers[thread]];
  const cam = job.jig['cam-clamp'] ?? defaultJigSizes('cam-clamp');
  const pocketMm = nut.highMm + NUT_DEEPER_MM;
  const thickMm = sizes.thick ?? pocketMm + OVER_NUT_MM;
  const slotMm = given(sizes.slot);
  const camMm = given(cam.thick);
  const refusal = unmet('cam-base', [
    {
      what: 'thick',
      isMm: thickMm,
      least: pocketMm + OVER_NUT_MM,
      because: `a nut ${thread} is ${figure(nut.highMm)} high (ISO 4032), and its bolt pulls against what is over it`,
    },
    {
      what: 'slot',
      isMm: slotMm,
      least: bolt.holeMm + 1,
      because: `the bolt's hole is ${figure(bolt.holeMm)} wide`,
    },
  ]);
  if (refusal !== null) return refusal;
  const highMm = job.blank.thickMm - stopNumbers.belowTopMm;
  if (thickMm + camMm > highMm)
    return cannot(
      `cam-base: a cam ${figure(camMm)} mm thick on a base of ${figure(thickMm)} stands above a blank ${figure(job.blank.thickMm)} thick, less ${figure(stopNumbers.belowTopMm)}`,
      highMm - thickMm >= partNumbers.noseLeastMm
        ? `thick: ${figure(Math.floor((highMm - thickMm) * 100) / 100)} or less under cam-clamp`
        : 'a thicker blank, or cams right on the bed (no cam-base)',
    );
  const wallMm = stopNumbers.holeWallMm;
  const wideMm = Math.max(nut.acrossFlatsMm / Math.cos(Math.PI / 6), bolt.washerMm) + 2 * wallMm;
  // Beyond the widest reach of the disc, with the washer of the bed's screw beside it.
  const clearMm = given(cam.radius) + given(cam.throw) + bolt.washerMm / 2 + 1;
  const pivot = { x: wideMm / 2, y: wideMm / 2 };
  const [from, to] = [pivot.x + clearMm, pivot.x + clearMm + slotMm - bolt.holeMm];
  return made([
    {
      name: 'cam base',
      purpose: 'Carries the pivot of a cam where the bed has no insert.',
      count: given(sizes.count),
      form: {
        kind: 'plate',
        plate: {
          name: 'cam base',
          thickMm,
          outline: roundedBox(
            { x: 0, y: 0 },
            { x: to + bolt.holeMm / 2 + wallMm, y: wideMm },
            partNumbers.cornerMm,
          ),
          holes: [
            {
              ends: [pivot],
              radiusMm: bolt.holeMm / 2,
              depthMm: null,
              seat: {
                shape: { kind: 'hexagon', acrossFlatsMm: nut.acrossFlatsMm + NUT_WIDER_MM },
                depthMm: pocketMm,
              },
            },
            {
              ends: [
                { x: from, y: pivot.y },
                { x: to, y: pivot.y },
              ],
              radiusMm: bolt.holeMm / 2,
              depthMm: null,
              seat: null,
            },
          ],
          words: [],
        },
      },
      notes: [
        `Print it as it lies, the pocket of the nut up; press the nut ${thread} in, turn the base over and screw it to the bed through its slot.`,
        `The cam turns ${figure(thickMm)} mm over the bed on it: the middle of its push is then at ${figure(thickMm + camMm / 2)} mm, best at half the thickness of the blank, ${figure(job.blank.thickMm / 2)}.`,
        'One screw can turn: set the base so that the push goes along its slot.',
      ],
    },
  ]);
}

/** A printed pocket over the nut: across its flats, and in depth. Common practice, no source, mm. */
const NUT_WIDER_MM = 0.3;
const NUT_DEEPER_MM = 0.3;
