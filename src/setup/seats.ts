import { unreachable } from '../num/invariant.ts';
import type { FenceAndDowel, Job, Nest } from '../job/job.ts';
import { blankNest } from './blank-nest.ts';
import type { Columns } from './columns.ts';
import { dowelSeat } from './dowel-seat.ts';
import { dowelSlide, FREE_SLIDE } from './dowel-slide.ts';
import { dowelPlaces, type DowelPlaces } from './dowels.ts';
import { facesOf, fenceFaceOf, type Faces } from './faces.ts';
import { laidFreely } from './laid-freely.ts';
import type { Laid } from './landing.ts';
import { nestSeat } from './nest-seat.ts';
import { partNest } from './part-nest.ts';
import { cornerAt, frontUpCorner } from './place.ts';
import { dowelHolesIn } from '../job/located.ts';
import type { Placing } from './placing.ts';
import { seatOf, type Seat, type Slide } from './seat.ts';
import { sideSlide } from './side-slide.ts';
import type { Striking } from './strike.ts';
import { contactColumns, placingKey } from './touching.ts';
import type { Strains } from './wood-moves.ts';

/** How both placings of a blank are seated, in their order. */
export interface Seats {
  readonly first: Seat;
  /** When the zero of the first placing is found: what is drilled or read for the second. */
  readonly between: (draws: Float64Array, i: number) => void;
  readonly second: Seat;
}

/** Both placings, with the real faces of the stops in each. */
export interface Placings {
  readonly first: Laid & { readonly faces: Faces };
  readonly second: Laid & { readonly faces: Faces };
  /** The wood's strains between them. */
  readonly strains: Strains;
  readonly keepsZero: boolean;
}

export function seatsOf(job: Job, placings: Placings, columns: Columns): Seats {
  switch (job.locating) {
    case 'stops':
      return onStops(job, placings, columns);
    case 'dowels':
      return onDowels(job, placings, columns);
    case 'fence-and-dowel':
      return onFence(job, job.fenceAndDowel, placings, columns);
    case 'nest':
      return inNest(job, job.nest, placings, columns);
    default:
      return unreachable(job);
  }
}

/** Touched spots are named by the front-up placing, whichever face is cut first. */
const frontUpFirst = (first: Laid, second: Laid): readonly Placing[] => {
  const both = [first.placing, second.placing];
  return first.placing.faceUp === 'front' ? both : both.toReversed();
};

const nothing = (): void => undefined;

function onStops(
  job: Extract<Job, { locating: 'stops' }>,
  { first, second }: Placings,
  columns: Columns,
): Seats {
  const { stops } = job;
  const touching = contactColumns(frontUpFirst(first, second), columns);
  const seat = ({ placing, frame, faces }: Placings['first']): Seat => {
    const load = facesOf(job, stops.made, frame, columns);
    const slide = sideSlide({ job, stops, placing, frame, faces }, columns, touching);
    const pushed = seatOf({ job, fence: stops, placing, frame, faces, slide }, columns, touching);
    return (draws, i, shape, pose) => {
      load(draws, i, faces);
      pushed(draws, i, shape, pose);
    };
  };
  return { first: seat(first), between: nothing, second: seat(second) };
}

function onDowels(
  job: Extract<Job, { locating: 'dowels' }>,
  { first, second, strains }: Placings,
  columns: Columns,
): Seats {
  const { dowels } = job;
  const places = dowelPlaces(job, dowels, first, strains, columns);
  const seat = (laid: Laid): Seat =>
    dowelSeat(places.in(laid), dowels.takeUp, laid.frame, keyOf(laid), columns);
  if (dowels.drilled === 'separately') return drilledBefore(places, seat(first), seat(second));
  return {
    first: laidFreely(first.frame, keyOf(first), columns),
    between: places.drill,
    second: seat(second),
  };
}

function onFence(
  job: Job,
  fence: FenceAndDowel,
  { first, second, strains }: Placings,
  columns: Columns,
): Seats {
  const { takeUp, drilled } = fence.dowel;
  const places = dowelPlaces(job, dowelHolesIn(job)!, first, strains, columns);
  const touching = contactColumns(frontUpFirst(first, second), columns);
  const onDowel = (laid: Laid): Slide =>
    dowelSlide(places.in(laid), takeUp, laid.frame, keyOf(laid), columns);
  const seat = ({ placing, frame, faces }: Placings['first'], slide: Slide): Seat => {
    const load = fenceFaceOf(fence.made, frame, columns);
    const pushed = seatOf({ job, fence, placing, frame, faces, slide }, columns, touching);
    return (draws, i, shape, pose) => {
      load(draws, i, faces);
      pushed(draws, i, shape, pose);
    };
  };
  const last = seat(second, onDowel(second));
  if (drilled === 'separately') return drilledBefore(places, seat(first, onDowel(first)), last);
  return { first: seat(first, FREE_SLIDE), between: places.drill, second: last };
}

function drilledBefore(places: DowelPlaces, first: Seat, second: Seat): Seats {
  return {
    first: (draws, i, shape, pose) => {
      places.drill(draws, i);
      first(draws, i, shape, pose);
    },
    between: nothing,
    second,
  };
}

function inNest(
  job: Job,
  nest: Nest,
  { first, second, strains, keepsZero }: Placings,
  columns: Columns,
): Seats {
  const { x, y } = cornerAt(job, frontUpCorner(job));
  const own: Striking = {
    anchor: { x, xAtY: y, y, heightMm: nest.wallMm },
    found: { dx: 0, dy: 0 },
    cut: 'nest',
  };
  const round = (laid: Laid): Seat => {
    const walls = blankNest(job, nest, laid.placing, laid.frame, own, columns);
    return nestSeat(walls, nest.takeUp, laid.frame, keyOf(laid), columns);
  };
  if (nest.around === null) return { first: round(first), between: nothing, second: round(second) };
  // Cut from the zero that the first placing had, if that is kept.
  const striking = keepsZero ? { anchor: first.anchor, found: first.found, cut: 'nest' } : own;
  const walls = partNest(job, nest, [first, second], striking, strains, columns);
  return {
    first: laidFreely(first.frame, keyOf(first), columns),
    between: nothing,
    second: nestSeat(walls, nest.takeUp, second.frame, keyOf(second), columns),
  };
}

const keyOf = ({ placing }: Laid) => placingKey(placing.faceUp);
