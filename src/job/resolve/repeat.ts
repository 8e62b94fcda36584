import { unreachable } from '../../num/invariant.ts';
import type { Feature, Need, Zero } from '../job.ts';
import type { RawRepeat } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault } from './context.ts';
import { pointMm } from './lengths.ts';

/** One of several parts in a blank: what its names end in, and how far it is from the part as it is written. */
export interface Copy {
  readonly suffix: string;
  readonly by: { readonly x: number; readonly y: number };
}

/** More would make a prediction of more needs than anybody reads. */
const MOST_COPIES = 100;

/** The copies, column by column within each row; one alone without a suffix when nothing is repeated. */
export function copiesOf(context: Context, raw: RawRepeat | undefined): readonly Copy[] {
  const alone = [{ suffix: '', by: { x: 0, y: 0 } }];
  if (raw === undefined) return alone;
  const [columns, rows] = raw.count;
  if (columns < 1 || rows < 1 || columns * rows > MOST_COPIES) {
    fault(
      context,
      [raw, 'count'],
      `count ${columns} by ${rows} is not a number of copies`,
      `write 1 or more each way, and at most ${MOST_COPIES} in all`,
    );
    return alone;
  }
  if (columns * rows === 1) return alone;
  const pitch = pointMm(raw.pitch);
  return Array.from({ length: columns * rows }, (_, index) => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    return {
      suffix: ` (${column + 1},${row + 1})`,
      by: { x: column * pitch.x, y: row * pitch.y },
    };
  });
}

export const featureOfCopy = (feature: Feature, { suffix, by }: Copy): Feature => ({
  ...feature,
  name: feature.name + suffix,
  at: { x: feature.at.x + by.x, y: feature.at.y + by.y },
});

export function needOfCopy(need: Need, { suffix, by }: Copy): Need {
  const name = need.name + suffix;
  switch (need.kind) {
    case 'misalignment':
      return { ...need, name, at: { x: need.at.x + by.x, y: need.at.y + by.y } };
    case 'concentric':
    case 'lip':
    case 'web':
    case 'meets':
    case 'parallel':
      return { ...need, name, features: [need.features[0] + suffix, need.features[1] + suffix] };
    case 'wall':
    case 'depth':
    case 'size':
      return { ...need, name, feature: need.feature + suffix };
    // One blank, however many parts are in it.
    case 'goes-on':
      return need;
    default:
      return unreachable(need);
  }
}

/** A hole that is named without its copy is that of the first. */
export const zeroOfCopies = (
  zero: Zero,
  copies: readonly Copy[],
  features: readonly Feature[],
): Zero =>
  zero.xy.kind === 'hole' && features.some(({ name }) => name === holeOf(zero))
    ? { ...zero, xy: { ...zero.xy, feature: zero.xy.feature + copies[0]!.suffix } }
    : zero;

const holeOf = ({ xy }: Zero): string => (xy.kind === 'hole' ? xy.feature : '');
