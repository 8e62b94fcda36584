import { basename, dirname } from 'node:path';
import { invariant } from '../num/invariant.ts';
import { measuredName, readMeasured, type MeasuredSource } from '../job/readings/measured-file.ts';
import type { BedHeights } from '../job/shop.ts';
import { measuredText } from '../job/readings/measured-text.ts';
import { spreadIn } from '../job/readings/with-measured.ts';
import type { Shop } from '../job/job.ts';
import { find, valueOf } from './find.ts';
import { writeTogether } from './write-together.ts';

/** A measured figure before it is known what it stands in for. */
export type Found = Omit<MeasuredSource, 'was'>;

/**
 * Puts measured figures into the file beside the shop file, with heights of the bed when there are new
 * ones; `shop` is as that file has it. Gives the path written. @throws Refusal when the measured file that is there is faulty.
 */
export function saveMeasured(
  shopFile: string,
  shop: Shop,
  found: readonly Found[],
  heights: BedHeights | null = null,
): string {
  const path = measuredName(shopFile);
  const bytes = find(path);
  const before = bytes === null ? null : readMeasured({ name: path, bytes });
  if (before !== null && before.faults.length > 0)
    valueOf(path, { ok: false, faults: before.faults });
  const sources = found.map((one): MeasuredSource => {
    const spread = spreadIn(shop, one.of);
    invariant(spread !== null, `the shop has no ${one.of}`);
    return { ...one, was: spread.text };
  });
  const { leanX, leanY, unevenness } = shop.bed;
  const kept =
    heights === null
      ? (before?.heights ?? null)
      : { ...heights, was: `${leanX.text}, ${leanY.text}, ${unevenness.text}` };
  const text = measuredText(before?.sources ?? [], sources, kept);
  writeTogether(dirname(path), [{ name: basename(path), bytes: text }]);
  return path;
}
