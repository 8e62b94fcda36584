import type { Source } from '../sources/source.ts';

/** The model's inputs in their order: each a deviation, and the source it draws from. */
export function inputsOf(
  sources: readonly Source[],
): readonly { readonly deviation: number; readonly source: Source }[] {
  return sources
    .flatMap((source) => source.deviations.map((deviation) => ({ deviation, source })))
    .sort((a, b) => a.deviation - b.deviation);
}
