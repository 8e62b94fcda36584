import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber } from './number.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

const HUMIDITY = /^(\d+(?:\.\d+)?)\s*%?(?:\s*\.\.\s*(\d+(?:\.\d+)?)\s*%)?$/;
/** Nearer to 100 % wood grows mould, and the moisture it comes to rest at is not known. */
const DAMPEST_PERCENT = 95;

/** Relative humidity, 0..1, from the driest to the dampest: `45..60 %`, `50 %`. */
export function readHumidity(text: string): Result<readonly [number, number], TextFault> {
  const trimmed = text.trim();
  const parts = HUMIDITY.exec(trimmed);
  const low = readNumber(parts?.[1] ?? '');
  const high = parts?.[2] === undefined ? low : readNumber(parts[2]);
  if (low === null || high === null || !trimmed.endsWith('%'))
    return textFault(
      `${trimmed} is not a humidity`,
      'write the driest and the dampest such as 45..60 %',
    );
  if (low > high)
    return textFault(`${trimmed} runs from the larger to the smaller`, `write ${high}..${low} %`);
  if (high > DAMPEST_PERCENT)
    return textFault(
      `${trimmed} is damper than wood is kept`,
      `write at most ${DAMPEST_PERCENT} %`,
    );
  return ok([low / 100, high / 100]);
}

const TEMPERATURE = /^([+-]?[\d.]+)\s*°?\s*([CF])$/i;

/** Degrees Celsius: `20 C`, `68 F`. */
export function readTemperature(text: string): Result<number, TextFault> {
  const trimmed = text.trim();
  const parts = TEMPERATURE.exec(trimmed);
  const figure = readNumber(parts?.[1] ?? '');
  if (figure === null)
    return textFault(`${trimmed} is not a temperature`, 'write a temperature such as 20 C or 68 F');
  const celsius = parts?.[2]?.toUpperCase() === 'F' ? ((figure - 32) * 5) / 9 : figure;
  if (celsius < 0 || celsius > 60)
    return textFault(`${trimmed} is no temperature of a shop`, 'write 0 C to 60 C');
  return ok(celsius);
}
