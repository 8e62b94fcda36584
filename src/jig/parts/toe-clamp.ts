import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { figure, made, type Step } from '../answer.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import { onCurve, roundCurve, roundedBox, slotCurve } from '../plate/curve.ts';
import { drawnIn } from '../plate/plate-solid.ts';
import type { Level } from '../stop-part.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** The top of a toe clamp is so far below the blank's. Common practice, no source: it bears 3 to 6 below. */
const BELOW_TOP_MM = 4;
/** 10 to 15 degrees down. Common practice, no source. */
const LEAN_RAD = (12 * Math.PI) / 180;

/**
 * A low block that bears on the edge of the blank with the top of its face only: the face leans back to
 * its foot, so that a push from behind also presses down. A cam or a wedge behind it gives the push.
 */
export function toeClamp(job: Job, sizes: JigSizesOf<'toe-clamp'>): Step<readonly JigPart[]> {
  const [wideMm, longMm, slotMm] = [given(sizes.wide), given(sizes.long), given(sizes.slot)];
  const highMm = sizes.high ?? job.blank.thickMm - BELOW_TOP_MM;
  const leanMm = sizes.lean ?? highMm * Math.tan(LEAN_RAD);
  const bolt = screwNumbers[job.shop.bed.inserts?.thread ?? 'M6'];
  const wallMm = stopNumbers.holeWallMm;
  const refusal = unmet('toe-clamp', [
    {
      what: 'high',
      isMm: highMm,
      least: partNumbers.noseLeastMm,
      most: job.blank.thickMm - stopNumbers.belowTopMm,
      because: `it bears on the edge of a blank ${figure(job.blank.thickMm)} thick`,
    },
    {
      what: 'wide',
      isMm: wideMm,
      least: bolt.holeMm + 2 * wallMm,
      because: `${figure(wallMm)} mm of wall are wanted beside a slot ${figure(bolt.holeMm)} wide`,
    },
    {
      what: 'slot',
      isMm: slotMm,
      least: bolt.holeMm + 1,
      because: `the bolt's hole is ${figure(bolt.holeMm)} wide`,
    },
    {
      what: 'long',
      isMm: longMm,
      least: slotMm + 2 * wallMm + leanMm + stopNumbers.footChamferMm,
      because: 'its slot does not fit in',
    },
    {
      what: 'lean',
      isMm: leanMm,
      least: highMm * Math.tan((5 * Math.PI) / 180),
      most: highMm * Math.tan((20 * Math.PI) / 180),
      because: `a face ${figure(highMm)} high leans 5 to 20 degrees`,
    },
  ]);
  if (refusal !== null) return refusal;
  const foot = stopNumbers.footChamferMm;
  const half = bolt.holeMm / 2;
  const middle = longMm - wallMm - slotMm;
  const slot = roundCurve(
    slotCurve(
      { x: middle + half, y: wideMm / 2 },
      { x: middle + slotMm - half, y: wideMm / 2 },
      half,
    ),
    stopNumbers.chordMm,
  ).toReversed();
  const outline = (zMm: number) => {
    const box = onCurve(
      roundedBox({ x: 0, y: 0 }, { x: longMm, y: wideMm }, partNumbers.cornerMm),
      stopNumbers.chordMm,
    );
    const backMm = (leanMm * (highMm - zMm)) / highMm;
    // Every place before the slot moves back in proportion, the tip the most.
    return box.map(({ x, y }) => ({ x: x < middle ? x + backMm * (1 - x / middle) : x, y }));
  };
  const level = (zMm: number): Level => ({ zMm, outline: outline(zMm), holes: [slot] });
  return made([
    {
      name: 'toe clamp',
      purpose: 'Pushes low on the edge of the blank, and a little down.',
      count: given(sizes.count),
      form: {
        kind: 'leaning',
        profile: {
          levels: [
            { zMm: 0, outline: drawnIn(outline(foot), foot), holes: [slot] },
            level(foot),
            level(highMm),
          ],
        },
      },
      notes: [
        `Only its top edge bears, ${figure(job.blank.thickMm - highMm)} mm below the top of the blank; its face leans ${figure((Math.atan(leanMm / highMm) * 180) / Math.PI)} degrees.`,
        'Push it with a cam or a wedge, then tighten its bolt. Opposite a stop; on the fence side, between the two buttons, else the blank rocks.',
        'How much it presses down depends on friction: do not count on it alone against an upcut cutter.',
      ],
    },
  ]);
}
