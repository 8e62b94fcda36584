import type { Recurrence } from './job.ts';
import type { RawEdgeWord } from './schema/raw-job.ts';
import { LENGTH } from './text/length.ts';
import type { Quantity } from './text/quantity.ts';
import { STRAIN } from './text/share.ts';
import { SLOPE } from './text/slope.ts';

/** A spread that nobody stated: as a person would write it, and how it recurs. */
export interface Default {
  readonly text: string;
  readonly quantity: Quantity;
  readonly recurs: Recurrence;
  readonly because: string;
}

export const COMMON_PRACTICE = 'common practice, no source';

const row = (
  quantity: Quantity,
  text: string,
  recurs: Recurrence,
  because = COMMON_PRACTICE,
): Default => ({ text, quantity, recurs, because });

/** What is assumed when the files are silent. All of it common practice without a source. */
export const DEFAULTS = {
  lean: row(SLOPE, '±0.3 per 200', 'shop'),
  scaleX: row(SLOPE, '±0.1 per 300', 'shop'),
  scaleY: row(SLOPE, '±0.1 per 300', 'shop'),
  repeatability: row(LENGTH, '0.02 sd', 'feature'),
  localError: row(LENGTH, '0', 'shop', 'nobody measured any'),
  homing: row(LENGTH, '±0.05', 'placing'),
  cutterLeanX: row(SLOPE, '±0.1 per 100', 'shop'),
  cutterLeanY: row(SLOPE, '±0.1 per 100', 'shop'),
  cutterRadius: row(LENGTH, '±0.02', 'shop'),
  pushOff: row(LENGTH, '0..0.05', 'feature'),
  bedLean: row(SLOPE, '±0.2 per 200', 'shop'),
  unevenness: row(LENGTH, '±0.05', 'shop'),
  handAngle: row(SLOPE, '±0.3 per 200', 'setup'),
  handSquare: row(SLOPE, '±0.1 per 100', 'setup'),
  handSpacing: row(LENGTH, '±0.3', 'setup'),
  pinAngle: row(SLOPE, '±0.1 per 200', 'setup'),
  pinSquare: row(SLOPE, '±0.1 per 200', 'setup'),
  pinSpacing: row(LENGTH, '±0.05', 'setup'),
  seatGap: row(LENGTH, 'half-normal 0.03', 'placing'),
  give: row(LENGTH, '0..0.02', 'placing'),
  clampDrag: row(LENGTH, '0..0.1', 'placing'),
  noClampDrag: row(LENGTH, '0', 'placing', 'a pusher keeps the blank on the stops'),
  paperTouch: row(LENGTH, '±0.02', 'setup'),
  restingTouch: row(LENGTH, '±0.1', 'placing'),
  thicknessTaper: row(SLOPE, '±0.1 per 200', 'part'),
  cupHump: row(LENGTH, '0..0.2', 'part'),
  swarf: row(LENGTH, 'half-normal 0.02', 'placing'),
  dowelClearance: row(LENGTH, '0..0.1', 'part'),
  drillError: row(LENGTH, '±0.1', 'part'),
  nestClearance: row(LENGTH, '0.05..0.15', 'setup'),
  laid: row(SLOPE, '±1 per 200', 'placing'),
  movement: row(STRAIN, '0', 'part', 'the placings follow each other at once'),
} as const satisfies Readonly<Record<string, Default>>;

/** Decided by what moves the axes. Lost motion is both ways together, as it is written in a shop file. */
export const BY_DRIVE = {
  screw: { lostMotion: '0.06', powerOff: row(LENGTH, '±0.05', 'power-up') },
  belt: { lostMotion: '0.2', powerOff: row(LENGTH, '±0.4', 'power-up') },
} as const;

/** What one word about the edges says. Slopes over 200 (square, taper) and 300 (crook) mm. */
export interface EdgeRow {
  readonly size: string;
  readonly thickness: string;
  readonly square: string;
  readonly bevel: string;
  readonly crook: string;
  readonly bumps: string;
}

const edges = (
  size: string,
  square: string,
  bevel: string,
  crook: string,
  bumps: string,
): EdgeRow => ({ size, thickness: size, square, bevel, crook, bumps });

export const EDGES: Readonly<Record<Exclude<RawEdgeWord, 'cut-here'>, EdgeRow>> = {
  'as-bought': edges('±2', '±1 per 200', '±1 deg', '±0.5 per 300', '0.10 sd'),
  sawn: edges('±0.4', '±0.3 per 200', '±0.4 deg', '±0.15 per 300', '0.04 sd'),
  jointed: edges('±0.2', '±0.1 per 200', '±0.15 deg', '±0.05 per 300', '0.02 sd'),
};

/**
 * Edges trimmed by this machine: size comes from the cutter (twice its radius error) and squareness
 * from the machine's lean, so those are not here. Trimming does not thickness a blank; that is
 * taken as if planed.
 */
export const CUT_HERE = {
  thickness: '±0.2',
  bevel: '±0.05 deg',
  crook: '±0.03 per 300',
  bumps: '0.01 sd',
} as const;

/** Flat at the tip of a V cutter, mm, as a text; common practice, no source. */
export const TIP_FLAT = '0.1';

/** Chance that counts as good enough. */
export const GOOD_ENOUGH_SHARE = 0.99;
