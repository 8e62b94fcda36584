import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { figure, made, type Step } from '../answer.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import type { Curve } from '../plate/drawing.ts';
import { wordsLongMm } from '../plate/lettering.ts';
import { LOCKING_FRICTION, partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** Half the width of the handle, mm. */
const HANDLE_HALF_MM = 8;
/** Height of the engraved words. */
const WORDS_MM = 4;
/** A side between two corners is not shorter than this: less falls together on the grid of a solid. */
const LEAST_SIDE_MM = 0.1;

/**
 * An eccentric disc with a handle, that pushes the blank against the stops and stays there by friction:
 * at every turn its surface rises by at most e / sqrt(R^2 - e^2) a length along it, and friction holds
 * that when it is no more than its own ratio. Source: the inclined plane; friction of the pivot left out.
 */
export function camClamp(job: Job, sizes: JigSizesOf<'cam-clamp'>): Step<readonly JigPart[]> {
  const radiusMm = given(sizes.radius);
  const throwMm = given(sizes.throw);
  const handleMm = given(sizes.handle);
  const thickMm = given(sizes.thick);
  const engraved = `R${figure(radiusMm)} E${figure(throwMm)}`;
  const bolt = screwNumbers[job.shop.bed.inserts?.thread ?? 'M6'];
  const most = radiusMm * Math.sin(Math.atan(LOCKING_FRICTION));
  const refusal = unmet('cam-clamp', [
    {
      what: 'throw',
      isMm: throwMm,
      most,
      because: `a disc of radius ${figure(radiusMm)} would turn back by itself (friction ${LOCKING_FRICTION}, an estimate)`,
    },
    {
      what: 'radius',
      isMm: radiusMm,
      least: Math.max(
        throwMm + bolt.holeMm / 2 + stopNumbers.holeWallMm,
        HANDLE_HALF_MM + partNumbers.cornerMm + LEAST_SIDE_MM,
      ),
      because: 'the wall round the pivot would break out',
    },
    {
      what: 'handle',
      isMm: handleMm,
      // Its words stand between the disc and the round end.
      least:
        radiusMm +
        Math.max(
          3 * HANDLE_HALF_MM,
          2 * WORDS_MM + wordsLongMm(engraved, WORDS_MM) + HANDLE_HALF_MM - throwMm,
        ),
      because: 'there is nothing to hold beyond the disc, or no room for its words',
    },
    {
      what: 'thick',
      isMm: thickMm,
      least: partNumbers.noseLeastMm,
      most: job.blank.thickMm - stopNumbers.belowTopMm,
      because: `it pushes on the edge of a blank ${figure(job.blank.thickMm)} thick`,
    },
  ]);
  if (refusal !== null) return refusal;
  const pivot = { x: throwMm, y: 0 };
  return made([
    {
      name: 'cam clamp',
      purpose: 'Pushes the blank against the stops and stays there by friction.',
      count: given(sizes.count),
      form: {
        kind: 'plate',
        plate: {
          name: 'cam clamp',
          thickMm,
          outline: camOutline(radiusMm, throwMm + handleMm),
          holes: [{ ends: [pivot], radiusMm: bolt.holeMm / 2, depthMm: null, seat: null }],
          words: [
            {
              words: engraved,
              at: { x: radiusMm + WORDS_MM, y: -WORDS_MM / 2 },
              heightMm: WORDS_MM,
              strokeMm: partNumbers.strokeMm,
              depthMm: partNumbers.engraveMm,
            },
          ],
        },
      },
      notes: [
        `It moves the blank by ${figure(throwMm * Math.SQRT2)} mm over a quarter turn, from 45 degrees before its handle stands along the edge to 45 degrees after.`,
        'Put a loose pad between cam and blank: the cam would drag it along the edge.',
        `Self-locking down to a friction of ${figure(throwMm / Math.sqrt(radiusMm ** 2 - throwMm ** 2))}: an estimate that knows no vibration. Where a piece could fly, screw it down as well.`,
        'Pivot: one bolt with a washer, tightened until the cam just turns. Middle of its thickness at half the thickness of the blank.',
      ],
    },
  ]);
}

/** The disc about the origin, its handle along +x. */
function camOutline(radiusMm: number, endMm: number): Curve {
  const half = HANDLE_HALF_MM;
  const x = Math.sqrt(radiusMm ** 2 - half ** 2);
  const sweep = 2 * Math.PI - 2 * Math.asin(half / radiusMm);
  return [
    { x, y: -half, bulge: 0 },
    { x: endMm - half, y: -half, bulge: 1 },
    { x: endMm - half, y: half, bulge: 0 },
    { x, y: half, bulge: Math.tan(sweep / 4) },
  ];
}
