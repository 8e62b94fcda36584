import type { Distribution } from '../num/distribution.ts';
import { sdOf } from '../num/spread-of.ts';
import { shopPartsOf, type ShopParts } from '../job/readings/shop-parts.ts';
import { probablyMeant } from '../job/schema/closest.ts';
import { LENGTH } from '../job/text/length.ts';
import { readSpread } from '../job/text/spread.ts';
import { Refusal } from './exit.ts';
import { find, named, valueOf } from './find.ts';
import type { RunOptions } from './run-prediction.ts';

/** The options with the gauge that they name, of the shop of this job. @throws Refusal when there is none such. */
export function withGauge(options: RunOptions, path: string): RunOptions {
  const { gaugeText } = options;
  return gaugeText === null ? options : { ...options, gauge: gaugeFrom(gaugeText, path) };
}

/** @throws Refusal unless `text` tells how far off a gauge may be, or names a gauge of the shop. */
function gaugeFrom(text: string, path: string): Distribution {
  const read = readSpread(LENGTH, text);
  if (read.ok) return usable(text, read.value.distribution);
  // What begins like a figure is no name.
  if (/^[\s\d.±+-]/.test(text)) {
    const [fault] = read.faults;
    throw new Refusal(`--gauge: ${fault!.message}; ${fault!.instead}`);
  }
  const { parts, shopFile } = valueOf(path, shopPartsOf(named(path), find));
  return byName(text, parts.gauges ?? {}, shopFile);
}

function byName(
  name: string,
  gauges: NonNullable<ShopParts['parts']['gauges']>,
  shopFile: string,
): Distribution {
  const known = Object.keys(gauges);
  const written = Object.hasOwn(gauges, name) ? String(gauges[name]) : null;
  if (written === null) {
    const near = probablyMeant(name, known);
    const names =
      known.length === 0 ? 'no gauge has a name there' : `gauges there: ${known.join(', ')}`;
    throw new Refusal(
      `--gauge ${name}: not in ${shopFile}${near === null ? '' : `; did you mean ${near}?`}; ${names}; or write how far it may be off, such as ±0.03`,
    );
  }
  // A bare figure is good to plus or minus that.
  const text = LENGTH.read(written).ok ? `±${written}` : written;
  const read = readSpread(LENGTH, text);
  if (read.ok) return usable(`${name}, ${text}`, read.value.distribution);
  throw new Refusal(
    `--gauge ${name}: good to ${written} in ${shopFile}, which is not for lengths; name a gauge of lengths or write ±0.03`,
  );
}

function usable(text: string, distribution: Distribution): Distribution {
  if (Number.isFinite(sdOf(distribution))) return distribution;
  throw new Refusal(`--gauge ${text}: so few readings have no standard deviation; write ±0.03`);
}
