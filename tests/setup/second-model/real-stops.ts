import type { StopsJob } from '../../../src/job/job.ts';
import { cornerAt } from '../../../src/setup/place.ts';
import type { Contact, Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { dot, lineAt, meet, plus, turned, unit, type Line, type XY } from './vectors.ts';

export interface RealStops {
  /** Front-up corner, and the nominal axes from it: along the fence and into the blank. */
  readonly corner: XY;
  readonly along: XY;
  readonly into: XY;
  /** Its point is the one from which contacts are measured; so are the side faces'. */
  readonly fence: Line;
  readonly side: { readonly first: Line; readonly second: Line };
}

/** The faces of the stops as they really stand, in the machine. */
export function realStops(job: StopsJob, off: Off): RealStops {
  const { widthMm, heightMm } = job.blank;
  const corner = cornerAt(job, job.stops.corner.frontUp);
  const fenceAlongX = job.stops.fence === 'lower' || job.stops.fence === 'upper';
  const toRight = { x: corner.x === 0 ? 1 : -1, y: 0 };
  const toFar = { x: 0, y: corner.y === 0 ? 1 : -1 };
  const [along, into] = fenceAlongX ? [toRight, toFar] : [toFar, toRight];
  const nominal = { corner, along, into, lengthMm: fenceAlongX ? widthMm : heightMm };
  const faces =
    job.stops.made.kind === 'milled-in-place'
      ? milled(nominal, off, job.stops.made.cutter.name)
      : set(nominal, off);
  return { corner, along, into, ...faces };
}

interface Nominal {
  readonly corner: XY;
  readonly along: XY;
  readonly into: XY;
  readonly lengthMm: number;
}

type Faces = Pick<RealStops, 'fence' | 'side'>;

function set({ corner, along, into, lengthMm }: Nominal, off: Off): Faces {
  const get = (key: string): number => off[key] ?? 0;
  const turn = Math.atan(get('fence-angle'));
  const [fenceWay, square] = [turned(along, turn), turned(into, turn)];
  const second = plus(corner, fenceWay, lengthMm + get('spacing'));
  return {
    fence: { point: corner, direction: fenceWay },
    side: {
      first: {
        point: corner,
        direction: unit(plus(square, fenceWay, get('stop-square/first'))),
      },
      second: {
        point: second,
        direction: unit(plus(square, fenceWay, -get('stop-square/second'))),
      },
    },
  };
}

function milled({ corner, along, into, lengthMm }: Nominal, off: Off, cutter: string): Faces {
  const get = (key: string): number => off[key] ?? 0;
  const lands = ({ x, y }: XY): XY => ({
    x: (1 + get('scale/x')) * x + get('machine-lean') * y,
    y: (1 + get('scale/y')) * y,
  });
  /** The image of a line, cut back from the blank, which lies towards `blank`. */
  const cut = (through: XY, way: XY, blank: XY, face: string): Line => {
    const direction = unit(lands(way));
    const normal = { x: -direction.y, y: direction.x };
    const away = dot(normal, blank) > 0 ? -1 : 1;
    const back = get(`cutter-radius/${cutter}`) + get(`milled-face/${face}`);
    return { point: plus(plus(corner, lands(through)), normal, away * back), direction };
  };
  const origin = { x: 0, y: 0 };
  const far = plus(origin, along, lengthMm);
  const line = cut(origin, along, into, 'fence');
  const axis = along.x === 0 ? 'y' : 'x';
  const fence = { ...line, point: lineAt(line, axis, corner[axis]) };
  const first = cut(origin, into, along, 'side-first');
  const second = cut(far, into, { x: -along.x, y: -along.y }, 'side-second');
  return {
    fence,
    side: {
      first: { ...first, point: meet(fence, first) },
      second: { ...second, point: meet(fence, second) },
    },
  };
}

/** Where a contact really stands under the push, in the machine. */
export function realContact(stops: RealStops, placing: Placing, contact: Contact, off: Off): XY {
  const away = plus(contact.at, stops.corner, -1);
  const place =
    contact.face === 'fence'
      ? plus(stops.fence.point, stops.fence.direction, dot(away, stops.along))
      : sidePlace(stops.side[placing.sideStop!], dot(away, stops.into));
  const give = off[`give/${placing.faceUp}-up/${contact.face}`] ?? 0;
  return plus(place, intoBlank(stops, placing, contact.face), -give);
}

const sidePlace = ({ point, direction }: Line, mm: number): XY => plus(point, direction, mm);

/** Nominal direction from a face into the blank, in the machine. */
export function intoBlank(stops: RealStops, placing: Placing, face: 'fence' | 'side'): XY {
  if (face === 'fence') return stops.into;
  const sign = placing.sideStop === 'first' ? 1 : -1;
  return { x: sign * stops.along.x, y: sign * stops.along.y };
}
