import { unreachable } from '../num/invariant.ts';
import type { Need } from '../job/job.ts';

/** How a need is judged, and by which columns of a model's results. */
export type Judged =
  /** By the length of a vector whose parts stand in columns `x` and `x + 1`. */
  | {
      readonly shape: 'radial';
      readonly need: Extract<
        Need,
        { readonly withinMm: number; kind: 'concentric' | 'misalignment' }
      >;
      readonly x: number;
      readonly columnCount: 2;
      readonly high: number;
    }
  /** By the figure in column `at`; against `high`, of a lip with both limits, by that in column `at + 1`. */
  | {
      readonly shape: 'plain';
      readonly need: Exclude<Need, { readonly kind: 'concentric' | 'misalignment' }>;
      readonly at: number;
      readonly columnCount: 1 | 2;
      readonly unit: 'mm' | 'mm per 100';
      readonly low: number | null;
      readonly high: number | null;
    };

/** The needs in order, each with the next columns. */
export function judgedOf(needs: readonly Need[]): readonly Judged[] {
  let next = 0;
  return needs.map((need) => {
    const one = judged(need, next);
    next += one.columnCount;
    return one;
  });
}

/** Source: registration.md rule 10: a turn is judged per 100 mm, either way. */
function judged(need: Need, at: number): Judged {
  switch (need.kind) {
    case 'concentric':
    case 'misalignment':
      return { shape: 'radial', need, x: at, columnCount: 2, high: need.withinMm };
    case 'meets':
      return plain(need, at, 1, 'mm', null, need.withinMm);
    case 'parallel': {
      const within = need.withinTangent * 100;
      return plain(need, at, 1, 'mm per 100', -within, within);
    }
    case 'lip': {
      const { lowMm, highMm } = need.limits;
      return plain(need, at, lowMm !== null && highMm !== null ? 2 : 1, 'mm', lowMm, highMm);
    }
    case 'web':
    case 'wall':
    case 'depth':
    case 'size':
    case 'goes-on':
      return plain(need, at, 1, 'mm', need.limits.lowMm, need.limits.highMm);
    default:
      return unreachable(need);
  }
}

type Plain = Extract<Judged, { readonly shape: 'plain' }>;

function plain(
  need: Plain['need'],
  at: number,
  columnCount: Plain['columnCount'],
  unit: Plain['unit'],
  low: number | null,
  high: number | null,
): Judged {
  return { shape: 'plain', need, at, columnCount, unit, low, high };
}
