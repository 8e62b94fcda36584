import { fenceIn } from '../../job/located.ts';
import type { Edge, Job } from '../../job/job.ts';
import type { Edit, Plain } from '../../job/edit.ts';
import type { Variants } from '../../job/variants.ts';
import type { Point } from '../../plane/point.ts';
import { buttonsOn, levelButton, millOf } from '../contacts.ts';
import { dowelDiameterMm, placesInPairs, placesOnTurnLine } from '../dowel-places.ts';
import { LAID } from '../numbers.ts';
import { isAlongX, mirrored, placingsInOrder, tenths } from '../laid.ts';
import { boreOf } from './all-ways.ts';
import type { Located, Way } from './way.ts';

/** What to change in the file for a way; words when it cannot even be written. */
export type WayEdits = readonly Edit[] | { readonly because: string };

export function editsOfWay(variants: Variants, way: Way): WayEdits {
  const { job } = variants.whole;
  const at = locatedEdits(variants, way);
  if ('because' in at) return at;
  const turn: readonly Edit[] = way.turn === job.turn ? [] : [{ path: ['turn'], value: way.turn }];
  return [...turn, ...at, { path: ['zero'], value: zeroOf(variants, way) }];
}

function locatedEdits(variants: Variants, way: Way): WayEdits {
  const { job } = variants.whole;
  const { located } = way;
  const others = (kept: string): readonly Edit[] =>
    (['stops', 'dowels', 'nest'] as const)
      .filter((key) => key !== kept && variants.written([key]) !== undefined)
      .map((key) => ({ path: [key], value: null }));
  switch (located.kind) {
    case 'stops':
      return [...others('stops'), { path: ['stops'], value: stopsOf(variants, way, located) }];
    case 'dowels': {
      const diameterMm = diameterOf(job);
      const places =
        located.layout === 'line'
          ? placesOnTurnLine(job, way.turn, diameterMm)
          : placesInPairs(job, diameterMm);
      if (places === null)
        return {
          because: `there is no room for ${diameterMm} mm dowels ${located.layout === 'line' ? 'on the turn line' : 'in pairs'} clear of what is cut`,
        };
      return [...others('dowels'), { path: ['dowels'], value: dowelsOf(variants, way, places) }];
    }
    case 'fence-and-dowel': {
      const diameterMm = diameterOf(job);
      const places = placesOnTurnLine(job, way.turn, diameterMm);
      // The farther from the fence, the less its angle matters to the dowel.
      const place = places?.[isNearSide(located.fence) ? 1 : 0];
      if (place === undefined)
        return {
          because: `there is no room for a ${diameterMm} mm dowel on the turn line clear of what is cut`,
        };
      return [
        ...others('stops'),
        { path: ['stops'], value: fenceAndDowel(variants, way, located, place) },
      ];
    }
    case 'nest':
      return [...others('nest'), { path: ['nest'], value: nestOf(variants, located.around) }];
  }
}

const isNearSide = (edge: Edge): boolean => edge === 'lower' || edge === 'left';

const diameterOf = (job: Job): number =>
  job.locating === 'dowels' ? job.dowels.diameterMm : dowelDiameterMm(job.blank.thickMm);

/** Keys of the stops that hold for other stops too, as they are written. */
const KEPT_OF_STOPS = ['seat-gap', 'give'] as const;
const KEPT_WHEN_SET = ['angle', 'square', 'spacing'] as const;

function fenceKeys(
  variants: Variants,
  { fence, made }: { readonly fence: Edge; readonly made: string },
): Record<string, Plain> {
  const written = (variants.written(['stops']) ?? {}) as Readonly<Record<string, Plain>>;
  const isSameMaking = written['made'] === made;
  const kept = [
    ...KEPT_OF_STOPS,
    ...(isSameMaking && made !== 'milled-in-place' ? KEPT_WHEN_SET : []),
    ...(isSameMaking && made === 'milled-in-place' ? ['cutter'] : []),
  ].filter((key) => written[key] !== undefined);
  const { job } = variants.whole;
  const milling =
    made === 'milled-in-place' && !kept.includes('cutter') ? { cutter: millOf(job) } : {};
  return {
    fence: `${fence}-edge`,
    made,
    ...milling,
    ...Object.fromEntries(kept.map((key) => [key, written[key]!])),
  };
}

function stopsOf(
  variants: Variants,
  way: Way,
  located: Extract<Located, { kind: 'stops' }>,
): Plain {
  const { job } = variants.whole;
  const keys = fenceKeys(variants, located);
  const height = bandKeys(variants.whole, located.band);
  return {
    corner: { 'front-up': located.frontUp, 'back-up': located.backUp },
    ...keys,
    ...touchKeys(job, located, way),
    ...height,
  };
}

/** Where stops touch that nobody has placed yet. */
function touchKeys(
  job: Job,
  located: Extract<Located, { kind: 'stops' }>,
  way: Way,
): Record<string, Plain> {
  const before = job.locating === 'stops' ? job.stops : null;
  if (before !== null && before.fence === located.fence && job.turn === way.turn) {
    const isSame =
      before.fenceTouch.kind === before.sideTouch.kind &&
      (before.fenceTouch.kind === 'arm') === (located.touch === 'arms');
    if (isSame)
      return {
        'fence-touch': touchText(before.fenceTouch),
        'side-touch': touchText(before.sideTouch),
      };
  }
  const { widthMm, heightMm } = job.blank;
  const [fenceMm, sideMm] = isAlongX(located.fence) ? [widthMm, heightMm] : [heightMm, widthMm];
  if (located.touch === 'arms')
    return { 'fence-touch': armOn(fenceMm), 'side-touch': armOn(sideMm) };
  return {
    'fence-touch': buttonsOn(fenceMm),
    'side-touch': levelButton(job, located.fence, located.frontUp),
  };
}

type TouchOf = Extract<Job, { locating: 'stops' }>['stops']['sideTouch'];

const touchText = (touch: TouchOf): Plain =>
  touch.kind === 'arm'
    ? { arm: [touch.fromMm, touch.toMm] }
    : touch.atMm.length === 1
      ? touch.atMm[0]!
      : [...touch.atMm];

/** An arm of 25 to 40 % of the edge, clear of the corner. */
function armOn(edgeMm: number): Plain {
  const from = Math.min(20, Math.round(edgeMm * 0.1));
  return { arm: [from, Math.round(Math.max(from + 20, Math.min(120, edgeMm * 0.4)))] };
}

function bandKeys({ job }: { readonly job: Job }, band: 'plain' | 'narrow'): Record<string, Plain> {
  const before = fenceIn(job)?.band;
  if (band === 'narrow')
    return {
      'touch-height':
        before?.kind === 'narrow' ? before.touchHeightMm : tenths(job.blank.thickMm / 2),
    };
  return {
    height: before?.kind === 'plain' ? before.heightMm : tenths(job.blank.thickMm / 3),
  };
}

const KEPT_OF_DOWELS = ['clearance', 'fit', 'bush', 'pin', 'hole'] as const;

function holeKeys(variants: Variants, way: Way): Record<string, Plain> {
  const { job } = variants.whole;
  const written = (variants.written(['dowels']) ??
    variants.written(['stops', 'dowel']) ??
    {}) as Readonly<Record<string, Plain>>;
  const kept = KEPT_OF_DOWELS.filter((key) => written[key] !== undefined);
  return {
    diameter: written['diameter'] ?? diameterOf(job),
    ...Object.fromEntries(kept.map((key) => [key, written[key]!])),
    drilled: 'with-the-blank',
    laid: written['laid'] ?? LAID,
    'take-up': way.turn === 'about-y' ? 'near' : 'left',
  };
}

const placeText = ({ x, y }: Point<'blank'>): Plain => [tenths(x), tenths(y)];

const dowelsOf = (variants: Variants, way: Way, places: readonly Point<'blank'>[]): Plain => ({
  at: places.map(placeText),
  ...holeKeys(variants, way),
});

function fenceAndDowel(
  variants: Variants,
  way: Way,
  located: Extract<Located, { kind: 'fence-and-dowel' }>,
  place: Point<'blank'>,
): Plain {
  const { job } = variants.whole;
  const edgeMm = isAlongX(located.fence) ? job.blank.widthMm : job.blank.heightMm;
  const keys = fenceKeys(variants, located);
  // Without a side stop these have nothing to be about.
  delete keys['square'];
  delete keys['spacing'];
  return {
    ...keys,
    'fence-touch': [...buttonsOn(edgeMm)],
    ...bandKeys(variants.whole, 'narrow'),
    // Pushed along the fence: the fence holds it the other way.
    dowel: {
      at: placeText(place),
      ...holeKeys(variants, way),
      'take-up': isAlongX(located.fence) ? 'left' : 'near',
    },
  };
}

function nestOf(variants: Variants, around: string | null): Plain {
  const { job } = variants.whole;
  const written = variants.written(['nest']) as Readonly<Record<string, Plain>> | undefined;
  const clearance = written?.['clearance'];
  return {
    ...(around === null ? {} : { around }),
    cutter: millOf(job),
    ...(clearance === undefined ? {} : { clearance }),
    'take-up': 'left',
  };
}

const KEPT_OF_ZERO = ['z', 'with'] as const;

/** Both zeros, with what they say of heights kept. */
function zeroOf(variants: Variants, way: Way): Plain {
  const { job } = variants.whole;
  const [first, second] = placingsInOrder(job);
  const [atFirst, atSecond] = zeroWords(job, way);
  const keys = (placing: typeof first, xy: Plain): Plain => {
    const written = (variants.written(['zero', placing]) ?? {}) as Readonly<Record<string, Plain>>;
    const kept = KEPT_OF_ZERO.filter((key) => written[key] !== undefined);
    return {
      ...(xy as object),
      ...Object.fromEntries(kept.map((key) => [key, written[key]!])),
      ...touchedZ(job, placing, way),
    };
  };
  return { [first]: keys(first, atFirst), [second]: keys(second, atSecond) };
}

/** The same place of the blank, wherever it lies when it is turned the other way. */
function touchedZ(job: Job, placing: 'front-up' | 'back-up', way: Way): Record<string, Plain> {
  const at = (placing === 'front-up' ? job.zero.frontUp : job.zero.backUp).z.at;
  if (at === null) return {};
  const onBlank = mirrored([at.x, at.y], placing, job.turn, job.blank);
  const there = mirrored(onBlank, placing, way.turn, job.blank);
  return { 'z-touched': [tenths(there[0]), tenths(there[1])] };
}

function zeroWords(job: Job, { located, zero }: Way): readonly [Plain, Plain] {
  const { frontUp, backUp } = job.zero;
  const second = job.first === 'front' ? backUp.xy : frontUp.xy;
  const kept: Plain = { xy: 'kept', kept: second.kind === 'kept' ? second.how : 'held' };
  switch (located.kind) {
    case 'dowels':
      return [{ xy: 'edges' }, kept];
    case 'fence-and-dowel':
      return [{ xy: 'edges' }, kept];
    case 'nest':
      return [{ xy: located.around === null ? 'nest' : 'middle' }, { xy: 'nest' }];
    case 'stops': {
      const isMilled = located.made === 'milled-in-place';
      const onStops: Plain = { xy: isMilled ? 'milled-stops' : 'stops' };
      if (zero === 'middle') return [{ xy: 'middle' }, { xy: 'middle' }];
      if (zero === 're-set') return [onStops, { xy: 'stops' }];
      if (zero === 'hole') return [onStops, { xy: 'hole', hole: boreOf(job)! }];
      return [onStops, kept];
    }
  }
}
