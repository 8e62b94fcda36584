import { fenceIn } from '../../job/located.ts';
import type { Corner, Edge, Job, Made, Touch, Turn, ZeroXy } from '../../job/job.ts';
import { unreachable } from '../../num/invariant.ts';

/** A way of bringing the blank back to its place, as far as ways are told apart here. */
export interface Way {
  readonly turn: Turn;
  readonly located: Located;
  readonly zero: ZeroWay;
}

export type Located =
  | {
      readonly kind: 'stops';
      readonly fence: Edge;
      readonly frontUp: Corner;
      readonly backUp: Corner;
      readonly touch: TouchWay;
      readonly band: 'plain' | 'narrow';
      readonly made: Made['kind'];
    }
  | { readonly kind: 'dowels'; readonly layout: 'line' | 'pairs' }
  | { readonly kind: 'fence-and-dowel'; readonly fence: Edge; readonly made: Made['kind'] }
  | { readonly kind: 'nest'; readonly around: string | null };

/** Two buttons and one, two arms, or an arm and a button. */
export type TouchWay = 'buttons' | 'arms' | 'mixed';

/** Where the zero in plan of the second placing comes from; `middle` is the middle of the blank in both. */
export type ZeroWay = 'kept' | 're-set' | 'middle' | 'hole' | 'made';

/** The way a job is written now. */
export function wayOf(job: Job): Way {
  return { turn: job.turn, located: locatedOf(job), zero: zeroWayOf(job) };
}

function locatedOf(job: Job): Located {
  switch (job.locating) {
    case 'stops': {
      const { fence, corner, made, fenceTouch, sideTouch, band } = job.stops;
      return {
        kind: 'stops',
        fence,
        ...corner,
        touch: touchWay(fenceTouch, sideTouch),
        band: band.kind,
        made: made.kind,
      };
    }
    case 'dowels': {
      const axis = job.turn === 'about-y' ? 'x' : 'y';
      const along = job.dowels.at.map((place) => place[axis]);
      const isLine = Math.max(...along) - Math.min(...along) < job.dowels.diameterMm;
      return { kind: 'dowels', layout: isLine ? 'line' : 'pairs' };
    }
    case 'fence-and-dowel':
      return {
        kind: 'fence-and-dowel',
        fence: job.fenceAndDowel.fence,
        made: job.fenceAndDowel.made.kind,
      };
    case 'nest':
      return { kind: 'nest', around: job.nest.around };
    default:
      return unreachable(job);
  }
}

const touchWay = (fence: Touch, side: Touch): TouchWay =>
  fence.kind === side.kind ? (fence.kind === 'arm' ? 'arms' : 'buttons') : 'mixed';

function zeroWayOf(job: Job): ZeroWay {
  const { frontUp, backUp } = job.zero;
  const [first, second] = job.first === 'front' ? [frontUp.xy, backUp.xy] : [backUp.xy, frontUp.xy];
  return secondZero(first, second);
}

function secondZero(first: ZeroXy, second: ZeroXy): ZeroWay {
  switch (second.kind) {
    case 'kept':
    case 'hole':
      return second.kind;
    case 'middle':
      return first.kind === 'middle' ? 'middle' : 're-set';
    case 'stops':
    case 'edges':
      return 're-set';
    case 'milled-stops':
      return 'kept';
    case 'dowels':
    case 'nest':
      return 'made';
    default:
      return unreachable(second);
  }
}

/** The same key for the same way. */
export const wayKey = (way: Way): string => JSON.stringify(way);

/** Ways of one family differ in details only: the best of each is shown. */
export function familyOf({ turn, located }: Way): string {
  switch (located.kind) {
    case 'stops':
      return `${turn} ${located.frontUp === located.backUp ? 'same corner' : 'opposite corners'}`;
    case 'dowels':
      return `${turn} dowels ${located.layout}`;
    case 'fence-and-dowel':
      return `${turn} fence and dowel`;
    case 'nest':
      return 'nest';
    default:
      return unreachable(located);
  }
}

/** In how many respects two ways differ. */
export function stepsBetween(a: Way, b: Way): number {
  const parts = ({ turn, located, zero }: Way): Readonly<Record<string, string>> => ({
    turn,
    zero,
    ...Object.fromEntries(Object.entries(located).map(([key, value]) => [key, String(value)])),
  });
  const [one, other] = [parts(a), parts(b)];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].filter((key) => one[key] !== other[key]).length;
}

/** Whether a stop, a fence at least, is part of it. */
export const standsOnStops = (job: Job): boolean => fenceIn(job) !== null;
