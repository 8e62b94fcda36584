import { BATCH } from '../num/batch.ts';
import { invariant } from '../num/invariant.ts';
import { meanOf } from '../num/spread-of.ts';
import type { DialledIn, Job } from '../job/job.ts';
import { deviationKey, type Axis, type Deviation } from '../setup/deviation.ts';
import { dialSign } from '../setup/dial-sign.ts';
import { misfitModel, type MisfitModel } from '../setup/misfit.ts';
import type { Source } from './source.ts';
import { sourcesOf } from './sources-of.ts';

/** A job's model with everything that can be off in it, ready for trials. */
export interface Predicted {
  readonly misfit: MisfitModel;
  readonly sources: readonly Source[];
}

/** What is the same for a test piece and for the parts after it in one set-up. */
const STAYS: ReadonlySet<Source['recurs']> = new Set(['shop', 'power-up', 'setup']);
/** What is new with each laying, so that several turns over show its mean. */
const AT_EACH_TURN: ReadonlySet<Source['recurs']> = new Set(['placing', 'feature']);

/** Every prediction goes through here: with offsets dialled in where the job has some. */
export function predictedModel(job: Job): Predicted {
  if (job.dialled !== undefined) return dialled(job, job.dialled);
  const misfit = misfitModel(job);
  return { misfit, sources: sourcesOf(job, misfit.deviations) };
}

/**
 * In each trial a test piece is turned over in the same shop and set-up, and what it shows is dialled
 * into the second zero. What stays is so taken out at the place that was judged, and what came with the test
 * piece itself comes in: its own length and edges, the mean of its placings, and the error of reading.
 * Where each blank is calipered its own length counts in place of the test piece's. The offset's figure itself
 * does not enter: it is what it had to be in that shop.
 */
function dialled(job: Job, { at, x, y, turns, file }: DialledIn): Predicted {
  const main = misfitModel(job, true);
  const piece = misfitModel({
    ...job,
    parts: { ...job.parts, count: 1 },
    needs: [{ kind: 'misalignment', name: 'test piece', at, withinMm: 1 }],
  });
  const axes = [
    { axis: 'x', told: x, result: 0 },
    { axis: 'y', told: y, result: BATCH },
  ] as const;
  const known = new Map(main.deviations.map((one, k) => [deviationKey(one), k]));
  const more: Deviation[] = [];
  const columnOf = (deviation: Deviation): number => {
    const key = deviationKey(deviation);
    const found = known.get(key);
    if (found !== undefined) return found;
    known.set(key, main.deviations.length + more.length);
    more.push(deviation);
    return known.get(key)!;
  };
  const pieceSources = sourcesOf(job, piece.deviations);
  const own = new Map<Source, number[]>();
  const fills = pieceSources.flatMap((source) =>
    source.deviations.map((k): Fill => {
      const deviation = piece.deviations[k]!;
      const calipered = caliperedAxis(deviation, axes);
      if (STAYS.has(source.recurs) || calipered !== null)
        return {
          to: k * BATCH,
          from: columnOf(deviation) * BATCH,
          mean: 0,
          times: 1,
          beside:
            calipered === null ? null : columnOf({ kind: 'calipered', axis: calipered }) * BATCH,
        };
      const column = columnOf({ kind: 'of-test-piece', what: deviationKey(deviation) });
      own.set(source, [...(own.get(source) ?? []), column]);
      const mean = meanOf(source.distribution);
      const times = AT_EACH_TURN.has(source.recurs) ? 1 / Math.sqrt(turns) : 1;
      const hasMean = Number.isFinite(mean);
      return {
        to: k * BATCH,
        from: column * BATCH,
        mean: hasMean ? mean : 0,
        times: hasMean ? times : 1,
        beside: null,
      };
    }),
  );
  const deviations = [...main.deviations, ...more];
  const drawn = deviations.map((one): Deviation | null =>
    one.kind === 'of-test-piece' ? null : one,
  );
  const plain = drawn.flatMap((one, k) => (one === null ? [] : [k]));
  const sources = [
    ...sourcesOf(
      job,
      plain.map((k) => deviations[k]!),
    ).map((source) => ({ ...source, deviations: source.deviations.map((k) => plain[k]!) })),
    ...[...own].map(([source, columns]): Source => ({
      ...source,
      id: `test piece ${source.id}`,
      words: `${source.words}, on the test piece`,
      recurs: 'setup',
      // Where it is assumed, that is told of the same source of a part.
      origin: { kind: 'stated', file, line: 1 },
      deviations: columns,
    })),
  ];
  const dials = axes.flatMap(({ axis, told, result }) => {
    const column = main.deviations.findIndex((one) => one.kind === 'dialled' && one.axis === axis);
    invariant(column >= 0, 'the model has no dial');
    return [{ column: column * BATCH, sign: dialSign(job, axis), result, isTold: told !== null }];
  });
  const all = new Float64Array(deviations.length * BATCH);
  const ofPiece = new Float64Array(piece.deviations.length * BATCH);
  const shown = new Float64Array(piece.outputCount * BATCH);
  return {
    sources,
    misfit: {
      ...main,
      deviations,
      evaluate: (draws, count, out) => {
        all.set(draws.subarray(0, all.length));
        for (const { to, from, mean, times, beside } of fills)
          for (let i = 0; i < count; i++)
            ofPiece[to + i] =
              mean + times * (draws[from + i]! - mean) + (beside === null ? 0 : draws[beside + i]!);
        piece.evaluate(ofPiece, count, shown);
        for (const { column, sign, result, isTold } of dials)
          for (let i = 0; i < count; i++)
            all[column + i] = isTold ? draws[column + i]! - sign * shown[result + i]! : 0;
        main.evaluate(all, count, out);
      },
    },
  };
}

/** How one draw of the test piece comes from those of the trial: columns, and a mean from which it is drawn in. */
interface Fill {
  readonly to: number;
  readonly from: number;
  readonly mean: number;
  readonly times: number;
  readonly beside: number | null;
}

/** The axis whose length is dialled in for each blank, when this is that length. */
function caliperedAxis(
  { kind }: Deviation,
  axes: readonly {
    readonly axis: Axis;
    readonly told: { readonly calipered: number | null } | null;
  }[],
): Axis | null {
  const axis = kind === 'width' ? 'x' : kind === 'height' ? 'y' : null;
  const told = axes.find((one) => one.axis === axis)?.told ?? null;
  return told?.calipered == null ? null : axis;
}
