import type { Comparison, Row } from '../advise/ways/compare.ts';
import { wayWords } from '../advise/ways/words.ts';
import { editsText } from '../job/edit.ts';

/** A comparison for programs; chances 0..1, each with its standard error. */
export function compareJson(
  found: Comparison,
  { seed, trials }: { readonly seed: number; readonly trials: number },
): string {
  const { rows, refused, tried, asWritten } = found;
  return JSON.stringify(
    {
      json: 1,
      job: asWritten.job.name,
      seed,
      trials,
      tried,
      goodEnough: asWritten.job.goodEnoughShare,
      ways: rows.map(rowJson),
      notPossible: refused.map(({ way, because }) => ({ words: wayWords(way), way, because })),
    },
    null,
    2,
  );
}

const rowJson = (row: Row) => ({
  words: wayWords(row.way),
  asWritten: row.isAsWritten,
  way: row.way,
  heights: row.heights,
  edits: row.edits,
  write: editsText(row.edits),
  allGood: row.outcome.all,
  gain: row.gain,
  minutes: row.work.minutes,
  make: row.work.make,
  needs: row.outcome.needs.map(({ name, chance }) => ({ name, ...chance })),
  worst: row.worst,
});
