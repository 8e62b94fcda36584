import { invariant, unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import type { Corner, Edge, Job, Touch } from '../job/job.ts';
import type { Contact, Placing, Side } from './placing.ts';

/** Both layings of the blank as the job describes them, nominally, in the layout frame. */
export function placingsOf(job: Job): { readonly frontUp: Placing; readonly backUp: Placing } {
  const frontUp = placing(job, 'front');
  const backUp = placing(job, 'back');
  return { frontUp, backUp };
}

/** Layout place of the corner of the nominal rectangle. */
export function cornerAt(job: Job, corner: Corner): Point<'layout'> {
  return {
    x: corner.endsWith('left') ? 0 : job.blank.widthMm,
    y: corner.startsWith('near') ? 0 : job.blank.heightMm,
  };
}

/** Where a nominal blank place lies in the layout frame when `mirror` is how the blank lies. */
export function blankInLayout(
  job: Job,
  mirror: Placing['mirror'],
  at: Point<'blank'>,
): Point<'layout'> {
  return {
    x: mirror === 'x' ? job.blank.widthMm - at.x : at.x,
    y: mirror === 'y' ? job.blank.heightMm - at.y : at.y,
  };
}

/** The two sides of the bed that meet at a corner. */
export function sidesOf(corner: Corner): readonly [Side, Side] {
  const [farness, hand] = corner.split('-') as ['near' | 'far', 'left' | 'right'];
  return [farness, hand];
}

const SIDE_OF: Record<Edge, Side> = { lower: 'near', upper: 'far', left: 'left', right: 'right' };
const EDGE_AT: Record<Side, Edge> = { near: 'lower', far: 'upper', left: 'left', right: 'right' };
const OPPOSITE: Record<Edge, Edge> = {
  lower: 'upper',
  upper: 'lower',
  left: 'right',
  right: 'left',
};

export function oppositeEdge(edge: Edge): Edge {
  return OPPOSITE[edge];
}

/** The blank's edge that lies at this side of the bed. */
function edgeAt(side: Side, mirror: Placing['mirror']): Edge {
  const edge = EDGE_AT[side];
  const alongX = side === 'left' || side === 'right';
  const swapped = (mirror === 'x' && alongX) || (mirror === 'y' && !alongX);
  return swapped ? OPPOSITE[edge] : edge;
}

function placing(job: Job, face: 'front' | 'back'): Placing {
  const mirror = face === 'front' ? 'none' : job.turn === 'about-y' ? 'x' : 'y';
  const corner = face === 'front' ? job.stops.corner.frontUp : job.stops.corner.backUp;
  const fenceSide = SIDE_OF[job.stops.fence];
  const stopSide = sidesOf(corner).find((side) => side !== fenceSide)!;
  const firstSide = sidesOf(job.stops.corner.frontUp).find((side) => side !== fenceSide)!;
  const which = stopSide === firstSide ? 'first' : 'second';
  const lay: Lay = { job, mirror, fenceSide, firstSide };
  return {
    faceUp: face,
    order: job.first === face ? 'first' : 'second',
    mirror,
    fence: { side: fenceSide, edge: edgeAt(fenceSide, mirror) },
    sideStop: { side: stopSide, edge: edgeAt(stopSide, mirror), which },
    contacts: [
      ...contactsOf(lay, 'fence', 'fence', fenceSide, job.stops.fenceTouch),
      ...contactsOf(
        lay,
        'side',
        which === 'first' ? 'side' : 'side2',
        stopSide,
        job.stops.sideTouch,
      ),
    ],
    zero: zeroOf(job, face),
  };
}

interface Lay {
  readonly job: Job;
  readonly mirror: Placing['mirror'];
  readonly fenceSide: Side;
  readonly firstSide: Side;
}

function contactsOf(
  lay: Lay,
  face: Contact['face'],
  id: string,
  side: Side,
  touch: Touch,
): readonly Contact[] {
  const kind = touch.kind === 'arm' ? 'arm-end' : 'button';
  const distances = touch.kind === 'arm' ? [touch.fromMm, touch.toMm] : touch.atMm;
  return distances.map((mm, index) => {
    const at = contactAt(lay, side, face === 'fence' ? lay.firstSide : lay.fenceSide, mm);
    const along = side === 'near' || side === 'far' ? 'x' : 'y';
    const size = along === 'x' ? lay.job.blank.widthMm : lay.job.blank.heightMm;
    const alongEdgeMm = lay.mirror === along ? size - at[along] : at[along];
    return {
      id: `${id}-${index + 1}`,
      face,
      kind,
      at,
      edge: edgeAt(side, lay.mirror),
      alongEdgeMm,
    };
  });
}

/** The place on `side` of the rectangle that is `mm` away from the side `from`. */
function contactAt(lay: Lay, side: Side, from: Side, mm: number): Point<'layout'> {
  const { widthMm, heightMm } = lay.job.blank;
  const away = from === 'right' ? widthMm - mm : from === 'far' ? heightMm - mm : mm;
  switch (side) {
    case 'near':
      return { x: away, y: 0 };
    case 'far':
      return { x: away, y: heightMm };
    case 'left':
      return { x: 0, y: away };
    case 'right':
      return { x: widthMm, y: away };
    default:
      return unreachable(side);
  }
}

/**
 * Nominal zero of a placing's program: the corner of the side stop in use, the middle of the
 * blank, or, when kept, the first placing's.
 */
function zeroOf(job: Job, face: 'front' | 'back'): Point<'layout'> {
  const zero = face === 'front' ? job.zero.frontUp : job.zero.backUp;
  switch (zero.xy.kind) {
    case 'kept':
      return zeroOf(job, face === 'front' ? 'back' : 'front');
    case 'hole': {
      const { xy } = zero;
      const hole = job.features.find(({ name }) => name === xy.feature);
      invariant(hole !== undefined, `no feature ${xy.feature}`);
      const mirror = face === 'front' ? 'none' : job.turn === 'about-y' ? 'x' : 'y';
      return blankInLayout(job, mirror, hole.at);
    }
    case 'middle':
      return { x: job.blank.widthMm / 2, y: job.blank.heightMm / 2 };
    case 'milled-stops':
      return cornerAt(job, job.stops.corner.frontUp);
    case 'stops':
    case 'edges':
      return cornerAt(job, face === 'front' ? job.stops.corner.frontUp : job.stops.corner.backUp);
    default:
      return unreachable(zero.xy);
  }
}
