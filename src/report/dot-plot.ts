import type { Html } from '../sheet/html.ts';
import { joined, markup } from '../sheet/html.ts';
import { straightScale } from '../sheet/scale.ts';
import { ACCENT, FAINT, INK, dot, drawing, textAt } from '../sheet/svg.ts';
import { MM_PER_INCH, trueMinus } from '../sheet/words.ts';
import type { NeedPrediction } from '../stackup/prediction.ts';
import { limitText, unitWords, type NeedUnits } from './need-units.ts';

const WIDTH_MM = 150;
const LEFT_MM = 24;
const RIGHT_MM = 26;
const TOP_MM = 8;
const DOT_MM = 2.1;
const BINS = 48;
/** So many marks stand for all parts. */
export const MARKS = 100;

/**
 * One mark for each part in a hundred, heaped where such parts come out; beyond the limits crosses on hatched
 * ground. Below, on the same axis, 95 parts in 100 and the worst case.
 */
export function dotPlot(need: NeedPrediction, as: NeedUnits): Html {
  const marks = inHundred(valuesOf(need));
  const { low, high } = need.limits;
  const worst = [
    need.worst[0],
    (need.shape === 'plain' ? need.largest : null)?.worst[1] ?? need.worst[1],
  ];
  const limits = [low, high].filter((limit) => limit !== null);
  const all = [...marks, ...worst, ...limits, need.nominal];
  const [from, to] = widened(Math.min(...all), Math.max(...all));
  const right = WIDTH_MM - RIGHT_MM;
  const x = straightScale([from, to], [LEFT_MM, right]);
  const { heaps, highest } = heaped(marks, x, limits);
  const floor = TOP_MM + Math.max(12, highest * DOT_MM + 2);
  const height = floor + 27;
  const outside = [
    ...(low === null ? [] : [[LEFT_MM, x(low)] as const]),
    ...(high === null ? [] : [[x(high), right] as const]),
  ];
  const isGood = (value: number): boolean =>
    (low === null || value >= low) && (high === null || value <= high);
  return drawing(
    `${need.name}: where a hundred parts come out`,
    WIDTH_MM,
    height,
    joined([
      ...outside.map(([a, b]) => hatched(a, b, floor)),
      markup`<path d="M${LEFT_MM} ${dot(floor)}H${right}" stroke="${INK}" stroke-width="0.35"/>`,
      ...heaps.map(({ at, level, value }) =>
        mark(at, floor - (level + 0.55) * DOT_MM, isGood(value)),
      ),
      ...limitLines(need, as, x, floor),
      ...axis(from, to, x, floor, as),
      ...rows(need, worst as [number, number], x, floor),
    ]),
  );
}

/** The trials that a prediction shows: of a vector its length. */
const valuesOf = (need: NeedPrediction): readonly number[] =>
  need.shape === 'radial' ? need.cloud.map(([x, y]) => Math.hypot(x, y)) : need.sample;

/** The middles of a hundred equal shares of some values. */
function inHundred(values: readonly number[]): readonly number[] {
  const sorted = values.toSorted((a, b) => a - b);
  if (sorted.length === 0) return [];
  return Array.from({ length: MARKS }, (_, k) => {
    const at = ((k + 0.5) / MARKS) * sorted.length - 0.5;
    const [below, above] = [
      Math.max(0, Math.floor(at)),
      Math.min(sorted.length - 1, Math.ceil(at)),
    ];
    return sorted[below]! + (at - Math.floor(at)) * (sorted[above]! - sorted[below]!);
  });
}

interface Heaped {
  readonly at: number;
  readonly level: number;
  readonly value: number;
}

/** Each value over the middle of its bin, on top of those that are there; never on the other side of a limit. */
function heaped(
  values: readonly number[],
  x: (value: number) => number,
  limits: readonly number[],
): { readonly heaps: readonly Heaped[]; readonly highest: number } {
  const wide = (WIDTH_MM - LEFT_MM - RIGHT_MM) / BINS;
  // The first limit is an end of a bin.
  const from = limits[0] === undefined ? LEFT_MM : x(limits[0]);
  const levels = new Map<number, number>();
  const middle = (bin: number): number => from + (bin + 0.5) * wide;
  const heaps = values.map((value): Heaped => {
    let bin = Math.floor((x(value) - from) / wide);
    for (const limit of limits) {
      if (value <= limit && middle(bin) > x(limit)) bin -= 1;
      if (value > limit && middle(bin) < x(limit)) bin += 1;
    }
    const level = levels.get(bin) ?? 0;
    levels.set(bin, level + 1);
    return { at: middle(bin), level, value };
  });
  return { heaps, highest: Math.max(0, ...levels.values()) };
}

function mark(x: number, y: number, good: boolean): Html {
  return good
    ? markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="0.85" fill="${ACCENT}"/>`
    : markup`<path d="M${dot(x - 0.8)} ${dot(y - 0.8)}l1.6 1.6m0 -1.6l-1.6 1.6" stroke="${INK}" stroke-width="0.45"/>`;
}

/** Slanting lines over what is out of the limits. */
function hatched(from: number, to: number, floor: number): Html {
  const [top, high] = [TOP_MM, floor - TOP_MM];
  const lines: string[] = [];
  for (let start = from - high; start < to; start += 2.2) {
    const [a, b] = [Math.max(start, from), Math.min(start + high, to)];
    if (b > a)
      lines.push(
        `M${dot(a)} ${dot(top + high - (a - start))}L${dot(b)} ${dot(top + high - (b - start))}`,
      );
  }
  return markup`<path d="${lines.join('')}" stroke="${FAINT}" stroke-width="0.18" stroke-opacity="0.7"/>`;
}

/** Each limit with its words: beyond it where there is room for them, else on the good side. */
function limitLines(
  need: NeedPrediction,
  as: NeedUnits,
  x: (value: number) => number,
  floor: number,
): readonly Html[] {
  const { low, high } = need.limits;
  const line = (value: number, name: string, beyond: 'start' | 'end'): Html => {
    const at = x(value);
    const words = `${name} ${limitText(value, as).replace(/ per .*$/, '')}`;
    const wideMm = words.length * LETTER_MM + 1;
    const fits = beyond === 'end' ? at > wideMm : at + wideMm < WIDTH_MM;
    const isAlone = low === null || high === null;
    const anchor = fits && !isAlone ? beyond : beyond === 'end' ? 'start' : 'end';
    return joined([
      markup`<path d="M${dot(at)} ${TOP_MM - 3}V${dot(floor + 2)}" stroke="${INK}" stroke-width="0.8"/>`,
      textAt({ x: at + (anchor === 'start' ? 1 : -1), y: TOP_MM - 3.4 }, words, {
        sizeMm: 3.2,
        weight: 700,
        anchor,
      }),
    ]);
  };
  return [
    ...(low === null ? [] : [line(low, 'at least', 'end')]),
    ...(high === null ? [] : [line(high, 'at most', 'start')]),
  ];
}

/** Of a bold letter of the words at a limit, on average. */
const LETTER_MM = 2.1;

function axis(
  from: number,
  to: number,
  x: (value: number) => number,
  floor: number,
  as: NeedUnits,
): readonly Html[] {
  const per = as.units === 'inch' && !as.isTurn ? MM_PER_INCH : 1;
  const step = niceStep((to - from) / per / 5);
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const first = Math.ceil(from / per / step);
  const last = Math.floor(to / per / step);
  const ticks = Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step);
  return [
    ...ticks.map((tick) => {
      const at = x(tick * per);
      return joined([
        markup`<path d="M${dot(at)} ${dot(floor)}v1.4" stroke="${INK}" stroke-width="0.3"/>`,
        textAt({ x: at, y: floor + 5 }, trueMinus(tick.toFixed(places)), {
          sizeMm: 3,
          anchor: 'middle',
        }),
      ]);
    }),
    textAt({ x: WIDTH_MM, y: floor + 5 }, unitWords(as).replace(/ per .*$/, ''), {
      sizeMm: 3,
      anchor: 'end',
    }),
    textAt({ x: 0, y: floor - 1 }, '100 parts', { sizeMm: 3, fill: FAINT }),
  ];
}

/** Below the axis: nothing off, 95 in 100, worst case. */
function rows(
  need: NeedPrediction,
  worst: readonly [number, number],
  x: (value: number) => number,
  floor: number,
): readonly Html[] {
  const upper = (need.shape === 'plain' ? need.largest : null)?.interval95[1] ?? need.interval95[1];
  const row = (k: number, words: string, drawn: Html): Html => {
    const y = floor + 11 + 5.6 * k;
    return joined([textAt({ x: 0, y: y + 1.1 }, words, { sizeMm: 3, fill: FAINT }), drawn]);
  };
  const yOf = (k: number): number => dot(floor + 11 + 5.6 * k);
  const nothing = x(need.nominal);
  return [
    row(
      0,
      'nothing off',
      markup`<path d="M${dot(nothing)} ${yOf(0) - 1.6}l1.5 2.8h-3z" fill="${INK}"/>`,
    ),
    row(
      1,
      '95 of 100',
      markup`<path d="M${dot(x(need.interval95[0]))} ${yOf(1)}H${dot(x(upper))}" stroke="${ACCENT}" stroke-width="1.7"/>`,
    ),
    row(
      2,
      'worst case',
      markup`<path d="M${dot(x(worst[0]))} ${yOf(2) - 1.3}v2.6M${dot(x(worst[0]))} ${yOf(2)}H${dot(x(worst[1]))}M${dot(x(worst[1]))} ${yOf(2) - 1.3}v2.6" stroke="${INK}" stroke-width="0.45" fill="none"/>`,
    ),
  ];
}

function widened(least: number, most: number): readonly [number, number] {
  const spare = (most - least) * 0.06 || Math.max(Math.abs(least) * 0.01, 0.01);
  return [least >= 0 && least - spare < 0 ? -spare / 4 : least - spare, most + spare];
}

/** 1, 2 or 5 times a power of ten, not below `step`. */
function niceStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const lead = step / power;
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
}
