import { BATCH } from '../num/batch.ts';
import type { Recurrence } from '../job/job.ts';
import type { MisfitModel } from '../setup/misfit.ts';
import type { Source } from '../sources/source.ts';
import { inputsOf } from '../stackup/inputs.ts';
import type { Model } from '../stackup/model.ts';
import { drawBatch } from '../stackup/trials.ts';
import type { Twist } from './outcome.ts';

/** What a test piece in the same set-up shows and the part then shares. */
const RECURS: readonly Recurrence[] = ['shop', 'power-up', 'setup'];
/** Batches of the test pieces' own draws, beyond those of any prediction. */
const FAR_BATCH = 1 << 24;

/**
 * Takes off the results what the mean of some test pieces of the same set-up showed: what recurs goes, and their own scatter over
 * the root of their number comes in (bench practice 2: three turns correct with confidence). There are two dials: one offset in plan,
 * by the mean of all needs that compare two places, and one in height, by the mean of all webs; what else hangs on them is left as it is.
 */
export function dialOf(
  model: Model,
  { judged }: MisfitModel,
  sources: readonly Source[],
  seed: number,
  { dialledTurns }: Twist,
): (draws: Float64Array, batch: number, count: number, out: Float64Array) => void {
  if (dialledTurns === 0) return () => undefined;
  const isKept = inputsOf(sources).map(({ source }) => RECURS.includes(source.recurs));
  const plan = judged.flatMap((one) => (one.shape === 'radial' ? [one.x] : []));
  const webs = judged.flatMap((one) =>
    one.shape === 'plain' && one.need.kind === 'web' ? [one.at] : [],
  );
  const dials = [plan, plan.map((x) => x + 1), webs].filter((columns) => columns.length > 0);
  const piece = new Float64Array(model.inputs.length * BATCH);
  const shown = new Float64Array(model.outputCount * BATCH);
  const offsets = dials.map(() => new Float64Array(BATCH));
  const atNothing = nothing(model);
  return (draws, batch, count, out) => {
    for (const offset of offsets) offset.fill(0);
    for (let turn = 1; turn <= dialledTurns; turn++) {
      drawBatch(model, seed, FAR_BATCH * turn + batch, 1, piece);
      isKept.forEach((kept, k) => {
        if (kept) piece.set(draws.subarray(k * BATCH, (k + 1) * BATCH), k * BATCH);
      });
      model.evaluate(piece, count, shown);
      dials.forEach((columns, d) => {
        const share = 1 / (dialledTurns * columns.length);
        for (const column of columns)
          for (let i = 0; i < count; i++)
            offsets[d]![i]! += (shown[column * BATCH + i]! - atNothing[column]!) * share;
      });
    }
    dials.forEach((columns, d) => {
      for (const column of columns)
        for (let i = 0; i < count; i++) out[column * BATCH + i]! -= offsets[d]![i]!;
    });
  };
}

/** The results with nothing off. */
function nothing(model: Model): readonly number[] {
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  model.evaluate(draws, 1, out);
  return Array.from({ length: model.outputCount }, (_, column) => out[column * BATCH]!);
}
