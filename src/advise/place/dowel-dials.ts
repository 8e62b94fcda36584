import type { DowelHoles, Job } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import { isFree, placesOnTurnLine } from '../dowel-places.ts';
import { editsOf, stepsOf, type Dial, type Places, type Written } from './dial.ts';

/** Hole middles stay this many diameters inside the blank's edges (bench practice), or as far as they are now. */
const EDGE_DIAMETERS = 2;
/** Two dowels closer than this, in diameters, hold no angle. */
const APART_DIAMETERS = 4;
/** Holes that fall on each other when turned may differ by this, mm (what a job file may). */
const SAME_PLACE_MM = 0.01;

/** Dials of dowels, the places they give (null: no wood there), and how those are written. */
export interface DowelDials {
  readonly dials: readonly Dial[];
  readonly placesAt: (values: readonly number[]) => readonly Point<'blank'>[] | null;
  readonly written: Written;
}

export function dowelPlaces(job: Extract<Job, { locating: 'dowels' }>): Places {
  const { dials, placesAt, written } = dowelDials(job, job.dowels, 0);
  return {
    dials,
    jobAt: (at) => {
      const places = placesAt(at);
      return places === null ? null : { ...job, dowels: { ...job.dowels, at: places } };
    },
    editsAt: editsOf(dials, [written], job.shop.units),
  };
}

export function dowelDials(job: Job, holes: DowelHoles, from: number): DowelDials {
  const made = holes.at.length === 1 ? oneDowel(job, holes) : mirroredDowels(job, holes);
  const leaves = woodLeft(job, holes);
  return {
    dials: made.dials,
    placesAt: (values) => {
      const places = made.placesAt(values);
      return leaves(places) ? places : null;
    },
    written: {
      path: job.locating === 'dowels' ? ['dowels', 'at'] : ['stops', 'dowel', 'at'],
      from,
      count: made.dials.length,
      value: (at, mm) => {
        const places = made.placesAt(at.slice(from, from + made.dials.length));
        const texts = places.map(({ x, y }) => [mm(x), mm(y)]);
        return holes.at.length === 1 ? texts[0]! : texts;
      },
    },
  };
}

interface Made {
  readonly dials: readonly Dial[];
  readonly placesAt: (values: readonly number[]) => readonly Point<'blank'>[];
}

function oneDowel(job: Job, { at: [place], diameterMm }: DowelHoles): Made {
  const { widthMm, heightMm } = job.blank;
  const dial = (axis: 'x' | 'y', lengthMm: number): Dial => ({
    words: axis === 'x' ? 'the dowel, from the left edge' : 'the dowel, from the lower edge',
    ...within(place![axis], lengthMm, diameterMm),
    step: stepsOf(job.shop.units).along,
    now: place![axis],
    plain: place![axis],
  });
  return {
    dials: [dial('x', widthMm), dial('y', heightMm)],
    placesAt: ([x, y]) => [{ x: x!, y: y! }],
  };
}

/** A dowel on the line about which the blank is turned, or one of a pair about it. */
type Member =
  | { readonly kind: 'on-line'; readonly along: number }
  | { readonly kind: 'pair'; readonly out: number; readonly along: number };

/** The line; then of each dowel on it how far along, and of each pair how far out and along: mirrored whatever is moved. */
function mirroredDowels(job: Job, holes: DowelHoles): Made {
  const [across, along] = job.turn === 'about-y' ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const { widthMm, heightMm } = job.blank;
  const [acrossMm, alongMm] = across === 'x' ? [widthMm, heightMm] : [heightMm, widthMm];
  const all = holes.at.map((place) => place[across]);
  const line = (Math.min(...all) + Math.max(...all)) / 2;
  const members = membersOf(holes.at, across, along, line);
  const { along: step } = stepsOf(job.shop.units);
  const plain = plainAlong(job, holes, members, along);
  const dials: readonly Dial[] = [
    {
      words: `the turn line, from the ${across === 'x' ? 'left' : 'lower'} edge`,
      ...within(line, acrossMm, holes.diameterMm),
      step,
      now: line,
      plain: line,
    },
    ...members.flatMap((member, k): readonly Dial[] => {
      const name = members.length === 1 ? '' : ` ${k + 1}`;
      const reach: Dial = {
        words: `${member.kind === 'pair' ? 'dowel pair' : 'dowel'}${name}, from the ${along === 'x' ? 'left' : 'lower'} edge`,
        ...within(member.along, alongMm, holes.diameterMm),
        step,
        now: member.along,
        plain: plain[k] ?? member.along,
      };
      if (member.kind === 'on-line') return [reach];
      const out: Dial = {
        words: `dowel pair${name}, out from the turn line`,
        low: Math.min(holes.diameterMm, member.out),
        high: Math.max(acrossMm / 2 - EDGE_DIAMETERS * holes.diameterMm, member.out),
        step,
        now: member.out,
        plain: member.out,
      };
      return [out, reach];
    }),
  ];
  const at = (a: number, b: number): Point<'blank'> =>
    across === 'x' ? { x: a, y: b } : { x: b, y: a };
  return {
    dials,
    placesAt: ([middle, ...rest]) => {
      const left = [...rest];
      return members.flatMap((member) => {
        if (member.kind === 'on-line') return [at(middle!, left.shift()!)];
        const [out, far] = [left.shift()!, left.shift()!];
        return [at(middle! - out, far), at(middle! + out, far)];
      });
    },
  };
}

function membersOf(
  places: readonly Point<'blank'>[],
  across: 'x' | 'y',
  along: 'x' | 'y',
  line: number,
): readonly Member[] {
  return places.flatMap((place): readonly Member[] => {
    const out = line - place[across];
    if (Math.abs(out) <= SAME_PLACE_MM) return [{ kind: 'on-line', along: place[along] }];
    return out > 0 ? [{ kind: 'pair', out, along: place[along] }] : [];
  });
}

/** Two dowels on the line: as far apart as there is wood. */
function plainAlong(
  job: Job,
  { diameterMm }: DowelHoles,
  members: readonly Member[],
  along: 'x' | 'y',
): readonly number[] {
  if (members.length !== 2 || members.some(({ kind }) => kind === 'pair')) return [];
  const far = placesOnTurnLine(job, job.turn, diameterMm)?.map((place) => place[along]) ?? [];
  return members[0]!.along <= members[1]!.along ? far : far.toReversed();
}

function within(now: number, lengthMm: number, diameterMm: number) {
  const edge = EDGE_DIAMETERS * diameterMm;
  return { low: Math.min(edge, now), high: Math.max(lengthMm - edge, now) };
}

/** Whether holes keep the wood round them that good practice wants; only what the job keeps now is asked for. */
function woodLeft(job: Job, { at: now, diameterMm }: DowelHoles) {
  const { widthMm, heightMm } = job.blank;
  const toEdge = ({ x, y }: Point<'blank'>): number => Math.min(x, widthMm - x, y, heightMm - y);
  const apart = (places: readonly Point<'blank'>[]): number =>
    Math.min(
      ...places.flatMap((one, k) =>
        places.slice(k + 1).map((other) => Math.hypot(one.x - other.x, one.y - other.y)),
      ),
    );
  const edgeMm = Math.min(EDGE_DIAMETERS * diameterMm, ...now.map(toEdge));
  const apartMm = Math.min(APART_DIAMETERS * diameterMm, apart(now));
  const isAsked = now.every((place) => isFree(job, place, diameterMm));
  return (places: readonly Point<'blank'>[]): boolean =>
    places.every((place) => toEdge(place) >= edgeMm - 1e-6) &&
    apart(places) >= apartMm - 1e-6 &&
    (!isAsked || places.every((place) => isFree(job, place, diameterMm)));
}
