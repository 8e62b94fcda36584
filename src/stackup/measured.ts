import { fillNormal } from '../num/normal-table.ts';
import { fillWords, idOf } from '../num/stream.ts';
import { BATCH } from '../num/batch.ts';
import { normalShareBelow } from '../num/textbook.ts';
import type { Judged } from '../setup/judged.ts';
import type { Measured, Risks } from './prediction.ts';

/** Of a measured vector, so many readings of each kept trial. */
const READINGS = 4;
/** Lane of the gauge's own errors among the addressed streams. */
const GAUGE_LANE = 3;

/**
 * What measuring every part with a gauge of standard uncertainty `gaugeSd` would do: with the limits as they are,
 * and with a guard band of twice that uncertainty inside them. Worked over the kept trials: of a plain need
 * the gauge's normal error is integrated, of a radial one x and y are read with an error each.
 * Source: JCGM 106:2012, 8.3 (guard bands) and 9.5 (global risks).
 */
export function measuredWith(
  gaugeSd: number,
  judged: Judged,
  kept: readonly Float64Array[],
  seed: number,
): Measured {
  const risks = (guardMm: number): Risks =>
    judged.shape === 'plain'
      ? plainRisks(gaugeSd, judged, kept, guardMm)
      : radialRisks(gaugeSd, judged, kept, guardMm, seed);
  const guardMm = 2 * gaugeSd;
  return { gaugeSd, asIs: risks(0), guardMm, guarded: risks(guardMm) };
}

function plainRisks(
  gaugeSd: number,
  judged: Extract<Judged, { readonly shape: 'plain' }>,
  kept: readonly Float64Array[],
  guardMm: number,
): Risks {
  const { low, high } = judged;
  const lows = kept[judged.at]!;
  const highs = kept[judged.columnCount === 2 ? judged.at + 1 : judged.at]!;
  const below = (limit: number, value: number): number =>
    normalShareBelow((limit - value) / gaugeSd);
  return risksOf(lows.length, (i) => {
    const [a, b] = [lows[i]!, highs[i]!];
    const isGood = (low === null || a >= low) && (high === null || b <= high);
    const overLow = low === null ? 1 : 1 - below(low + guardMm, a);
    const underHigh = high === null ? 1 : below(high - guardMm, b);
    // One reading serves both limits, unless there are two figures to read.
    const accepted =
      judged.columnCount === 2 ? overLow * underHigh : Math.max(0, overLow + underHigh - 1);
    return { isGood, accepted };
  });
}

function radialRisks(
  gaugeSd: number,
  { x: at, high, need }: Extract<Judged, { readonly shape: 'radial' }>,
  kept: readonly Float64Array[],
  guardMm: number,
  seed: number,
): Risks {
  const [xs, ys] = [kept[at]!, kept[at + 1]!];
  const words = new Int32Array(2 * READINGS * BATCH);
  const errors = new Float64Array(2 * READINGS * BATCH);
  return risksOf(xs.length, (i) => {
    if (i % BATCH === 0) {
      fillWords(seed, idOf(`gauge/${need.name}`), i / BATCH, GAUGE_LANE, words, words.length);
      fillNormal(words, 0, gaugeSd, errors, 0, words.length);
    }
    const [x, y] = [xs[i]!, ys[i]!];
    let accepted = 0;
    for (let k = 0; k < READINGS; k++) {
      const from = 2 * (READINGS * (i % BATCH) + k);
      const [a, b] = [x + errors[from]!, y + errors[from + 1]!];
      if (Math.sqrt(a * a + b * b) <= high - guardMm) accepted += 1;
    }
    return { isGood: Math.sqrt(x * x + y * y) <= high, accepted: accepted / READINGS };
  });
}

function risksOf(
  count: number,
  trial: (i: number) => { readonly isGood: boolean; readonly accepted: number },
): Risks {
  let [falseAccept, falseReject, accepted] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const one = trial(i);
    accepted += one.accepted;
    if (one.isGood) falseReject += 1 - one.accepted;
    else falseAccept += one.accepted;
  }
  const share = (sum: number): number => sum / Math.max(1, count);
  return {
    accepted: share(accepted),
    falseAccept: share(falseAccept),
    falseReject: share(falseReject),
  };
}
