import { editsText } from '../job/edit.ts';
import type { Better, Placed, Placing } from '../advise/place/place.ts';
import { wayWords } from '../advise/ways/words.ts';

/** The same for programs: chances 0..1 with standard errors, places in mm. */
export function placeJson(
  { asWritten, hindrance, plain, advice, looked }: Placed,
  { seed, trials }: { readonly seed: number; readonly trials: number },
): string {
  return JSON.stringify(
    {
      json: 1,
      job: asWritten.job.name,
      seed,
      trials,
      looked,
      goodEnough: asWritten.job.goodEnoughShare,
      asWritten: placingJson(asWritten),
      cannotBeMade: hindrance,
      plain: plain.kind === 'possible' ? placingJson(plain) : { notPossible: plain.because },
      advice: advice.kind,
      found: 'found' in advice && advice.found !== null ? betterJson(advice.found) : null,
    },
    null,
    2,
  );
}

const placingJson = ({ edits, outcome }: Placing) => ({
  edits,
  write: editsText(edits),
  allGood: outcome.all,
  needs: outcome.needs.map(({ name, chance }) => ({ name, ...chance })),
});

const betterJson = (found: Better) => ({
  ...placingJson(found),
  moved: found.moved,
  way: found.way === null ? null : { words: wayWords(found.way), ...found.way },
  gain: found.gain,
  gainOverPlain: found.gainOverPlain,
  miss: found.miss,
});
