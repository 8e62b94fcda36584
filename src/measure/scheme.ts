import { unreachable } from '../num/invariant.ts';
import type { DowelHoles, Fence, Job, Touch } from '../job/job.ts';
import { said } from '../job/text/said.ts';

/** What a correction holds for, in words: a key of the job file and what it says. */
export type Scheme = Readonly<Record<string, string>>;

/**
 * Everything that the offsets of a set-up depend on: another stop, another height, another thickness or
 * another cutter, and they are void (bench practice, section 2).
 */
export function schemeOf(job: Job): Scheme {
  const { blank, zero } = job;
  const cutters = [...new Set(job.features.map(({ cutter }) => cutter.name))].sort();
  return {
    turn: job.turn,
    first: job.first,
    size: `${said(blank.widthMm)} x ${said(blank.heightMm)}`,
    thickness: said(blank.thickMm),
    located: job.locating,
    ...locatedBy(job),
    'front-up zero': zeroText(zero.frontUp.xy),
    'back-up zero': zeroText(zero.backUp.xy),
    cutters: cutters.join(', '),
    shop: job.shop.name,
  };
}

function locatedBy(job: Job): Scheme {
  switch (job.locating) {
    case 'stops': {
      const { corner, sideTouch } = job.stops;
      return {
        corners: `${corner.frontUp}, then ${corner.backUp}`,
        ...fenceScheme(job.stops),
        side: touchText(sideTouch),
      };
    }
    case 'fence-and-dowel':
      return { ...fenceScheme(job.fenceAndDowel), ...holesScheme(job.fenceAndDowel.dowel) };
    case 'dowels':
      return holesScheme(job.dowels);
    case 'nest': {
      const { around, cutter, wallMm, takeUp } = job.nest;
      return {
        nest: `around ${around ?? 'the blank'}, ${said(wallMm)} high, cut with ${cutter.name}`,
        'take-up': takeUp,
      };
    }
    default:
      return unreachable(job);
  }
}

function fenceScheme({ fence, fenceTouch, band, made }: Fence): Scheme {
  return {
    fence: `${fence}, ${touchText(fenceTouch)}`,
    height:
      band.kind === 'plain'
        ? `stop ${said(band.heightMm)} high`
        : `touching at ${said(band.touchHeightMm)}`,
    made: made.kind === 'milled-in-place' ? `${made.kind} with ${made.cutter.name}` : made.kind,
  };
}

function holesScheme({ at, diameterMm, drilled, takeUp }: DowelHoles): Scheme {
  const places = at.map(({ x, y }) => `${said(x)}, ${said(y)}`);
  return {
    dowels: `${said(diameterMm)} at ${places.join(' and ')}, drilled ${drilled}`,
    'take-up': takeUp,
  };
}

/** Where two schemes differ: what was, and what is. */
export function schemeChanges(
  was: Scheme,
  is: Scheme,
): readonly { readonly key: string; readonly was: string; readonly is: string }[] {
  const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])];
  return keys.flatMap((key) => {
    const [before, after] = [was[key] ?? 'not said', is[key] ?? 'not said'];
    return before === after ? [] : [{ key, was: before, is: after }];
  });
}

const touchText = (touch: Touch): string =>
  touch.kind === 'arm'
    ? `arm ${said(touch.fromMm)} to ${said(touch.toMm)}`
    : `buttons at ${touch.atMm.map(said).join(', ')}`;

const zeroText = (xy: Job['zero']['frontUp']['xy']): string =>
  xy.kind === 'kept' ? `kept, ${xy.how}` : xy.kind === 'hole' ? `hole ${xy.feature}` : xy.kind;
