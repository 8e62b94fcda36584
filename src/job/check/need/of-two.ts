import { hypotenuse } from '../../../num/elementary.ts';
import { gapsWithin } from '../../../plane/path-gap.ts';
import { pathAreaMm2 } from '../../../plane/path-measure.ts';
import { featurePath } from '../../feature-path.ts';
import type { Blank, Feature, Need } from '../../job.ts';
import type { Context } from '../../resolve/context.ts';
import { fault } from '../../resolve/context.ts';
import type { RawNeed } from '../../schema/raw-job.ts';
import { said } from '../../text/said.ts';
import { overlapInPlan } from '../overlap.ts';
import type { Pair } from '../needs.ts';
import { checkNominal, ROUNDING_MM } from './limits.ts';

type Of<K extends Need['kind']> = Extract<Need, { kind: K }>;

/** Chords of arcs when two outlines are compared, mm: a tenth of what a person would notice. */
const CHORD_MM = 0.001;

export function checkConcentric(
  context: Context,
  need: Of<'concentric'>,
  raw: RawNeed,
  [a, b]: Pair,
): void {
  const offMm = hypotenuse(a.at.x - b.at.x, a.at.y - b.at.y);
  if (offMm > 0)
    fault(
      context,
      [raw, need.kind],
      `${a.name} and ${b.name} are drawn ${said(offMm)} mm apart, so they cannot be concentric`,
      'give them the same at',
    );
}

/** The smaller outline must lie within the larger one as drawn. */
export function checkLip(context: Context, need: Of<'lip'>, raw: RawNeed, pair: Pair): void {
  const [first, second] = pair.map(featurePath) as [Path, Path];
  const isFirstInner = pathAreaMm2(first) < pathAreaMm2(second);
  const [inner, outer] = isFirstInner ? [first, second] : [second, first];
  const [innerName, outerName] = isFirstInner
    ? [pair[0].name, pair[1].name]
    : [pair[1].name, pair[0].name];
  const { leastMm, mostMm } = gapsWithin(inner, outer, CHORD_MM);
  if (leastMm < -ROUNDING_MM)
    fault(
      context,
      [raw, need.kind],
      `${innerName} reaches ${said(-leastMm)} mm out of ${outerName}, so there is no lip all round`,
      'move one of them, or make it fit',
    );
  else checkNominal(context, need, raw, [leastMm, mostMm]);
}

type Path = ReturnType<typeof featurePath>;

/** A web is what two opposite features leave where one is over the other. */
export function checkWeb(
  context: Context,
  blank: Blank | null,
  need: Of<'web'>,
  raw: RawNeed,
  pair: Pair,
): void {
  if (!areOpposite(context, need, raw, pair, 'a web is left between a front and a back feature'))
    return;
  const through = pair.find((feature) => feature.through);
  if (through !== undefined) {
    fault(
      context,
      [raw, need.kind],
      `${through.name} is cut through, so no web is left`,
      'name two features with a depth',
    );
    return;
  }
  if (!overlapInPlan(...pair)) {
    fault(
      context,
      [raw, need.kind],
      `${pair[0].name} and ${pair[1].name} do not lie over each other, so they leave no web`,
      'name two features that overlap, or write wall or lip',
    );
    return;
  }
  if (blank === null) return;
  const leftMm = blank.thickMm - pair[0].depthMm - pair[1].depthMm;
  checkNominal(context, need, raw, [leftMm, leftMm]);
}

/** Two profiles meet when they are drawn alike, run on the same side, and are deep enough together. */
export function checkMeets(
  context: Context,
  blank: Blank | null,
  need: Of<'meets'>,
  raw: RawNeed,
  pair: Pair,
): void {
  if (!areOpposite(context, need, raw, pair, 'a front and a back profile meet')) return;
  const [a, b] = pair;
  const at = [raw, need.kind] as const;
  const other = pair.find(({ cut }) => cut !== 'profile-outside' && cut !== 'profile-inside');
  if (other !== undefined) {
    fault(
      context,
      at,
      `${other.name} is cut: ${other.cut}, and what meets is two profiles`,
      'write cut: profile-outside or profile-inside for both',
    );
    return;
  }
  if (a.cut !== b.cut) {
    fault(
      context,
      at,
      `${a.name} is cut: ${a.cut} and ${b.name} is cut: ${b.cut}, so they leave different sides`,
      'cut both on the same side',
    );
    return;
  }
  const apartMm = apart(a, b);
  if (apartMm > CHORD_MM) {
    fault(
      context,
      at,
      `the outlines of ${a.name} and ${b.name} are drawn ${said(apartMm)} mm apart`,
      'give both the same outline and place',
    );
    return;
  }
  const shortMm = (blank?.thickMm ?? 0) - a.depthMm - b.depthMm;
  if (shortMm > 0)
    fault(
      context,
      at,
      `${a.name} and ${b.name} leave ${said(shortMm)} mm between them, so they do not meet`,
      'cut one of them deeper',
    );
}

/** The largest distance from either outline to the other. */
function apart(a: Feature, b: Feature): number {
  const [one, other] = [featurePath(a), featurePath(b)];
  const gaps = [gapsWithin(one, other, CHORD_MM), gapsWithin(other, one, CHORD_MM)];
  return Math.max(...gaps.flatMap(({ leastMm, mostMm }) => [Math.abs(leastMm), Math.abs(mostMm)]));
}

/** Only what has a direction can be parallel, and it must be drawn so. */
export function checkParallel(
  context: Context,
  need: Of<'parallel'>,
  raw: RawNeed,
  pair: Pair,
): void {
  const round = pair.findIndex(({ shape }) => shape.kind === 'circle');
  if (round >= 0) {
    fault(
      context,
      [raw.parallel ?? raw, round],
      `${pair[round]!.name} is a circle, which has no direction`,
      'name a rectangle, slot, polygon or outline',
    );
    return;
  }
  const kinds = pair.map(({ shape }) => shape.kind);
  // The corners of a polygon or drawing may be turned by themselves, so only the others are compared.
  if (kinds.some((kind) => kind === 'polygon' || kind === 'outline')) return;
  // A rectangle looks the same along and across; a slot only the other way round.
  const repeatsRad = kinds.includes('rectangle') ? Math.PI / 2 : Math.PI;
  const turns = (pair[1].turnedRad - pair[0].turnedRad) / repeatsRad;
  const offDeg = (Math.abs(turns - Math.round(turns)) * repeatsRad * 180) / Math.PI;
  if (offDeg > 1e-9)
    fault(
      context,
      [raw, need.kind],
      `${pair[0].name} and ${pair[1].name} are drawn ${said(offDeg)} deg apart, so they cannot be parallel`,
      'give them the same turned',
    );
}

function areOpposite(
  context: Context,
  { kind }: Of<'web' | 'meets'>,
  raw: RawNeed,
  [a, b]: Pair,
  rule: string,
): boolean {
  if (a.face !== b.face) return true;
  fault(
    context,
    [raw, kind],
    `${rule}, and ${a.name} and ${b.name} are both cut from the ${a.face}`,
    'name one of each face',
  );
  return false;
}
