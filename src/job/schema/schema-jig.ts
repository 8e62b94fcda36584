import { JIG_SIZES, type JigSize } from '../jig-sizes.ts';
import type { Schema } from './build.ts';
import { about, either, keyed, number, optional, yesOrNo } from './build.ts';
import * as q from './quantities.ts';
import type { RawJig, RawJigPart } from './raw-jig.ts';

/** More of one thing than a bench needs is a slip of the finger. */
const MOST = 100;

const ABOUT: Readonly<Record<keyof typeof JIG_SIZES, string>> = {
  'dowel-board': 'a board with numbered dowel holes',
  'dowel-grid': 'a program that bores dowel holes into the spoilboard',
  'drill-guide': 'a block that leads the drill for the pins of the stops',
  'strap-clamp': 'bars that hold the blank down, with their heel blocks',
  'step-block': 'a staircase to stand under the heel of a clamp',
  'toe-clamp': 'low blocks that bear on the edge of the blank',
  'cam-clamp': 'eccentric discs that push the blank against the stops',
  'wedge-pair': 'wedges that push the blank against the stops',
  'shim-pads': 'pads of rising thickness',
  'test-piece': 'a piece that reads front against back, with its programs',
  'waste-combs': 'combs in the waste of the first part, with their programs',
  'steel-buttons': 'steel pins in grooves of the stops instead of printed buttons',
  'fence-stop': 'the fence of a job on a fence and a dowel, to print',
  'nest-frame': 'a frame to print, or to cut from sheet, in which the blank lies',
  'cam-base': 'plates with a captive nut on which cams turn, where no insert suits',
  'stops-from-sheet': 'programs that cut the stops from sheet',
  template: 'the bed on paper, 1:1, with holes and stops',
  skim: 'a program that skims the spoilboard level',
};

/** Keys of `jig`: each part with its sizes, or just `yes`. */
export const jig: Schema<RawJig> = keyed<RawJig>(
  Object.fromEntries(
    Object.entries(JIG_SIZES).map(([part, sizes]) => [
      part,
      optional(
        about(
          wish(part, sizes),
          `${ABOUT[part as keyof typeof JIG_SIZES]}: yes${Object.keys(sizes).length === 0 ? '' : ', or its sizes'}`,
        ),
      ),
    ]),
  ) as unknown as { [P in keyof RawJig]-?: Schema<RawJig[P]> },
);

function wish(part: string, sizes: Readonly<Record<string, JigSize>>): Schema<RawJigPart> {
  const shape = Object.fromEntries(
    Object.entries(sizes).map(([key, size]) => [key, optional(sizeOf(size))]),
  );
  const [first] = Object.entries(sizes);
  if (first === undefined) return yesOrNo();
  return either(
    keyed<Exclude<RawJigPart, string | boolean>>(shape as never),
    yesOrNo(),
    `write ${part}: yes, or its sizes such as {${first[0]}: ${first[1].value ?? 10}}`,
  );
}

function sizeOf({ kind, value, about: words }: JigSize): Schema<number | string> {
  return kind === 'count'
    ? about(howMany() as Schema<number | string>, words, value ?? 6)
    : about(kind === 'gap' ? q.distance() : q.size(), words, value ?? 20);
}

function howMany(): Schema<number> {
  return number(`write 1 to ${MOST}`, (value) =>
    Number.isInteger(value) && value >= 1 && value <= MOST ? null : 'is not a number of them',
  );
}
