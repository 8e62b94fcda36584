import { DEFAULTS } from '../defaults.ts';
import type { Cup } from '../job.ts';
import type { RawBlank } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { assumed, gapAt } from './spread.ts';

/**
 * How the blank bows. Wood cups across its grain, so that is the direction unless the job names one;
 * without a grain it is Y. Nobody knows which face stands up unless it is said.
 */
export function cupOf(context: Context, raw: RawBlank): Cup {
  const cup = raw.cup;
  const along = cup?.along ?? (raw.grain === 'along-y' ? 'x' : 'y');
  return {
    hump:
      cup === undefined
        ? assumed({
            ...DEFAULTS.cupHump,
            because: `${DEFAULTS.cupHump.because}; along ${along}, not pressed flat`,
          })
        : gapAt(context, [cup, 'hump'], cup.hump, DEFAULTS.cupHump, 'a hump'),
    along,
    up: cup?.up ?? null,
    pressedFlat: cup?.['pressed-flat'] === 'yes' || cup?.['pressed-flat'] === true,
  };
}
