import type { Units } from '../job/job.ts';
import { numberText } from '../sheet/certain-words.ts';
import { deviationText, lengthText, unitText } from '../sheet/words.ts';
import type { Certainty, Figures, NeedPrediction } from '../stackup/prediction.ts';

/** How a need's figures are written: as lengths, or as a turn, which is the same number over 100 of any unit. */
export interface NeedUnits {
  readonly units: Units;
  readonly isTurn: boolean;
}

export const unitsOf = (need: NeedPrediction, units: Units): NeedUnits => ({
  units,
  isTurn: need.unit === 'mm per 100',
});

/** A limit or a nominal figure: `0.2 mm`, `0.1 in per 100 in`. */
export const limitText = (value: number, as: NeedUnits): string =>
  written(as, (units) => lengthText(value, units));

/** Something that was worked out, with the digits of its size. */
export const workedText = (value: number, as: NeedUnits): string =>
  written(as, (units) => deviationText(value, units));

/** One of a figure's predicted numbers, with its certain digits. */
export const certainText = (
  value: number,
  figures: Figures,
  sure: keyof Certainty,
  digitsAsked: number,
  as: NeedUnits,
): string =>
  written(
    as,
    (units) =>
      `${numberText(value, figures, figures.sure[sure], digitsAsked, units)} ${unitText(units)}`,
  );

/** What stands after the number. */
export const unitWords = ({ units, isTurn }: NeedUnits): string =>
  isTurn ? `${unitText(units)} per 100 ${unitText(units)}` : unitText(units);

function written(as: NeedUnits, text: (units: Units) => string): string {
  if (!as.isTurn) return text(as.units);
  return text('mm').replace(/ mm$/, ` ${unitWords(as)}`);
}
