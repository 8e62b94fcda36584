import { BATCH } from '../num/batch.ts';
import { fillFigure, fillGood, type Asked } from './figure.ts';

/** A function that puts 1 for each trial of a batch that is good in every question, else 0. */
export function allMet({
  figures,
  questions,
}: Asked): (out: Float64Array, count: number, met: Uint8Array) => void {
  const values = figures.map(() => new Float64Array(BATCH));
  const good = new Uint8Array(BATCH);
  return (out, count, met) => {
    figures.forEach((figure, f) => {
      fillFigure(figure, out, values[f]!, count);
    });
    met.fill(1);
    for (const question of questions) {
      fillGood(question, values, good, count);
      for (let i = 0; i < count; i++) met[i]! &= good[i]!;
    }
  };
}
