import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Fault } from '../fault.ts';
import { inReadingOrder } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { textOf } from '../file/bytes.ts';
import { readYaml } from '../file/yaml.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawShopParts } from '../schema/raw-shop.ts';
import { validated } from '../schema/validate.ts';
import type { RawReadings } from './raw-readings.ts';
import { PART_OF_READINGS, READINGS } from './readings-schema.ts';

/** A readings file by itself, and where faults of its meaning go. */
export interface ReadingsFile {
  readonly raw: RawReadings;
  readonly context: Context;
}

/** The readings of a file whose form is sound; `gaugesOf` gives the gauges of the shop that it names. */
export function readReadings(
  file: NamedBytes,
  today: string,
  gaugesOf: (shop: string | null) => Result<RawShopParts, Fault>,
): Result<ReadingsFile, Fault> {
  const text = textOf(file);
  if (!text.ok) return text;
  const { root, places, faults } = readYaml(file.name, text.value);
  if (root === null) return faulty(faults);
  const checked = validated<RawReadings, Partial<RawReadings>>(
    READINGS,
    PART_OF_READINGS,
    root,
    places,
  );
  const formFaults = [...faults, ...checked.faults];
  if (formFaults.length > 0) return faulty(inReadingOrder(formFaults, [file.name]));
  const raw = checked.sound as RawReadings;
  const shop = gaugesOf(raw.shop ?? null);
  if (!shop.ok) return shop;
  const context: Context = {
    places,
    faults: [],
    notes: [],
    touched: checked.touched,
    spoilt: checked.spoilt,
    drawings: new Map(),
    gauges: shop.value.gauges ?? {},
  };
  if (raw['flipwright-readings'] !== 1)
    fault(
      context,
      [raw, 'flipwright-readings'],
      `flipwright-readings: ${raw['flipwright-readings']} is not a version this program reads`,
      'write flipwright-readings: 1',
    );
  if (raw.measured !== undefined && String(raw.measured) > today)
    fault(
      context,
      [raw, 'measured'],
      `measured ${raw.measured} is after today, ${today}`,
      'write the day they were read',
    );
  return context.faults.length > 0 ? faulty(context.faults) : ok({ raw, context });
}
