import { invariant, unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import type { Corner, Edge, Feature, Job, Touch } from '../job/job.ts';
import { cornersOf, dowelHolesIn, fenceIn } from '../job/located.ts';
import { dowelLineMm, turnedAxis } from '../job/turned.ts';
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

/**
 * Where a nominal blank place lies in the layout frame when `mirror` is how the blank lies: mirrored about
 * the middle of the front-up rectangle, or about the line of the dowels.
 */
export function blankInLayout(
  job: Job,
  mirror: Placing['mirror'],
  at: Point<'blank'>,
): Point<'layout'> {
  if (mirror === 'none') return { x: at.x, y: at.y };
  const line = turnLineMm(job);
  return mirror === 'x' ? { x: 2 * line - at.x, y: at.y } : { x: at.x, y: 2 * line - at.y };
}

/** The blank place that lies at a place of the layout; a mirror undoes itself. */
export function layoutInBlank(
  job: Job,
  mirror: Placing['mirror'],
  at: Point<'layout'>,
): Point<'blank'> {
  const { x, y } = blankInLayout(job, mirror, { x: at.x, y: at.y });
  return { x, y };
}

/** Where the line stands about which the blank is turned: its x when turned about Y, else its y, mm. */
function turnLineMm(job: Job): number {
  const axis = turnedAxis(job.turn);
  const holes = dowelHolesIn(job);
  if (holes !== null) return dowelLineMm(holes, axis);
  return (axis === 'x' ? job.blank.widthMm : job.blank.heightMm) / 2;
}

/** Corner of the front-up rectangle from which the bed is measured: where the stops meet, or near left. */
export const frontUpCorner = (job: Job): Corner => cornersOf(job)[0];

/** Where a layout place lies on the bed. */
export function layoutOnBed(job: Job, p: Point<'layout'>): Point<'bed'> {
  const corner = cornerAt(job, frontUpCorner(job));
  const onBed = job.onBed.value;
  return { x: onBed.x + p.x - corner.x, y: onBed.y + p.y - corner.y };
}

export function bedInLayout(job: Job, p: Point<'bed'>): Point<'layout'> {
  const corner = cornerAt(job, frontUpCorner(job));
  const onBed = job.onBed.value;
  return { x: p.x - onBed.x + corner.x, y: p.y - onBed.y + corner.y };
}

/** The feature of that name. @throws InvariantError when a job names one that it does not have. */
export function featureNamed(job: Job, name: string): Feature {
  const found = job.features.find((feature) => feature.name === name);
  invariant(found !== undefined, `no feature ${name}`);
  return found;
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
  const mirror = mirrorOf(job, face);
  const [baseSide, endSide, firstSide] = sidesInUse(job, face);
  const near = blankInLayout(job, mirror, {
    x: mirror === 'x' ? job.blank.widthMm : 0,
    y: mirror === 'y' ? job.blank.heightMm : 0,
  });
  const lay: Lay = { job, mirror, fenceSide: baseSide, firstSide };
  const which: 'first' | 'second' = endSide === firstSide ? 'first' : 'second';
  const fence = fenceIn(job);
  const onFence =
    fence === null ? [] : contactsOf(lay, 'fence', 'fence', baseSide, fence.fenceTouch);
  const onSide =
    job.locating === 'stops'
      ? contactsOf(lay, 'side', which === 'first' ? 'side' : 'side2', endSide, job.stops.sideTouch)
      : [];
  const partial = {
    faceUp: face,
    order: job.first === face ? ('first' as const) : ('second' as const),
    mirror,
    lies: near,
    base: { side: baseSide, edge: edgeAt(baseSide, mirror) },
    end: { side: endSide, edge: edgeAt(endSide, mirror) },
    sideStop: job.locating === 'stops' ? which : null,
    contacts: [...onFence, ...onSide],
  };
  return { ...partial, zero: zeroOf(job, partial) };
}

function mirrorOf(job: Job, face: 'front' | 'back'): Placing['mirror'] {
  if (face === 'front') return 'none';
  return turnedAxis(job.turn);
}

/** Along which side a placing is measured, from which one, and from which with the front up. */
function sidesInUse(job: Job, face: 'front' | 'back'): readonly [Side, Side, Side] {
  const fence = fenceIn(job);
  const base = fence === null ? 'near' : SIDE_OF[fence.fence];
  const endOf = (corner: Corner): Side => sidesOf(corner).find((side) => side !== base)!;
  const frontUp = endOf(frontUpCorner(job));
  if (job.locating !== 'stops' || face === 'front') return [base, frontUp, frontUp];
  return [base, endOf(job.stops.corner.backUp), frontUp];
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
    return {
      id: `${id}-${index + 1}`,
      face,
      kind,
      at,
      edge: edgeAt(side, lay.mirror),
      alongEdgeMm: layoutInBlank(lay.job, lay.mirror, at)[along],
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
 * Nominal zero of a placing's program: the corner of the side stop in use (of the rectangle's base and end
 * when there is none), the middle of the blank, or, when kept, the first placing's.
 */
function zeroOf(job: Job, lying: Omit<Placing, 'zero'>): Point<'layout'> {
  const { faceUp, mirror } = lying;
  const { xy } = faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const { widthMm, heightMm } = job.blank;
  switch (xy.kind) {
    case 'kept':
      return placing(job, faceUp === 'front' ? 'back' : 'front').zero;
    case 'hole':
      return blankInLayout(job, mirror, featureNamed(job, xy.feature).at);
    case 'middle':
      return blankInLayout(job, mirror, { x: widthMm / 2, y: heightMm / 2 });
    case 'milled-stops':
    case 'dowels':
    case 'nest':
      return cornerAt(job, frontUpCorner(job));
    case 'stops':
    case 'edges': {
      const sides: readonly Side[] = [lying.base.side, lying.end.side];
      return {
        x: lying.lies.x + (sides.includes('right') ? widthMm : 0),
        y: lying.lies.y + (sides.includes('far') ? heightMm : 0),
      };
    }
    default:
      return unreachable(xy);
  }
}
