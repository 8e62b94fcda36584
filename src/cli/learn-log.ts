import { faultText, type Note } from '../job/fault.ts';
import type { Job } from '../job/job.ts';
import { logLine, logName, readLog, type LogRow } from '../job/readings/log-file.ts';
import { gaugeNames, knownGauge, UNNAMED_SD } from '../job/readings/reading.ts';
import { shopPartsOf } from '../job/readings/shop-parts.ts';
import { suggestion } from '../job/schema/closest.ts';
import { readLength } from '../job/text/length.ts';
import { invariant } from '../num/invariant.ts';
import { outcomeOf, type Expected, type Outcome } from '../measure/outcome.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import { dialSign } from '../setup/dial-sign.ts';
import type { NeedPrediction } from '../stackup/prediction.ts';
import { appendLog } from './append-log.ts';
import { Refusal } from './exit.ts';
import { find, named, today, valueOf } from './find.ts';
import { predictJob } from './predict-job.ts';
import type { Say } from './verbs.ts';

/** Figures of one finished part to put into the log: `name=value` each. */
export interface Adding {
  readonly part: number;
  readonly figures: readonly string[];
  readonly gauge: string;
  readonly note: string;
}

/** One need's finished parts beside its prediction. */
export interface PartsOfNeed {
  readonly what: string;
  readonly unit: string;
  readonly expected: Expected;
  readonly interval95: readonly [number, number];
  readonly outcome: Outcome;
  /** Of a figure along one axis: the sign with which the second zero moves it. */
  readonly dialSign: 1 | -1 | null;
}

export interface LoggedParts {
  readonly rows: readonly LogRow[];
  readonly needs: readonly PartsOfNeed[];
  /** What was logged and is no need, and what was probably meant. */
  readonly others: readonly string[];
}

/** How good the gauge of a row is, as an sd in mm. */
export type GaugesOf = (row: LogRow) => number;

type Gauges = Parameters<typeof knownGauge>[0];

const gaugesOf = (path: string): Gauges =>
  valueOf(path, shopPartsOf(named(path), find)).parts.gauges ?? {};

/** A caliper, when the log does not say, or names a gauge that nobody knows. */
export function gaugesAt(path: string): GaugesOf {
  const gauges = gaugesOf(path);
  return ({ gauge, value }) => knownGauge(gauges, gauge)?.(value) ?? UNNAMED_SD;
}

/** @throws Refusal when a figure cannot be read or is of no need; then nothing is logged. */
export function addToLog(path: string, job: Job, adding: Adding, say: Say): void {
  const names = figureNames(job);
  const gauges = gaugesOf(path);
  if (adding.gauge !== '' && knownGauge(gauges, adding.gauge) === null)
    throw new Refusal(
      `--gauge ${adding.gauge}: neither the shop file nor a standard knows it for lengths; ${suggestion(adding.gauge, gaugeNames(gauges), 'gauge')}`,
    );
  const lines = adding.figures.map((figure) => {
    const parts = /^(.*\S)\s*=\s*(.*)$/.exec(figure);
    if (parts === null)
      throw new Refusal(`--add ${figure}: write the name of a need, =, and the figure`);
    const [, what = '', value = ''] = parts;
    if (!names.includes(what))
      throw new Refusal(`--add ${figure}: ${what} is no need; ${suggestion(what, names, 'need')}`);
    const read = readLength(value);
    if (!read.ok)
      throw new Refusal(`--add ${figure}: ${read.faults[0]!.message}; ${read.faults[0]!.instead}`);
    const { part, gauge, note } = adding;
    return logLine({ date: today(), part, what, value, gauge, note });
  });
  appendLog(logName(path), lines);
  say(`logged part ${adding.part} in ${logName(path)}\n`);
}

/** Every figure that a log can hold of a job: its needs, and of radial ones the two parts of the offset. */
const figureNames = (job: Job): readonly string[] =>
  job.needs.flatMap(({ kind, name }) =>
    kind === 'concentric' || kind === 'misalignment' ? [name, `${name} x`, `${name} y`] : [name],
  );

/** The log beside a job, judged. @throws Refusal with every faulty line; what is sound stays in the file. */
export function loggedParts(
  path: string,
  job: Job,
  options: PredictOptions,
): { readonly parts: LoggedParts | null; readonly cutShort: Note | null } {
  const name = logName(path);
  const bytes = find(name);
  if (bytes === null) return { parts: null, cutShort: null };
  const { rows, faults, cutShort } = readLog({ name, bytes });
  if (faults.length > 0)
    throw new Refusal(
      [
        `${name}: ${rows.length} ${rows.length === 1 ? 'row is' : 'rows are'} sound; mend what is not, nothing is lost`,
        ...faults.map(faultText),
      ].join('\n'),
    );
  if (rows.length === 0) return { parts: { rows, needs: [], others: [] }, cutShort };
  const names = figureNames(job);
  const others = [...new Set(rows.map(({ what }) => what))]
    .filter((what) => !names.includes(what))
    .map((what) => `${what} is no need of this job; ${suggestion(what, names, 'need')}`);
  const prediction = predictJob(job, options);
  const sdOfRow = gaugesAt(path);
  const needs = prediction.needs.flatMap((need) =>
    figuresOf(need).flatMap(({ what, axis, expected, interval95 }): PartsOfNeed[] => {
      const of = rows.filter((row) => row.what === what);
      if (of.length === 0) return [];
      const came = of.map(({ part, value }) => ({ order: part, value }));
      const gaugeSd = Math.max(...of.map(sdOfRow));
      return [
        {
          what,
          unit: need.unit,
          expected,
          interval95,
          outcome: outcomeOf(expected, came, gaugeSd),
          dialSign: axis === null ? null : dialSign(job, axis),
        },
      ];
    }),
  );
  return { parts: { rows, needs, others }, cutShort };
}

interface Figure {
  readonly what: string;
  readonly axis: 'x' | 'y' | null;
  readonly expected: Expected;
  readonly interval95: readonly [number, number];
}

function figuresOf(need: NeedPrediction): readonly Figure[] {
  const { recurring } = need;
  invariant(recurring !== null, 'nobody stops the prediction that a log is held against');
  const staysShare = Math.min(1, recurring.shop + recurring.powerUp + recurring.setup);
  const { mean, sd, chance, interval95, limits } = need;
  const whole: Figure = {
    what: need.name,
    axis: null,
    expected: { mean, sd, low: limits.low, high: limits.high, chance, staysShare },
    interval95,
  };
  if (need.shape === 'plain') return [whole];
  const part = (axis: 'x' | 'y'): Figure => {
    const one = need[axis];
    const within = limits.high ?? Infinity;
    return {
      what: `${need.name} ${axis}`,
      axis,
      expected: { ...one, low: -within, high: within, chance, staysShare },
      interval95: [one.mean - 1.96 * one.sd, one.mean + 1.96 * one.sd],
    };
  };
  return [whole, part('x'), part('y')];
}
