import type { Band, Fence, Job, Touch, Units } from '../../job/job.ts';
import { isAlongX } from '../laid.ts';
import { stepsOf, type Dial, type Written } from './dial.ts';

/** Contacts nearer to an end of an edge than this, mm, stand on what is broken off; less on short edges. */
const FROM_END = 10;
/** A stop touches this far above the bed and below the top at least, mm, so that chips and the cutter have room. */
const FROM_BED = 2;
/** Two contacts of a fence closer than this share of the edge hold no angle. */
export const LEAST_APART = 0.15;

/** Lengths of the edge on the fence and of the one on the side stop, mm. */
export function edgesOf({ blank }: Job, { fence }: Fence): readonly [number, number] {
  const { widthMm, heightMm } = blank;
  return isAlongX(fence) ? [widthMm, heightMm] : [heightMm, widthMm];
}

const KEY_WORDS = { 'fence-touch': 'fence', 'side-touch': 'side stop' } as const;

/** Dials of one touch, and how it is written. */
export function touchDials(
  key: keyof typeof KEY_WORDS,
  touch: Touch,
  edgeMm: number,
  units: Units,
  from: number,
): { readonly dials: readonly Dial[]; readonly written: Written } {
  const now = touch.kind === 'arm' ? [touch.fromMm, touch.toMm] : touch.atMm;
  const plain = plainTouch(touch, edgeMm);
  const inMm = Math.min(FROM_END, edgeMm / 8);
  const dials = now.map((mm, k): Dial => ({
    words: wordsOf(KEY_WORDS[key], touch, k),
    low: Math.min(inMm, mm),
    high: Math.max(edgeMm - inMm, mm),
    step: stepsOf(units).along,
    now: mm,
    plain: plain[k] ?? mm,
  }));
  return {
    dials,
    written: {
      path: ['stops', key],
      from,
      count: dials.length,
      value: (at, mm) => {
        const places = at.slice(from, from + dials.length).map(mm);
        return touch.kind === 'arm' ? { arm: places } : places.length === 1 ? places[0]! : places;
      },
    },
  };
}

function wordsOf(what: string, touch: Touch, k: number): string {
  if (touch.kind === 'arm') return `${what}: the arm ${k === 0 ? 'from' : 'to'}`;
  if (touch.atMm.length === 1) return `${what}: the button`;
  return `${what}: ${k === 0 ? 'one button' : 'the other button'}`;
}

/** Buttons a tenth in from the ends, one alone in the middle; an arm along the first 40 %, clear of the corner. */
function plainTouch(touch: Touch, edgeMm: number): readonly number[] {
  const tenth = Math.round(Math.max(Math.min(FROM_END, edgeMm / 4), edgeMm * 0.1));
  if (touch.kind === 'arm') {
    const from = Math.min(20, Math.round(edgeMm * 0.1));
    return [from, Math.round(Math.max(from + 20, Math.min(120, edgeMm * 0.4)))];
  }
  return touch.atMm.length === 1 ? [Math.round(edgeMm / 2)] : [tenth, Math.round(edgeMm - tenth)];
}

/** The same touch at other places; null when they are not in order, or too close to hold an angle. */
export function touchAt(
  touch: Touch,
  places: readonly number[],
  edgeMm: number,
  apart: 'apart' | 'any',
): Touch | null {
  const [first, second] = places;
  if (second !== undefined) {
    const leastMm = apart === 'apart' ? Math.min(LEAST_APART * edgeMm, gapOf(touch)) : 5;
    const gap = touch.kind === 'arm' ? second - first! : Math.abs(second - first!);
    if (gap < leastMm) return null;
  }
  return touch.kind === 'arm'
    ? { kind: 'arm', fromMm: first!, toMm: second! }
    : { kind: 'buttons', atMm: places };
}

function gapOf(touch: Touch): number {
  if (touch.kind === 'arm') return touch.toMm - touch.fromMm;
  return touch.atMm.length < 2 ? Infinity : Math.abs(touch.atMm[1]! - touch.atMm[0]!);
}

/** The height at which stops touch. */
export function bandDial(
  band: Band,
  thickMm: number,
  units: Units,
  from: number,
): { readonly dial: Dial; readonly written: Written } {
  const isNarrow = band.kind === 'narrow';
  const now = isNarrow ? band.touchHeightMm : band.heightMm;
  const edge = Math.min(FROM_BED, thickMm / 8);
  const dial: Dial = {
    words: isNarrow ? 'the height at which the stops touch' : 'the height of the stops',
    low: Math.min(edge, now),
    high: Math.max(thickMm - edge, now),
    step: stepsOf(units).up,
    now,
    plain: isNarrow ? thickMm / 2 : now,
  };
  return {
    dial,
    written: {
      path: ['stops', isNarrow ? 'touch-height' : 'height'],
      from,
      count: 1,
      value: (at, mm) => mm(at[from]!),
    },
  };
}

export const bandAt = (band: Band, mm: number): Band =>
  band.kind === 'narrow' ? { kind: 'narrow', touchHeightMm: mm } : { kind: 'plain', heightMm: mm };
