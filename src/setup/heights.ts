import { hypotenuse } from '../num/elementary.ts';
import type { Face, Feature, Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import { bedSurface } from '../job/bed-surface.ts';
import { blankInLayout, layoutInBlank, layoutOnBed } from './place.ts';
import type { Placing } from './placing.ts';
import { placingKey } from './touching.ts';

/**
 * Heights of one trial. The bed rises by its leans and has a height of its own at each place; the
 * blank lies on it, lifted by swarf and by its cup, and has its own thickness everywhere. A cutter's
 * lowest plane is level with the machine's travel.
 * Source: registration.md section 1 (bed, blank in z) and rules 6 and 8.
 */
export interface Heights {
  /** Reads what all depths of trial `i` share. */
  readonly load: (draws: Float64Array, i: number) => void;
  /** Thickness of the blank at a place less its nominal thickness, mm. */
  readonly thicker: (at: Point<'blank'>) => number;
  /** How a feature's depth is found; ask once, before the trials. */
  readonly depthOf: (feature: Feature) => DepthFinder;
}

export interface DepthFinder {
  readonly load: (draws: Float64Array, i: number) => void;
  /** Real depth below the real face at a blank place less the nominal depth, mm. */
  readonly deeper: (at: Point<'blank'>) => number;
  /**
   * What the measured bed adds to that at a place, beside its lean, more than in the feature's middle, mm; the
   * same in all trials, so ask once. Null where the bed was not read place by place.
   */
  readonly unevenAt: ((at: Point<'blank'>) => number) | null;
}

/** Places of the bed within this distance are one place, with one height (rule 6). */
const SAME_PLACE_MM = 5;

export function heightsOf(
  job: Job,
  placings: Readonly<Record<Face, Placing>>,
  columns: Columns,
): Heights {
  const { widthMm, heightMm, cup } = job.blank;
  const thick = columns.of({ kind: 'thickness' });
  const taperX = columns.of({ kind: 'thickness-taper', axis: 'x' });
  const taperY = columns.of({ kind: 'thickness-taper', axis: 'y' });
  const hump = cup.pressedFlat ? null : columns.of({ kind: 'cup' });
  const side = cup.pressedFlat || cup.up !== null ? null : columns.of({ kind: 'cup-side' });
  const leanX = columns.of({ kind: 'bed-lean', axis: 'x' });
  const leanY = columns.of({ kind: 'bed-lean', axis: 'y' });
  const bedPlaces: Point<'layout'>[] = [];
  const bedAt = (at: Point<'layout'>): number => {
    const known = bedPlaces.find(
      (place) => hypotenuse(place.x - at.x, place.y - at.y) <= SAME_PLACE_MM,
    );
    if (known === undefined) bedPlaces.push(at);
    const place = known ?? at;
    return columns.of({ kind: 'bed-height', xMm: place.x, yMm: place.y });
  };

  let dThick = 0;
  let perX = 0;
  let perY = 0;
  let humpMm = 0;
  let upFront = true;
  let bedX = 0;
  let bedY = 0;

  const thicker = (at: Point<'blank'>): number =>
    dThick + perX * (at.x - widthMm / 2) + perY * (at.y - heightMm / 2);

  /** Height of the cup's arch at a blank place: the whole hump in the middle, nothing at the edges. */
  const arch = (at: Point<'blank'>): number => {
    const share = cup.along === 'x' ? at.x / widthMm : at.y / heightMm;
    return humpMm * 4 * share * (1 - share);
  };

  /** How far the underside stands off the bed because of the cup. */
  const lifted = (faceUp: Face, at: Point<'blank'>): number =>
    (faceUp === 'front') === upFront ? arch(at) : humpMm - arch(at);

  const depthOf = (feature: Feature): DepthFinder => {
    const placing = placings[feature.face];
    const zero = feature.face === 'front' ? job.zero.frontUp : job.zero.backUp;
    const key = placingKey(feature.face);
    const middle = blankInLayout(job, placing.mirror, { x: widthMm / 2, y: heightMm / 2 });
    const touched: Point<'layout'> = zero.z.at ?? middle;
    const touchedBlank = layoutInBlank(job, placing.mirror, touched);
    const touch = columns.of({ kind: 'z-touch', placing: key, cutter: feature.cutter.name });
    const swarf = columns.of({ kind: 'swarf', placing: key });
    const bedHere = bedAt(blankInLayout(job, placing.mirror, feature.at));
    const bedTouched = bedAt(touched);
    const onTop = zero.z.on === 'top';
    const off = bedOff(job);
    const onLayout = (at: Point<'blank'>): Point<'layout'> =>
      blankInLayout(job, placing.mirror, at);
    let constant = 0;
    return {
      load: (draws, i) => {
        const uneven = draws[bedHere + i]! - draws[bedTouched + i]!;
        const zeroOff = onTop
          ? lifted(feature.face, touchedBlank) + thicker(touchedBlank)
          : -draws[swarf + i]!;
        constant = uneven - zeroOff - draws[touch + i]!;
      },
      deeper: (at) => {
        const place = blankInLayout(job, placing.mirror, at);
        const lean = bedX * (place.x - touched.x) + bedY * (place.y - touched.y);
        return constant + lean + lifted(feature.face, at) + thicker(at);
      },
      unevenAt: off === null ? null : (at) => off(onLayout(at)) - off(onLayout(feature.at)),
    };
  };

  return {
    thicker,
    depthOf,
    load: (draws, i) => {
      dThick = draws[thick + i]!;
      perX = draws[taperX + i]!;
      perY = draws[taperY + i]!;
      humpMm = hump === null ? 0 : draws[hump + i]!;
      upFront = side === null ? cup.up !== 'back' : draws[side + i]! >= 0;
      bedX = draws[leanX + i]!;
      bedY = draws[leanY + i]!;
    },
  };
}

/** How far the measured bed stands off its own plane at a place, mm; null where only its lean is known. */
export function bedOff(job: Job): ((at: Point<'layout'>) => number) | null {
  const { heights } = job.shop.bed;
  if (heights === undefined) return null;
  const { at: surface, plane } = bedSurface(heights);
  return (place) => {
    const { x, y } = layoutOnBed(job, place);
    return surface(x, y) - (plane.level + plane.perX * x + plane.perY * y);
  };
}
