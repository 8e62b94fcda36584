import { faultText } from '../job/fault.ts';
import { ownShopOf } from '../job/readings/own-shop.ts';
import { beside } from '../job/readings/shop-parts.ts';
import { half95, type Estimate } from '../measure/estimate.ts';
import { machineGeometry, type Found } from '../measure/machine-geometry.ts';
import { DISAGREE } from '../measure/pooled.ts';
import { squareReadingOf } from '../measure/square-readings.ts';
import type { SquareReading } from '../measure/squareness.ts';
import { trueMinus } from '../sheet/words.ts';
import { estimateJson } from './estimate-json.ts';
import { EXIT, Refusal } from './exit.ts';
import { find, named, today, valueOf } from './find.ts';
import { columns, wrapped } from './lines.ts';
import { loadReadings } from './read-readings.ts';
import { saveMeasured, type Found as Measured } from './save-measured.ts';
import type { Say } from './verbs.ts';

export interface SquareOptions {
  readonly json: boolean;
  readonly save: boolean;
}

/** How square the axes are and how long they measure, by whatever was read. */
export function squareVerb(path: string, options: SquareOptions, say: Say): number {
  const { raw, context } = loadReadings(path);
  const readings = (raw.square ?? []).flatMap((one) => squareReadingOf(context, one) ?? []);
  if (context.faults.length > 0) throw new Refusal(context.faults.map(faultText).join('\n'));
  if (readings.length === 0)
    throw new Refusal(
      `${path}: no square readings; write square: [{by: diagonals, size: [400, 300], to-far-right: 500.2, to-far-left: 499.9, gauge: tape class II}]`,
    );
  const found = machineGeometry(readings);
  say(options.json ? squareJson(found) : squareText(found));
  if (options.save) {
    if (raw.shop === undefined)
      throw new Refusal(`${path}: --save needs the shop file; write shop: shop.yaml`);
    const shopFile = beside(path, raw.shop);
    const shop = valueOf(shopFile, ownShopOf(named(shopFile), find));
    const measured = String(raw.measured ?? today());
    const saved = saveMeasured(shopFile, shop, measuredOf(found, measured, path));
    if (!options.json) say(`wrote ${saved}: predict counts with what was measured from now on`);
  }
  return EXIT.good;
}

const WORDS: Readonly<Record<Found['what'], string>> = {
  lean: 'the Y axis leans to the right, going away',
  'scale-x': 'the X axis goes further than it is told',
  'scale-y': 'the Y axis goes further than it is told',
  'scale-difference': 'X goes further than Y',
};
const BY: Readonly<Record<SquareReading['by'], string>> = {
  diagonals: 'two diagonals',
  'three-lengths': 'three lengths',
  'square-and-dial': 'square and dial',
  'turned-over': 'test piece turned over',
  circle: 'diameters of a circle',
  length: 'a length',
};
/** Leans are told over 200 mm and scales over 300, as shop files write them. */
const OVER: Readonly<Record<Found['what'], number>> = {
  lean: 200,
  'scale-x': 300,
  'scale-y': 300,
  'scale-difference': 300,
};

function squareText(found: readonly Found[]): string {
  return found
    .flatMap(({ what, all, ways }) => [
      ...wrapped(`${WORDS[what]}: ${per(all.estimate, OVER[what])}`, '  '),
      ...columns(
        ways.map(({ by, told, weight }) => [
          `  ${BY[by]}`,
          per(told.estimate, OVER[what]),
          `${(100 * weight).toFixed(0)} %`,
        ]),
        [2],
      ),
      ...(ways.some(({ told }) => told.mixedWith !== null)
        ? wrapped(
            'A test piece turned over shows the lean and the angle of its fence as one; it counts alone only where nothing else was read, and then with a fence known to be true.',
          )
        : []),
      ...(all.agreement < DISAGREE
        ? wrapped(
            'These differ by more than their gauges allow: read the one that stands apart again. The ± covers the difference.',
          )
        : []),
      ...(ways.length > 1
        ? wrapped(`${BY[ways[0]!.by]} tells most; the last column is its part in the mean.`)
        : []),
      '',
    ])
    .slice(0, -1)
    .join('\n');
}

const per = (estimate: Estimate, over: number): string =>
  `${trueMinus((over * estimate.value).toFixed(3))} ±${(over * half95(estimate)).toFixed(3)} mm per ${over} mm`;

function squareJson(found: readonly Found[]): string {
  return JSON.stringify(
    {
      json: 1,
      found: found.map(({ what, all, ways }) => ({
        what,
        ...estimateJson(all.estimate),
        agreement: all.agreement,
        ways: ways.map(({ by, told, weight }) => ({
          by,
          ...estimateJson(told.estimate),
          mixedWith: told.mixedWith,
          weight,
        })),
      })),
    },
    null,
    2,
  );
}

const KEY: Readonly<Record<Found['what'], string | null>> = {
  lean: 'machine.lean',
  'scale-x': 'machine.scale-x',
  'scale-y': 'machine.scale-y',
  'scale-difference': null,
};

function measuredOf(found: readonly Found[], measured: string, path: string): readonly Measured[] {
  return found.flatMap(({ what, all, ways }): Measured[] => {
    const of = KEY[what];
    if (of === null) return [];
    const by = ways.filter(({ weight }) => weight > 0).map((way) => BY[way.by]);
    return [{ of, ...all.estimate, measured, because: `${by.join(', ')}, in ${path}` }];
  });
}
