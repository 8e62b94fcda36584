import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { toOutlineMm } from '../../plane/distance.ts';
import { rectangleOutline } from '../../plane/outline.ts';
import { moved } from '../../plane/move.ts';
import type { Point } from '../../plane/point.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { bedInLayout } from '../../setup/place.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import { roundedBox } from '../plate/curve.ts';
import type { StopPart } from '../stop-part.ts';
import { bodiesOf } from '../stops.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** Bars with a slot that hold the blank down, each with a block under its heel. */
export function strapClamp(
  job: Job,
  stops: readonly StopPart[],
  sizes: JigSizesOf<'strap-clamp'>,
): Step<readonly JigPart[]> {
  const [wideMm, thickMm, slotMm] = [given(sizes.wide), given(sizes.thick), given(sizes.slot)];
  const biteMm = given(sizes.bite);
  const bolt = screwNumbers[job.shop.bed.inserts?.thread ?? 'M6'];
  const refusal = unmet('strap-clamp', [
    {
      what: 'wide',
      isMm: wideMm,
      least: bolt.holeMm + 2 * stopNumbers.holeWallMm,
      because: `${figure(stopNumbers.holeWallMm)} mm of wall are wanted beside a slot ${figure(bolt.holeMm)} wide`,
    },
    {
      what: 'thick',
      isMm: thickMm,
      least: partNumbers.noseLeastMm,
      because: 'its nose would break',
    },
    {
      what: 'slot',
      isMm: slotMm,
      least: bolt.holeMm + 1,
      because: `the bolt's hole is ${figure(bolt.holeMm)} wide`,
    },
    {
      what: 'bite',
      isMm: biteMm,
      least: 5,
      most: partNumbers.noseToSlotMm - bolt.holeMm,
      because: 'its bolt must come down beside the blank, and its nose must not slip off',
    },
  ]);
  if (refusal !== null) return refusal;
  const count = given(sizes.count);
  const reach = {
    fromMm: partNumbers.noseToSlotMm + bolt.holeMm / 2 - biteMm,
    toMm: partNumbers.noseToSlotMm + slotMm - bolt.holeMm / 2 - biteMm,
  };
  const short = tooFewBolts(job, stops, count, reach, slotMm);
  if (short !== null) return short;
  const longMm = partNumbers.noseToSlotMm + slotMm + stopNumbers.holeWallMm + partNumbers.heelMm;
  const heelMm = job.blank.thickMm + given(sizes['heel-higher']);
  const slot = [partNumbers.noseToSlotMm, partNumbers.noseToSlotMm + slotMm].map((x, i) => ({
    x: x + ((i === 0 ? 1 : -1) * bolt.holeMm) / 2,
    y: wideMm / 2,
  }));
  return made([
    {
      name: 'strap clamp',
      purpose: 'Holds the blank down: its nose on the blank, its heel on the heel block.',
      count,
      form: {
        kind: 'plate',
        plate: {
          name: 'strap clamp',
          thickMm,
          outline: roundedBox({ x: 0, y: 0 }, { x: longMm, y: wideMm }, partNumbers.cornerMm),
          holes: [
            { ends: [slot[0]!, slot[1]!], radiusMm: bolt.holeMm / 2, depthMm: null, seat: null },
          ],
          words: [],
        },
      },
      notes: [
        `Bite ${figure(biteMm)} mm, bolt as near to the blank as the slot lets it: then most of its pull comes down on the blank.`,
        'Solid where the bolt goes through. Print lying flat: the layers then run along the pull.',
        'Clamp only where the blank lies on solid bed, never over a pocket of the first side.',
        `It stands ${figure(heelMm + thickMm + bolt.headHighMm)} mm over the bed with its bolt: see on the sheet that nut, spindle and shoe pass.`,
      ],
    },
    {
      name: 'heel block',
      purpose: 'Stands under the heel of a strap clamp, a little higher than the blank.',
      count,
      form: {
        kind: 'plate',
        plate: {
          name: 'heel block',
          thickMm: heelMm,
          outline: roundedBox(
            { x: 0, y: 0 },
            { x: partNumbers.heelMm, y: wideMm },
            partNumbers.cornerMm,
          ),
          holes: [],
          words: [],
        },
      },
      notes: [
        `${figure(heelMm)} mm high: the blank's thickness and ${figure(given(sizes['heel-higher']))}.`,
      ],
    },
  ]);
}

/** Inserts beside the blank that a strap reaches, and that no stop covers, against those wanted. */
function tooFewBolts(
  job: Job,
  stops: readonly StopPart[],
  count: number,
  reach: { readonly fromMm: number; readonly toMm: number },
  slotMm: number,
): Step<never> | null {
  const { inserts } = job.shop.bed;
  if (inserts === null) return null;
  const { widthMm, heightMm } = job.blank;
  const blank = moved<'layout'>(rectangleOutline<'layout'>(widthMm, heightMm, 0, 0.01), {
    x: widthMm / 2,
    y: heightMm / 2,
  });
  const bodies = stops.flatMap(bodiesOf);
  const places: Point<'layout'>[] = [];
  for (let column = 0; column < inserts.count.x; column++)
    for (let row = 0; row < inserts.count.y; row++)
      places.push(
        bedInLayout(job, {
          x: inserts.first.x + column * inserts.pitchMm.x,
          y: inserts.first.y + row * inserts.pitchMm.y,
        }),
      );
  const far = places
    .filter((p) => bodies.every(({ outline }) => toOutlineMm(p, outline) > partNumbers.heelMm / 2))
    .map((p) => toOutlineMm(p, blank))
    .filter((d) => d > 0)
    .sort((a, b) => a - b);
  const within = far.filter((d) => d >= reach.fromMm && d <= reach.toMm).length;
  if (within >= count) return null;
  const wanted = far.filter((d) => d >= reach.fromMm)[count - 1];
  return cannot(
    `strap-clamp: ${within} of ${count} clamps have a bolt in reach: ${mm(reach.fromMm)} to ${mm(reach.toMm)} beside the blank`,
    wanted === undefined
      ? 'fewer clamps (count:), another on-bed:, or more inserts'
      : `slot: ${figure(Math.ceil(slotMm + wanted - reach.toMm))} or more`,
  );
}
