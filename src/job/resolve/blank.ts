import type { Default } from '../defaults.ts';
import { DEFAULTS } from '../defaults.ts';
import type { Blank, Spread } from '../job.ts';
import type { RawBetween, RawBlank } from '../schema/raw-job.ts';
import type { RawSpread } from '../schema/raw-shop.ts';
import { cupOf } from './cup.ts';
import { limitsOf } from '../../num/spread-of.ts';
import { said } from '../text/said.ts';
import type { At, Context } from './context.ts';
import { fault } from './context.ts';
import type { EdgeSpreads } from './edges.ts';
import { mm } from './lengths.ts';
import { movementsOf } from './movement.ts';
import type { KnownSize } from './sized.ts';
import { sizeAt } from './sized.ts';
import { assumed, gapAt, spreadAt } from './spread.ts';

/** The blank; null, with its faults, when its size is not known. */
export function blankOf(
  context: Context,
  raw: RawBlank,
  between: RawBetween | undefined,
  edges: EdgeSpreads,
): Blank | null {
  const [width, height, thick] = raw.size.map((size, index) =>
    sizeAt(context, [raw.size, index], size, 'part'),
  ) as [KnownSize | null, KnownSize | null, KnownSize | null];
  [width, height, thick].forEach((size, index) => {
    if (size !== null) checkWide(context, [raw.size, index], size);
  });
  const at = calipered(context, raw, width, height);
  if (width === null || height === null || thick === null) return null;
  const edge = (key: EdgeKey, fallback: Default | Spread): Spread => {
    const value = raw[key];
    if (value === undefined) return isSpread(fallback) ? fallback : assumed(fallback);
    return spreadAt(context, [raw, key], value, isSpread(fallback) ? A_SLOPE : fallback);
  };
  return {
    widthMm: width.nominalMm,
    heightMm: height.nominalMm,
    thickMm: thick.nominalMm,
    material: raw.material ?? '',
    marked: raw.marked ?? [],
    widthSpread: width.spread ?? edges.size,
    heightSpread: height.spread ?? edges.size,
    thickSpread: thick.spread ?? edges.thickness,
    squareSpread: edge('square', edges.square),
    taperXSpread: edge('taper-x', edges.square),
    taperYSpread: edge('taper-y', edges.square),
    bevelSpread: edge('bevel', edges.bevel),
    crookSpread: edge('crook', edges.crook),
    bumpSpread: edge('bumps', edges.bumps),
    ...movementsOf(context, raw, between, thick.nominalMm),
    thicknessTaperX: thicknessTaper(context, raw, 'x'),
    thicknessTaperY: thicknessTaper(context, raw, 'y'),
    cup: cupOf(context, raw),
    swarf: gapAt(context, [raw, 'swarf'], raw.swarf, DEFAULTS.swarf, 'swarf'),
    ...at,
  };
}

/** A blank that may be off by more than this share of its size is not one part. */
const WIDEST_SHARE = 0.1;

function checkWide(context: Context, at: At, { nominalMm, spread }: KnownSize): void {
  if (spread === null) return;
  const widest = Math.max(...limitsOf(spread.distribution).map(Math.abs));
  if (widest <= WIDEST_SHARE * nominalMm) return;
  fault(
    context,
    at,
    `a size of ${said(nominalMm)} mm that may be off by ${said(widest)} mm is not one part`,
    `write at most ±${said(WIDEST_SHARE * nominalMm)}`,
  );
}

/** How a slope that is stated is read where the edges' word has no row for it. */
const A_SLOPE: Default = { ...DEFAULTS.lean, recurs: 'part' };

type EdgeKey = 'square' | 'taper-x' | 'taper-y' | 'bevel' | 'crook' | 'bumps';

const isSpread = (fallback: Default | Spread): fallback is Spread => 'distribution' in fallback;

/** One spread is for both directions, each with its own draw; `{x:, y:}` says them apart. */
function thicknessTaper(context: Context, raw: RawBlank, axis: 'x' | 'y'): Spread {
  const written = raw['thickness-taper'];
  if (typeof written === 'object' && ('x' in written || 'y' in written))
    return spreadAt(context, [written, axis], written[axis], DEFAULTS.thicknessTaper);
  const both = written as RawSpread | undefined;
  return spreadAt(context, [raw, 'thickness-taper'], both, DEFAULTS.thicknessTaper);
}

function calipered(
  context: Context,
  raw: RawBlank,
  width: KnownSize | null,
  height: KnownSize | null,
): Pick<Blank, 'widthAtYMm' | 'heightAtXMm'> {
  const written = raw.calipered;
  const within = (key: 'x-at' | 'y-at', size: KnownSize | null): number => {
    const half = (size?.nominalMm ?? 0) / 2;
    if (written?.[key] === undefined) return half;
    const place = mm(written[key]);
    if (size !== null && place > size.nominalMm)
      fault(
        context,
        [written, key],
        `${key} ${written[key]} is off the blank, which ends at ${size.nominalMm} mm`,
        `write 0 to ${size.nominalMm}`,
      );
    return place;
  };
  return { widthAtYMm: within('x-at', height), heightAtXMm: within('y-at', width) };
}
