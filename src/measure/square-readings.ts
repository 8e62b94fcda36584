import type { RawReading, RawSquare } from '../job/readings/raw-readings.ts';
import { gaugeSdOf, isRead, readOf, type GaugeSd } from '../job/readings/reading.ts';
import { GAUGES, isGaugeKind } from '../job/readings/standard-gauges.ts';
import type { Context } from '../job/resolve/context.ts';
import { fault, startPlace } from '../job/resolve/context.ts';
import { mm } from '../job/resolve/lengths.ts';
import { inWords } from '../job/schema/closest.ts';
import { unreachable } from '../num/invariant.ts';
import type { Measured, SquareReading } from './squareness.ts';

/** What each way needs, and what it may have beside it. */
const KEYS: Readonly<
  Record<RawSquare['by'], { readonly needs: readonly Key[]; readonly may: readonly Key[] }>
> = {
  diagonals: { needs: ['size', 'to-far-right', 'to-far-left'], may: [] },
  'three-lengths': { needs: ['to-far-right', 'to-far-left', 'left-side'], may: [] },
  'square-and-dial': { needs: ['over', 'dial', 'points'], may: ['turned', 'square'] },
  'turned-over': { needs: ['over', 'gap'], may: [] },
  circle: { needs: ['diameter', 'at-45', 'at-135'], may: ['along-x', 'along-y'] },
  length: { needs: ['axis', 'commanded', 'measured'], may: [] },
};

type Key = Exclude<keyof RawSquare, 'by' | 'gauge'>;

/** More lean than any machine has (a tangent): then two figures were swapped or one is a slip. */
const MOST_LEAN = 0.05;

/** One way of the readings file as plain figures; null, with its fault, when keys are missing or make no sense. */
export function squareReadingOf(context: Context, raw: RawSquare): SquareReading | null {
  const before = context.faults.length;
  const { needs, may } = KEYS[raw.by];
  const missing = needs.filter((key) => !isRead(raw[key]));
  if (missing.length > 0)
    fault(
      context,
      startPlace(context, raw),
      `${raw.by} needs ${inWords(missing)}`,
      `write ${missing.join(', ')}`,
    );
  for (const key of Object.keys(raw) as (keyof RawSquare)[])
    if (key !== 'by' && key !== 'gauge' && ![...needs, ...may].includes(key))
      fault(
        context,
        [raw, key],
        `${key} is not for ${raw.by}`,
        `it takes ${inWords([...needs, ...may])}`,
      );
  const gauge = gaugeSdOf(context, [raw, 'gauge'], raw.gauge);
  if (context.faults.length > before) return null;
  const reading = figures(context, raw, gauge);
  if (reading !== null) checkSense(context, raw, reading);
  return context.faults.length > before ? null : reading;
}

function figures(context: Context, raw: RawSquare, gauge: GaugeSd): SquareReading | null {
  const read = (key: Key): Measured => readOf(raw[key] as RawReading, gauge);
  switch (raw.by) {
    case 'diagonals':
      return {
        by: raw.by,
        xMm: mm(raw.size![0]),
        yMm: mm(raw.size![1]),
        farRight: read('to-far-right'),
        farLeft: read('to-far-left'),
      };
    case 'three-lengths':
      return {
        by: raw.by,
        farRight: read('to-far-right'),
        farLeft: read('to-far-left'),
        leftSide: read('left-side'),
      };
    case 'square-and-dial':
      return squareAndDial(context, raw, gauge);
    case 'turned-over':
      return { by: raw.by, alongMm: mm(raw.over!), gap: read('gap') };
    case 'circle':
      return {
        by: raw.by,
        diameterMm: mm(raw.diameter!),
        at45: read('at-45'),
        at135: read('at-135'),
        x: !isRead(raw['along-x']) ? null : read('along-x'),
        y: !isRead(raw['along-y']) ? null : read('along-y'),
      };
    case 'length':
      return {
        by: raw.by,
        along: raw.axis!,
        commandedMm: mm(raw.commanded!),
        measured: read('measured'),
      };
    default:
      return unreachable(raw.by);
  }
}

/** A dial that points right runs up, near to far, when the blade leans left of the travel; turned over it points left. */
function squareAndDial(context: Context, raw: RawSquare, gauge: GaugeSd): SquareReading | null {
  const sign = raw.points === 'right' ? 1 : -1;
  const change = (pair: readonly [number | string, number | string], by: 1 | -1): Measured => {
    const value = by * (mm(pair[1]) - mm(pair[0]));
    // A dial's error is that of the stretch it runs over.
    return { value, sd: gauge(value), dof: Infinity };
  };
  const alongMm = mm(raw.over!);
  const name = raw.square ?? 'square class 2';
  const fromShop = context.gauges[name];
  if (!isGaugeKind(name) && fromShop === undefined) {
    const known = Object.keys(GAUGES).filter((kind) => kind.startsWith('square'));
    fault(context, [raw, 'square'], `the square ${name} is not known`, `write ${inWords(known)}`);
    return null;
  }
  const ofShop = fromShop === undefined ? null : perLength(String(fromShop), alongMm);
  if (fromShop !== undefined && ofShop === null) {
    fault(
      context,
      [raw, 'square'],
      `the gauge ${name} is good to ${fromShop}, which is not for squares`,
      'write it in the shop file as 0.02 per 100',
    );
    return null;
  }
  const limit = ofShop ?? (isGaugeKind(name) ? GAUGES[name](alongMm) : 0);
  return {
    by: 'square-and-dial',
    alongMm,
    change: change(raw.dial!, sign),
    turned: raw.turned === undefined ? null : change(raw.turned, sign === 1 ? -1 : 1),
    squareSdMm: limit / Math.sqrt(3),
  };
}

/** mm over a length, of `0.02 per 100`. */
function perLength(text: string, alongMm: number): number | null {
  const parts = /^[±]?\s*([\d.]+)\s+per\s+([\d.]+)$/.exec(text.trim());
  return parts === null ? null : (Number(parts[1]) / Number(parts[2])) * alongMm;
}

/** Figures that no machine gives: swapped, or a slip of the finger. */
function checkSense(context: Context, raw: RawSquare, reading: SquareReading): void {
  const far = (key: Key, what: string): void => {
    fault(context, [raw, key], what, 'read it again, and see that no two figures are swapped');
  };
  switch (reading.by) {
    case 'diagonals': {
      const wanted = Math.hypot(reading.xMm, reading.yMm);
      for (const [key, { value }] of [
        ['to-far-right', reading.farRight],
        ['to-far-left', reading.farLeft],
      ] as const)
        if (Math.abs(value / wanted - 1) > MOST_LEAN)
          far(key, `the diagonal ${value} mm is nowhere near ${wanted.toFixed(1)} mm`);
      return;
    }
    case 'three-lengths': {
      const [p, q, d] = [reading.farRight.value, reading.farLeft.value, reading.leftSide.value];
      if (!(d < Math.min(p, q)) || Math.abs(p / q - 1) > MOST_LEAN)
        far('left-side', 'these three lengths are of no rectangle');
      return;
    }
    case 'square-and-dial':
      if (Math.abs(reading.change.value) > MOST_LEAN * reading.alongMm)
        far(
          'dial',
          `the dial ran ${reading.change.value.toFixed(2)} mm over ${reading.alongMm} mm`,
        );
      return;
    case 'turned-over':
      if (Math.abs(reading.gap.value) > 2 * MOST_LEAN * reading.alongMm)
        far('gap', `the gap ${reading.gap.value} mm is too wide for ${reading.alongMm} mm`);
      return;
    case 'circle':
      for (const [key, one] of [
        ['at-45', reading.at45],
        ['at-135', reading.at135],
      ] as const)
        if (Math.abs(one.value / reading.diameterMm - 1) > MOST_LEAN)
          far(key, `${one.value} mm is not a diameter of a circle of ${reading.diameterMm} mm`);
      return;
    case 'length':
      if (Math.abs(reading.measured.value / reading.commandedMm - 1) > MOST_LEAN)
        far('measured', `${reading.measured.value} mm is nowhere near ${reading.commandedMm} mm`);
      return;
    default:
      unreachable(reading);
  }
}
