import type { Fault } from '../job/fault.ts';
import type { BedCare } from '../job/readings/bed-care.ts';
import type { Doubt } from '../measure/doubts.ts';
import { unreachable } from '../num/invariant.ts';
import { deviationText, lengthText } from '../sheet/words.ts';

/** Why readings are not believed, each at its line, and what to do. */
export function doubtFaults(doubts: readonly Doubt[], care: BedCare): readonly Fault[] {
  return doubts.map((doubt) => {
    const index = 'index' in doubt ? doubt.index : 0;
    const line = care.readings[index]?.line ?? 1;
    const [message, instead] = said(doubt, care);
    return { file: care.readIn, line, column: 1, message, instead };
  });
}

function said(doubt: Doubt, { readings, board, units }: BedCare): readonly [string, string] {
  switch (doubt.kind) {
    case 'too few':
      return [
        `${doubt.count} ${doubt.count === 1 ? 'reading is' : 'readings are'} too few: three fix a plane, and only a fourth can show that the bed is not one`,
        'read at least 4 places, better 9 or more, spread over the whole board',
      ];
    case 'on one line':
      return [
        'all places stand on one line, so the lean across it cannot be told',
        'read places beside the line too',
      ];
    case 'axes swapped':
      return [
        `places are off the board of ${board.xMm} by ${board.yMm}, and on it when x and y change places`,
        'swap the x and y columns',
      ];
    case 'off the board': {
      const { x, y } = readings[doubt.index]!.at;
      return [
        `${x}, ${y} is not on the board of ${board.xMm} by ${board.yMm}`,
        'write places from its near-left corner',
      ];
    }
    case 'wild': {
      const { x, y } = readings[doubt.index]!.at;
      return [
        `the reading at ${x}, ${y} stands ${deviationText(doubt.offMm, units)} off the plane of all others, which scatter by ${lengthText(doubt.scatterMm, units)}`,
        'read it again; if it is so, write the second reading beside the first',
      ];
    }
    case 'all the same':
      return ['all heights are the same', 'write what was read, to the last digit the gauge shows'];
    default:
      return unreachable(doubt);
  }
}
