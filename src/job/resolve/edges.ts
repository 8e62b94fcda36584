import type { Default } from '../defaults.ts';
import { COMMON_PRACTICE, CUT_HERE, EDGES } from '../defaults.ts';
import type { Cutter, Machine, Spread } from '../job.ts';
import type { RawBlank } from '../schema/raw-job.ts';
import { LENGTH } from '../text/length.ts';
import type { Quantity } from '../text/quantity.ts';
import { SLOPE } from '../text/slope.ts';
import type { Context } from './context.ts';
import { fault } from './context.ts';
import { assumed, times } from './spread.ts';

/** What one word about the edges fills in: rows where a table says it, spreads where the machine does. */
export interface EdgeSpreads {
  readonly size: Spread;
  readonly thickness: Spread;
  /** Also how far opposite edges are from parallel. */
  readonly square: Default | Spread;
  readonly bevel: Default;
  readonly crook: Default;
  readonly bumps: Default;
}

/** Nothing said about the edges is taken as sawn, and said so. */
export function edgesOf(
  context: Context,
  raw: RawBlank,
  machine: Machine,
  cutters: readonly Cutter[],
): EdgeSpreads {
  const because =
    raw.edges === undefined
      ? `no edges are given, so sawn; ${COMMON_PRACTICE}`
      : `edges: ${raw.edges}; ${COMMON_PRACTICE}`;
  const row = (quantity: Quantity, text: string): Default => ({
    quantity,
    text,
    recurs: 'part',
    because,
  });
  if (raw.edges === 'cut-here') return cutHere(context, raw, machine, cutters, row);
  const table = EDGES[raw.edges ?? 'sawn'];
  return {
    size: assumed(row(LENGTH, table.size)),
    thickness: assumed(row(LENGTH, table.thickness)),
    square: row(SLOPE, table.square),
    bevel: row(SLOPE, table.bevel),
    crook: row(SLOPE, table.crook),
    bumps: row(LENGTH, table.bumps),
  };
}

/**
 * Edges trimmed on this machine. Both ends of a size are cut with the same cutter, so the size is off
 * by twice its radius error (of the first flat cutter). Squareness is as far off as the machine's
 * axes. Both are drawn anew for each part, independent of the machine's own draw: an approximation,
 * since the machine that trimmed the edges is the one that cuts.
 */
function cutHere(
  context: Context,
  raw: RawBlank,
  machine: Machine,
  cutters: readonly Cutter[],
  row: (quantity: Quantity, text: string) => Default,
): EdgeSpreads {
  const cutter = cutters.find((one) => one.kind === 'flat');
  if (cutter === undefined && cutters.length > 0)
    fault(
      context,
      [raw, 'edges'],
      'edges cut-here need a flat cutter, and the shop file has none',
      'add a cutter of kind: flat, or write edges: jointed',
    );
  const because = (what: string) =>
    ({ kind: 'assumed', because: `edges: cut-here, so ${what}` }) as const;
  const lean = machine.lean;
  return {
    size:
      cutter === undefined
        ? assumed(row(LENGTH, '0'))
        : {
            ...times(cutter.radiusError, 2),
            recurs: 'part',
            origin: because(`twice the radius error of ${cutter.name}`),
          },
    thickness: assumed(row(LENGTH, CUT_HERE.thickness)),
    square: { ...lean, recurs: 'part', origin: because("as square as the machine's axes") },
    bevel: row(SLOPE, CUT_HERE.bevel),
    crook: row(SLOPE, CUT_HERE.crook),
    bumps: row(LENGTH, CUT_HERE.bumps),
  };
}
