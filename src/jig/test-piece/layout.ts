import type { Cutter, Face, Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import type { Point } from '../../plane/point.ts';
import { cannot, figure, made, mm, type Cannot, type Step } from '../answer.ts';
import { given, unmet } from '../parts/size.ts';
import type { StopPart } from '../stop-part.ts';
import { tonguesOf } from './tongues.ts';
import {
  testNumbers,
  type Comb,
  type TestBox,
  type TestPiece,
  type Vernier,
} from './test-piece.ts';

type Place = Point<'blank'>;

/** The test piece for a job: as many combs, verniers and tongues as its blank has room for. */
export function testPiece(
  job: Job,
  stops: readonly StopPart[],
  sizes: JigSizesOf<'test-piece'>,
): Step<TestPiece> {
  const n = testNumbers;
  const [toothMm, slotMm] = [given(sizes.tooth), given(sizes.slot)];
  const deepMm = given(sizes.deep);
  const cutter = combCutter(job, slotMm);
  if (cutter.kind === 'cannot') return cutter;
  const refusal = unmetComb('test-piece', sizes);
  if (refusal !== null) return refusal;
  const { longMm } = combSizes(sizes);
  const { widthMm, heightMm } = job.blank;
  const least = {
    x: 2 * n.insetMm + 2 * longMm + n.gapMm,
    y: 2 * n.insetMm + deepMm + n.gapMm + longMm,
  };
  if (widthMm < least.x || heightMm < least.y)
    return cannot(
      `test-piece: its combs want a blank of ${mm(least.x)} by ${mm(least.y)}, and this one is ${mm(widthMm)} by ${mm(heightMm)}`,
      'narrower teeth and slots (tooth:, slot:), or the test piece of a job with a larger blank',
    );
  const middles = combMiddles(job, longMm, deepMm);
  const combs = middles.map(({ axis, at }, i) => combAt(i + 1, axis, at, sizes));
  return made({
    cutter: cutter.value,
    toothMm,
    combs,
    verniers: verniersOf(job, cutter.value.diameterMm, deepMm),
    tongues: tonguesOf(job, stops, cutter.value),
  });
}

/** The widest flat cutter that can go round inside a slot. */
/** The widest flat cutter that can go round in a slot, or what would. */
export function combCutter(job: Job, slotMm: number): Step<Cutter> {
  const mostMm = slotMm - testNumbers.roundMm;
  const [widest] = job.shop.cutters
    .filter(({ kind, diameterMm }) => kind === 'flat' && diameterMm <= mostMm)
    .filter(({ stickOutMm }) => stickOutMm === null || stickOutMm > job.blank.thickMm + 1)
    .toSorted((a, b) => b.diameterMm - a.diameterMm);
  return widest === undefined
    ? cannot(
        `test-piece: no flat cutter of the shop file is thin enough for slots ${mm(slotMm)} wide and sticks out further than the blank is thick (${mm(job.blank.thickMm)})`,
        `slot: with a thin cutter's diameter and ${figure(testNumbers.roundMm)} more, or a flat cutter of ${figure(mostMm)} or less that sticks out ${figure(job.blank.thickMm + 2)}`,
      )
    : made(widest);
}

/** Six combs tell the whole plane of the misalignment, four its shift and turn. */
function combMiddles(
  job: Job,
  longMm: number,
  deepMm: number,
): readonly { readonly axis: 'x' | 'y'; readonly at: Place }[] {
  const { insetMm, gapMm } = testNumbers;
  const { widthMm: w, heightMm: h } = job.blank;
  const row = insetMm + deepMm / 2;
  const above = insetMm + deepMm + gapMm;
  const x = (at: number, y: number) => ({ axis: 'x' as const, at: { x: at, y } });
  const y = (at: number, x: number) => ({ axis: 'y' as const, at: { x, y: at } });
  const low = [x(insetMm + longMm / 2, row), x(w - insetMm - longMm / 2, row)];
  const level = (above + h - insetMm) / 2;
  return h >= above + 2 * longMm + gapMm + insetMm
    ? [
        ...low,
        x(w / 2, h - row),
        y(above + longMm / 2, row),
        y(h - insetMm - longMm / 2, row),
        y(level, w - row),
      ]
    : [...low, y(level, row), y(level, w - row)];
}

/** How wide and long a comb is, mm. */
export function combSizes(sizes: CombWish): { readonly longMm: number; readonly deepMm: number } {
  const [toothMm, slotMm] = [given(sizes.tooth), given(sizes.slot)];
  return { longMm: 2 * toothMm + 3 * slotMm, deepMm: given(sizes.deep) };
}

type CombWish = JigSizesOf<'waste-combs'>;

/** Why teeth and slots of such sizes do not work, or null. */
export const unmetComb = (part: 'test-piece' | 'waste-combs', sizes: CombWish): Cannot | null =>
  unmet(part, [
    {
      what: 'tooth',
      isMm: given(sizes.tooth),
      least: 5,
      because: 'a thinner tooth gives under the jaws',
    },
    {
      what: 'deep',
      isMm: given(sizes.deep),
      least: given(sizes.slot),
      because: 'the jaws of a caliper do not go in',
    },
  ]);

export function combAt(number: number, axis: 'x' | 'y', at: Place, sizes: CombWish): Comb {
  const [toothMm, slotMm, deepMm] = [given(sizes.tooth), given(sizes.slot), given(sizes.deep)];
  return {
    number,
    axis,
    middle: at,
    slots: [-1, 0, 1].map((k) =>
      slotBox(axis, at, k * (toothMm + slotMm), slotMm, deepMm, k === 0 ? 'back' : 'front'),
    ) as unknown as Comb['slots'],
  };
}

function slotBox(
  axis: 'x' | 'y',
  at: Place,
  alongMm: number,
  slotMm: number,
  deepMm: number,
  face: Face,
): TestBox {
  const middle = axis === 'x' ? { x: at.x + alongMm, y: at.y } : { x: at.x, y: at.y + alongMm };
  const half = axis === 'x' ? { x: slotMm / 2, y: deepMm / 2 } : { x: deepMm / 2, y: slotMm / 2 };
  return {
    face,
    low: { x: middle.x - half.x, y: middle.y - half.y },
    high: { x: middle.x + half.x, y: middle.y + half.y },
  };
}

/** One row for x and one for y in the room that the combs leave, with as many pairs as fit; or none. */
function verniersOf(job: Job, cutterMm: number, deepMm: number): readonly Vernier[] {
  const n = testNumbers;
  const edge = n.insetMm + deepMm + n.gapMm;
  const room = {
    low: { x: edge, y: edge },
    high: { x: job.blank.widthMm - edge, y: job.blank.heightMm - edge },
  };
  if (job.blank.thickMm < 2 * n.tongueMm) return [];
  const pitchMm = 2 * cutterMm;
  const acrossMm = 2 * n.vernierSlotMm + 3 * cutterMm;
  const longMm = (pairs: number): number => (pairs - 1) * pitchMm + 3 * cutterMm;
  const pairsIn = (mmLong: number): number => {
    const pairs = Math.min(n.mostPairs, Math.floor((mmLong - 3 * cutterMm) / pitchMm) + 1);
    return pairs % 2 === 0 ? pairs - 1 : pairs;
  };
  const rows: Vernier[] = [];
  const forX = pairsIn(room.high.x - room.low.x - acrossMm - n.gapMm);
  const forY = pairsIn(room.high.y - room.low.y);
  if (forX >= n.leastPairs && room.high.y - room.low.y >= acrossMm)
    rows.push(
      vernier(
        'x',
        { x: room.low.x + longMm(forX) / 2, y: room.low.y + acrossMm / 2 },
        forX,
        cutterMm,
      ),
    );
  if (forY >= n.leastPairs && room.high.x - room.low.x >= acrossMm)
    rows.push(
      vernier(
        'y',
        { x: room.high.x - acrossMm / 2, y: room.low.y + longMm(forY) / 2 },
        forY,
        cutterMm,
      ),
    );
  return rows;
}

function vernier(axis: 'x' | 'y', middle: Place, pairCount: number, cutterMm: number): Vernier {
  const n = testNumbers;
  const pitchMm = 2 * cutterMm;
  const place = (along: number, across: number): Place =>
    axis === 'x'
      ? { x: middle.x + along, y: middle.y + across }
      : { x: middle.x + across, y: middle.y + along };
  const half = {
    along: ((pairCount - 1) * pitchMm) / 2 + 1.5 * cutterMm,
    across: n.vernierSlotMm + 1.5 * cutterMm,
  };
  const numbers = Array.from({ length: pairCount }, (_, i) => i - (pairCount - 1) / 2);
  return {
    axis,
    middle,
    pairCount,
    pitchMm,
    stepMm: n.stepMm,
    recess: { low: place(-half.along, -half.across), high: place(half.along, half.across) },
    slots: numbers.flatMap((k) => [
      {
        face: 'front' as const,
        from: place(k * pitchMm, -n.vernierSlotMm),
        to: place(k * pitchMm, 0),
      },
      {
        face: 'back' as const,
        from: place(k * (pitchMm - n.stepMm), n.vernierSlotMm),
        to: place(k * (pitchMm - n.stepMm), 0),
      },
    ]),
  };
}
