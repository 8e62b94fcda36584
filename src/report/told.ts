import { certainChanceText } from '../sheet/certain-words.ts';
import type { Html } from '../sheet/html.ts';
import { joined, markup } from '../sheet/html.ts';
import { shareText } from '../sheet/words.ts';
import type { Chance } from '../stackup/chance.ts';
import type { Certainty, Figures } from '../stackup/prediction.ts';
import { certainText, limitText, workedText, type NeedUnits } from './need-units.ts';

/** Where a number stands in the published JSON of a prediction: `needs.0.mean`. */
export type JsonPath = string;

/** A number as it is read, with its unit, and beside it the value it was rounded from and where that stands. */
export function told(of: JsonPath, value: number, text: string): Html {
  return markup`<data value="${value}" data-of="${of}">${text}</data>`;
}

/** A limit or a nominal figure. */
export const toldLimit = (of: JsonPath, value: number, as: NeedUnits): Html =>
  told(of, value, limitText(value, as));

/** Something that was worked out, whose digits are not in doubt. */
export const toldWorked = (of: JsonPath, value: number, as: NeedUnits): Html =>
  told(of, value, workedText(value, as));

/** A share of a variance, or of parts. */
export const toldShare = (of: JsonPath, share: number): Html => told(of, share, shareText(share));

/** A chance of being good, with its certain digits; `of` is where the whole chance stands. */
export const toldChance = (of: JsonPath, chance: Chance, digitsAsked: number): Html =>
  told(`${of}.chance`, chance.chance, certainChanceText(chance, digitsAsked));

/** One of a figure's predicted numbers, with its certain digits. */
export const toldCertain = (
  of: JsonPath,
  value: number,
  figures: Figures,
  sure: keyof Certainty,
  digitsAsked: number,
  as: NeedUnits,
): Html => told(of, value, certainText(value, figures, sure, digitsAsked, as));

/** The two ends between which 95 in 100 parts lie, both with the digits that both have. */
export function toldEnds(
  of: JsonPath,
  figures: Figures,
  digitsAsked: number,
  as: NeedUnits,
): readonly [Html, Html] {
  const sure = figures.sure.low > figures.sure.high ? 'low' : 'high';
  const end = (k: 0 | 1): Html =>
    toldCertain(`${of}.interval95.${k}`, figures.interval95[k], figures, sure, digitsAsked, as);
  return [end(0), end(1)];
}

/** Pieces with something between each two. */
export const between = (pieces: readonly Html[], separator: string): Html =>
  joined(pieces.map((piece, k) => (k === 0 ? piece : markup`${separator}${piece}`)));
