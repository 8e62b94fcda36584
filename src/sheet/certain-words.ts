import type { Units } from '../job/job.ts';
import type { Chance } from '../stackup/chance.ts';
import { RARE, toleranceOf } from '../stackup/digits.ts';
import type { Figures } from '../stackup/prediction.ts';
import { lengthText, MM_PER_INCH, trueMinus, unitText } from './words.ts';

/** What of a figure is written. */
type Written = Pick<Figures, 'mean' | 'sd' | 'interval95' | 'sure'>;

/** The mean of a predicted figure with its unit, with the digits that are certain and no more. */
export function meanText(figures: Written, digitsAsked: number, units: Units): string {
  return `${numberText(figures.mean, figures, figures.sure.mean, digitsAsked, units)} ${unitText(units)}`;
}

/** `0.02 to 0.19 mm`: the 95 % interval, both ends with as many digits as both have for certain. */
export function endsText(figures: Written, digitsAsked: number, units: Units): string {
  const sure = Math.max(figures.sure.low, figures.sure.high);
  const [low, high] = figures.interval95.map((end) =>
    numberText(end, figures, sure, digitsAsked, units),
  );
  return `${low!} to ${high!} ${unitText(units)}`;
}

/**
 * Chance of being good, with the digits that are certain of its smaller side and no more, rounded down so
 * that it never promises more: `98.9 %`, `over 99.9 %`. What never happened is told as below its bound.
 */
export function certainChanceText(
  chance: Pick<Chance, 'chance' | 'chance95' | 'chanceSure'>,
  digitsAsked: number,
): string {
  const [low, high] = chance.chance95;
  if (chance.chance === 1 || low >= 1 - RARE) return `over ${percent(Math.min(low, 1 - RARE), 1)}`;
  if (chance.chance === 0 || high <= RARE) return `under ${percentUp(Math.max(high, RARE))}`;
  const small = Math.min(chance.chance, 1 - chance.chance);
  const wanted = placesOf(toleranceOf(100 * small, digitsAsked));
  const places = Math.max(0, Math.min(wanted, placesOf(100 * chance.chanceSure)));
  return percent(chance.chance, places);
}

/** A predicted number without its unit, with the digits that are certain and no more. */
export function numberText(
  mm: number,
  { sd }: Pick<Figures, 'sd'>,
  sureMm: number,
  digitsAsked: number,
  units: Units,
): string {
  const per = units === 'inch' ? MM_PER_INCH : 1;
  if (sd === 0) return lengthText(mm, units).split(' ')[0]!;
  const wanted = placesOf(toleranceOf(sd / per, digitsAsked));
  const places = Math.max(0, Math.min(wanted, placesOf(sureMm / per), MOST_PLACES));
  return trueMinus((mm / per).toFixed(places));
}

const MOST_PLACES = 6;

/** Decimal places whose half unit is not below `sure`; 1e-9 keeps a half of a unit at its own place. */
const placesOf = (sure: number): number => Math.floor(-Math.log10(2 * sure) + 1e-9);

const percent = (share: number, places: number): string => {
  const steps = 100 * 10 ** places;
  // The half ulp keeps 0.996 at 99.6; 1e-9 is far below what is printed.
  return `${((Math.floor(share * steps + 1e-9) / steps) * 100).toFixed(places)} %`;
};

const percentUp = (share: number): string =>
  `${(Math.ceil(share * 1000 - 1e-9) / 10).toFixed(1)} %`;
