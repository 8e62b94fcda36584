import type { Tabs } from '../job/holding.ts';
import type { Feature, Job } from '../job/job.ts';
import { limitsOf } from '../num/spread-of.ts';
import { differenceOf, intersectionOf, unionOf } from '../plane/clip.ts';
import { rectangleOutline, type Outline } from '../plane/outline.ts';
import { moved } from '../plane/move.ts';
import { regionsOf, type Region } from '../plane/regions.ts';
import { isWithin } from '../plane/stretch-inside.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import { kerfChordMm, kerfOf } from './kerf.ts';
import { holdNumbers } from './numbers.ts';

/** A piece that a through cut parts from the rest, when it does. */
export interface FreedPiece {
  /** `the inside of window`, `the rest around window`. */
  readonly name: string;
  readonly side: 'inside' | 'around';
  readonly region: Region<'blank'>;
  /** The largest of the pieces that a cut leaves: what the clamps of the blank are meant for. */
  readonly isRest: boolean;
  /** The feature whose cut frees it; cuts after it that pass it are looked at too. */
  readonly by: Feature;
  /** Features cut later, in either placing. */
  readonly later: readonly Feature[];
  readonly link: Link;
}

/** What still ties a piece to the rest once it is cut round. */
export type Link =
  | { readonly kind: 'none' }
  | { readonly kind: 'tabs'; readonly tabs: Tabs }
  /** Uncut wood of this thickness at the bottom of the cut, of this length. */
  | { readonly kind: 'skin'; readonly thickMm: number; readonly lengthMm: number };

/** Less than this is dust, not a piece, mm2. */
const DUST_MM2 = 1;

/** Features in the order in which they are cut. */
export const inOrder = (job: Job): readonly Feature[] => [
  ...job.features.filter(({ face }) => face === job.first),
  ...job.features.filter(({ face }) => face !== job.first),
];

/**
 * Every piece that the cuts part from the rest, by order of cuts, with the thinnest blank: through cuts,
 * and cuts from both faces that meet or leave no more than a skin between them.
 */
export function freedPieces(job: Job, tabsOf: ReadonlyMap<string, Tabs>): readonly FreedPiece[] {
  const { widthMm, heightMm } = job.blank;
  const blank = [
    moved<'blank'>(rectangleOutline<'blank'>(widthMm, heightMm, 0, 1), {
      x: widthMm / 2,
      y: heightMm / 2,
    }),
  ];
  const order = inOrder(job);
  const found: FreedPiece[] = [];
  let gone: readonly Outline<'blank'>[] = [];
  let whole = regionsOf<'blank'>(blank);
  order.forEach((feature, k) => {
    const { outlines, skinMm } = throughOf(job, feature, order.slice(0, k));
    if (outlines.length === 0) return;
    gone = unionOf([...gone, ...outlines]);
    const now = regionsOf(differenceOf(blank, gone)).filter(({ areaMm2 }) => areaMm2 > DUST_MM2);
    for (const before of whole) {
      const parts = now.filter((region) => isPartOf(region, before));
      if (parts.length < 2) continue;
      const later = order.slice(k + 1);
      found.push(
        ...parts.map((region, i) => pieceOf(feature, region, i === 0, later, tabsOf, skinMm)),
      );
    }
    whole = now;
  });
  return found;
}

function pieceOf(
  feature: Feature,
  region: Region<'blank'>,
  isRest: boolean,
  later: readonly Feature[],
  tabsOf: ReadonlyMap<string, Tabs>,
  skinMm: number,
): FreedPiece {
  const outline = outlineOf(feature, kerfChordMm);
  const side = isWithin(region.outlines[0]![0]!, [shrunkALittle(outline, region)])
    ? 'inside'
    : 'around';
  const tabs = tabsOf.get(feature.name);
  const link: Link =
    tabs !== undefined
      ? { kind: 'tabs', tabs }
      : skinMm > 0
        ? { kind: 'skin', thickMm: skinMm, lengthMm: lengthOf(outline) }
        : { kind: 'none' };
  const name =
    side === 'inside' ? `the inside of ${feature.name}` : `the rest around ${feature.name}`;
  return { name, side, region, isRest, by: feature, later, link };
}

/** The part of a profile cut outside has the very outline of the feature: a place of it must count as inside. */
function shrunkALittle(outline: Outline<'blank'>, { outlines }: Region<'blank'>): Outline<'blank'> {
  const at = outlines[0]![0]!;
  const middle = {
    x: outline.reduce((sum, p) => sum + p.x, 0) / outline.length,
    y: outline.reduce((sum, p) => sum + p.y, 0) / outline.length,
  };
  const far = Math.hypot(at.x - middle.x, at.y - middle.y);
  const more = far === 0 ? 1 : 1 + 0.05 / far;
  return outline.map((p) => ({
    x: middle.x + more * (p.x - middle.x),
    y: middle.y + more * (p.y - middle.y),
  }));
}

/** Where a feature, with those before it, leaves nothing or a skin; the skin's thickness is the least hold. */
function throughOf(
  job: Job,
  feature: Feature,
  before: readonly Feature[],
): { readonly outlines: readonly Outline<'blank'>[]; readonly skinMm: number } {
  const thinnestMm =
    job.blank.thickMm + Math.min(0, limitsOf(job.blank.thickSpread.distribution)[0]);
  const kerf = kerfOf(feature);
  const leftMm = feature.through ? 0 : thinnestMm - feature.depthMm;
  if (leftMm <= holdNumbers.skinMm) return { outlines: kerf, skinMm: Math.max(0, leftMm) };
  let skinMm = 0;
  const met = before.flatMap((other) => {
    if (other.face === feature.face) return [];
    const betweenMm = thinnestMm - feature.depthMm - other.depthMm;
    if (betweenMm > holdNumbers.skinMm) return [];
    const both = intersectionOf(kerf, kerfOf(other));
    if (both.length > 0) skinMm = Math.max(skinMm, betweenMm);
    return both;
  });
  return { outlines: met, skinMm: Math.max(0, skinMm) };
}

function isPartOf(region: Region<'blank'>, whole: Region<'blank'>): boolean {
  const shared = intersectionOf(region.outlines, whole.outlines);
  return regionsOf(shared).reduce((sum, { areaMm2 }) => sum + areaMm2, 0) > region.areaMm2 / 2;
}

const lengthOf = (outline: Outline<'blank'>): number =>
  outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length]!;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
