import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { figure, made, type Step } from '../answer.ts';
import { stopNumbers } from '../numbers.ts';
import { polygonCurve } from '../plate/curve.ts';
import { LOCKING_FRICTION } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/**
 * Two wedges that are driven past each other between the blank and something fixed. The one that is
 * driven slides on both its faces, so it stays when its angle is no more than twice the angle of
 * friction. Source: the inclined plane.
 */
export function wedgePair(job: Job, sizes: JigSizesOf<'wedge-pair'>): Step<readonly JigPart[]> {
  const longMm = given(sizes.long);
  const thinMm = given(sizes.thin);
  const riseMm = given(sizes.rise);
  const thickMm = given(sizes.thick);
  const refusal = unmet('wedge-pair', [
    {
      what: 'rise',
      isMm: riseMm,
      most: longMm * Math.tan(2 * Math.atan(LOCKING_FRICTION)),
      because: `over ${figure(longMm)} long it would slide back (friction ${LOCKING_FRICTION}, an estimate)`,
    },
    { what: 'thin', isMm: thinMm, least: 5, because: 'its thin end would break' },
    { what: 'long', isMm: longMm, least: 30, because: 'there is no way to drive it' },
    {
      what: 'thick',
      isMm: thickMm,
      least: 5,
      most: job.blank.thickMm - stopNumbers.belowTopMm,
      because: `it stands beside a blank ${figure(job.blank.thickMm)} thick`,
    },
  ]);
  if (refusal !== null) return refusal;
  return made([
    {
      name: 'wedge',
      purpose: 'Two of them, driven past each other, push the blank against the stops.',
      count: 2 * given(sizes.count),
      form: {
        kind: 'plate',
        plate: {
          name: 'wedge',
          thickMm,
          outline: polygonCurve([
            { x: 0, y: 0 },
            { x: longMm, y: 0 },
            { x: longMm, y: thinMm + riseMm },
            { x: 0, y: thinMm },
          ]),
          holes: [],
          words: [],
        },
      },
      notes: [
        `A pair is ${figure(2 * thinMm + riseMm)} wide with its ends level; a hundredth of its length further, ${figure(riseMm / 100)} more.`,
        'Tap, do not hammer: a wedge pushes harder than a clamp. The fixed side must be screwed down.',
      ],
    },
  ]);
}
