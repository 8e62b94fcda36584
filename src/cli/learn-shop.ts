import type { Job, Units } from '../job/job.ts';
import type { LogRow } from '../job/readings/log-file.ts';
import { logName } from '../job/readings/log-file.ts';
import { measuredName, readMeasured, type MeasuredSource } from '../job/readings/measured-file.ts';
import { shopPartsOf } from '../job/readings/shop-parts.ts';
import { half95 } from '../measure/estimate.ts';
import {
  learntFromParts,
  type FromParts,
  type Learnt,
  type PartsFigure,
} from '../measure/from-parts.ts';
import { dialSign } from '../setup/dial-sign.ts';
import { deviationText, trueMinus } from '../sheet/words.ts';
import { find, named, valueOf } from './find.ts';
import type { GaugesOf } from './learn-log.ts';
import { wrapped } from './lines.ts';
import { jobWithout } from './load.ts';
import type { Found } from './save-measured.ts';

/** How a measured figure begins to say that it is from a log: a later log takes its place, not its word. */
const FROM_PARTS = 'finished parts';

/** What finished parts tell of the shop, and what they are. */
export interface ShopLearnt {
  readonly told: FromParts;
  readonly because: string;
  /** The day of the last of them. */
  readonly measured: string;
  /** Figures that were measured in another way, which stays. */
  readonly otherwise: readonly string[];
  /** What was left out of the log, and why. */
  readonly leftOut: readonly string[];
}

/** Null when the log says nothing of the shop. `job` as it stands, with what is dialled in. */
export function shopFromParts(
  path: string,
  job: Job,
  rows: readonly LogRow[],
  gauges: GaugesOf,
): ShopLearnt | null {
  const { parts } = valueOf(path, shopPartsOf(named(path), find));
  const resurfaced = parts.bed?.resurfaced === undefined ? null : String(parts.bed.resurfaced);
  const leftOut: string[] = [];
  const counted: LogRow[] = [];
  const figures = job.needs.flatMap((need) =>
    ([null, 'x', 'y'] as const).flatMap((axis): PartsFigure[] => {
      const what = axis === null ? need.name : `${need.name} ${axis}`;
      const of = rows.filter((row) => row.what === what);
      if (of.length === 0) return [];
      const onBed = need.kind === 'depth' || need.kind === 'web';
      const known = of.filter(({ date }) => !onBed || resurfaced === null || date >= resurfaced);
      if (known.length < of.length)
        leftOut.push(
          `${what}: ${of.length - known.length} of before the board was re-surfaced on ${resurfaced!}`,
        );
      const dial = axis === null ? null : (job.dialled?.[axis] ?? null);
      const isDialled = ({ date }: LogRow): boolean =>
        dial !== null && date >= job.dialled!.measured;
      const usable = dial?.calipered == null ? known : known.filter((row) => !isDialled(row));
      if (usable.length < known.length)
        leftOut.push(
          `${what}: each blank's own length was dialled in, and the log does not say it`,
        );
      if (usable.length === 0) return [];
      counted.push(...usable);
      const values = new Map<number, number[]>();
      for (const row of usable) {
        // With nothing dialled in it would have come out so.
        const back =
          isDialled(row) && axis !== null ? dialSign(job, axis) * (dial?.offsetMm ?? 0) : 0;
        values.set(row.part, [...(values.get(row.part) ?? []), row.value - back]);
      }
      return [
        {
          need: need.name,
          axis,
          values: new Map([...values].map(([part, all]) => [part, mean(all)])),
          gaugeSd: Math.max(...usable.map(gauges)),
        },
      ];
    }),
  );
  if (figures.length === 0) return null;
  const otherwise = measuredBeside(path)
    .filter(({ because }) => !because.startsWith(FROM_PARTS))
    .map(({ of }) => of);
  const before = jobWithout(path, ({ because }) => because.startsWith(FROM_PARTS));
  const dates = counted.map(({ date }) => date).sort();
  const count = new Set(counted.map(({ part }) => part)).size;
  return {
    told: learntFromParts(before, figures),
    because: `${FROM_PARTS}: ${count} of ${logName(path)}, ${dates[0]!} to ${dates.at(-1)!}`,
    measured: dates.at(-1)!,
    otherwise,
    leftOut,
  };
}

function measuredBeside(path: string): readonly MeasuredSource[] {
  const { shopFile } = valueOf(path, shopPartsOf(named(path), find));
  const name = measuredName(shopFile);
  const bytes = find(name);
  return bytes === null ? [] : readMeasured({ name, bytes }).sources;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** What goes into the measured file. */
export const foundIn = ({ told, because, measured, otherwise }: ShopLearnt): readonly Found[] =>
  told.kind !== 'learnt'
    ? []
    : told.figures
        .filter(({ isTold, of }) => isTold && !otherwise.includes(of))
        .map(({ of, after }) => ({ of, ...after, measured, because }));

export function shopLines(
  { told, because, leftOut, otherwise }: ShopLearnt,
  units: Units,
): readonly string[] {
  const item = (text: string): string[] => wrapped(`- ${text}`, '  ');
  const left = leftOut.flatMap((text) => item(`left out: ${text}`));
  switch (told.kind) {
    case 'nothing':
      return left.length === 0 ? [] : ['', 'What these parts tell of the shop: nothing.', ...left];
    case 'not explained':
      return [
        '',
        ...wrapped(
          'Nothing is learnt of the shop from these parts: by all that can be off they would come out so less than once in a thousand times. Look for a blunder (a wrong turn, a chip in the corner, another set-up, a misreading) before you trust them.',
        ),
        ...left,
      ];
    case 'learnt': {
      const toldOf = told.figures.filter(({ isTold }) => isTold);
      const not = told.figures.filter(({ isTold }) => !isTold).map(({ words }) => words);
      return [
        '',
        `What these parts tell of the shop (${because.replace(/:.*/, '')}):`,
        ...toldOf.flatMap((one) =>
          item(
            `${learntWords(one, units)}${otherwise.includes(one.of) ? '; it was measured in another way, and that figure stays' : ''}`,
          ),
        ),
        ...(not.length === 0
          ? []
          : item(
              `no more than was known of ${not.join(', ')}: other things do the same to these figures; flipwright square, bed or a test piece tell them apart`,
            )),
        ...left,
      ];
    }
  }
}

function learntWords({ of, words, before, after }: Learnt, units: Units): string {
  const isSlope = !of.endsWith('.radius');
  const figure = (value: number): string =>
    isSlope ? deviationText(200 * value, units) : deviationText(value, units);
  const per = isSlope ? ' per 200 mm' : '';
  return `${words}: ${trueMinus(figure(after.value))} ±${figure(half95(after))}${per}; before ${figure(before.value)} ±${figure(1.96 * before.sd)}`;
}
