import type { Job } from '../job/job.ts';
import { sdOf } from '../num/spread-of.ts';
import { misfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import { straightOf } from '../stackup/first-order.ts';
import { inputsOf } from '../stackup/inputs.ts';
import { modelOf } from '../stackup/model-of.ts';

/** What a source has to do with the spread of a need, by straight lines over plus and minus one standard deviation. */
export interface Hurt {
  /** The source's name in `predict --json`, and its words for the middle of a sentence. */
  readonly source: string;
  readonly words: string;
  /** Of the variance, 0..1. */
  readonly share: number;
  /** The same in mm2 (of a turn: mm per 100, squared). */
  readonly variance: number;
}

/**
 * The sources of a need, the worst first. Straight lines see no kinks (the rocking of an arm is half of it), so these are for
 * words; figures come from re-runs.
 */
export function hurtsOf(job: Job, need: number): readonly Hurt[] {
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const model = modelOf(misfit, sources);
  const { slopes } = straightOf(model);
  const judged = misfit.judged[need]!;
  const columns = judged.shape === 'radial' ? [judged.x, judged.x + 1] : [judged.at];
  const bySource = new Map<string, { words: string; variance: number }>();
  inputsOf(sources).forEach(({ source }, k) => {
    const sd = sdOf(source.distribution);
    const variance = columns.reduce((sum, column) => sum + (slopes[column]![k]! * sd) ** 2, 0);
    const known = bySource.get(source.id);
    bySource.set(source.id, {
      words: source.words,
      variance: (known?.variance ?? 0) + (Number.isFinite(variance) ? variance : 0),
    });
  });
  const sum = [...bySource.values()].reduce((total, { variance }) => total + variance, 0);
  return [...bySource]
    .map(([source, { words, variance }]) => ({
      source,
      words,
      share: sum === 0 ? 0 : variance / sum,
      variance,
    }))
    .sort((a, b) => b.share - a.share);
}
