import { unreachable } from '../num/invariant.ts';
import { bedSurface } from '../job/bed-surface.ts';
import type { Job, Spread } from '../job/job.ts';
import type { BedHeights } from '../job/shop.ts';
import { said } from '../job/text/said.ts';
import { bedOff } from '../setup/heights.ts';
import { layoutOnBed } from '../setup/place.ts';
import type { Deviation } from '../setup/deviation.ts';
import { cause, onlyWith, type Cause } from './cause.ts';

/** Deviations that act on depths and thicknesses only. */
export type HeightDeviation = Extract<
  Deviation,
  {
    readonly kind:
      'thickness-taper' | 'cup' | 'cup-side' | 'swarf' | 'bed-lean' | 'bed-height' | 'z-touch';
  }
>;

export function heightCause(job: Job, deviation: HeightDeviation): Cause {
  const { blank, zero } = job;
  const { bed } = job.shop;
  switch (deviation.kind) {
    case 'thickness-taper':
      return deviation.axis === 'x'
        ? cause('thickness taper X', 'the blank thicker at one end', blank.thicknessTaperX)
        : cause('thickness taper Y', 'the blank thicker at one long edge', blank.thicknessTaperY);
    case 'cup':
      return cause('cup', 'the blank being cupped', blank.cup.hump);
    case 'cup-side':
      return cause(
        'side of the cup',
        'which face the cup stands up on',
        onlyWith([blank.cup.hump], EITHER_FACE),
      );
    case 'swarf':
      return cause('swarf', 'swarf under the blank', blank.swarf);
    case 'bed-lean':
      return deviation.axis === 'x'
        ? cause('bed lean X', "the bed not level with the machine's X travel", bed.leanX)
        : cause('bed lean Y', "the bed not level with the machine's Y travel", bed.leanY);
    case 'bed-height':
      return bed.heights === undefined
        ? cause('bed unevenness', 'the bed being uneven', bed.unevenness)
        : measuredPlace(job, bed.heights, deviation);
    case 'z-touch': {
      const { z } = deviation.placing === 'front-up' ? zero.frontUp : zero.backUp;
      return cause(
        `z touch ${deviation.placing} ${deviation.cutter}`,
        `finding the height of ${deviation.cutter} in the ${deviation.placing} placing`,
        z.tool.spread,
      );
    }
    default:
      return unreachable(deviation);
  }
}

/** A place of a bed that was read: how it stands off the bed's plane there, as well as its readings tell. */
function measuredPlace(
  job: Job,
  heights: BedHeights,
  { xMm, yMm }: Extract<Deviation, { readonly kind: 'bed-height' }>,
): Cause {
  const place = { x: xMm, y: yMm };
  const { x, y } = layoutOnBed(job, place);
  const mean = bedOff(job)!(place);
  const sd = bedSurface(heights).sdAt(x, y);
  const dof = heights.points.length - 3;
  const { unevenness } = job.shop.bed;
  return cause(
    `bed height ${said(x)} ${said(y)}`,
    `the height of the bed at ${said(x)}, ${said(y)}`,
    {
      ...unevenness,
      distribution: { kind: 'scaled-t', mean, scale: sd, dof },
      text: `${said(Number(mean.toFixed(4)))}, sd ${said(Number(sd.toFixed(4)))}, measured ${heights.measured}`,
    },
  );
}

const EITHER_FACE: Spread = {
  distribution: { kind: 'either', low: -1, high: 1 },
  recurs: 'part',
  origin: { kind: 'assumed', because: 'the job does not say which face, so either is as likely' },
  text: 'either face',
};
