import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import { readNumber, withoutComma } from './number.ts';
import type { TextFault } from './text-fault.ts';
import { textFault } from './text-fault.ts';

interface Kind {
  readonly what: string;
  readonly example: string;
  readonly most: number;
  /** How much of the unit that is used inside each one is. */
  readonly units: Readonly<Record<string, number>>;
}

/** Source: the pound-force is 4.4482216152605 N exactly (from the pound and standard gravity). */
const LBF_N = 4.4482216152605;
const KINDS = {
  torque: {
    what: 'a torque',
    example: '4 Nm',
    most: 200,
    units: { Nm: 1, 'N m': 1, 'in lb': LBF_N * 0.0254, 'ft lb': LBF_N * 0.3048 },
  },
  force: { what: 'a force', example: '60 N', most: 10_000, units: { N: 1, kN: 1000, lbf: LBF_N } },
  pressure: {
    what: 'a pressure',
    example: '60 kPa',
    most: 10_000,
    units: { kPa: 1, MPa: 1000, bar: 100, mbar: 0.1, inHg: 3.386389, psi: 6.894757 },
  },
} as const satisfies Readonly<Record<string, Kind>>;

const read =
  (kind: Kind) =>
  (text: string): Result<number, TextFault> => {
    const trimmed = text.trim();
    const dotted = withoutComma(trimmed);
    if (dotted !== null) return textFault(`${trimmed} has a comma`, `write ${dotted}`);
    const parts = /^(\S+)\s*(.*)$/.exec(
      trimmed.replace(/^([\d./+-]+(?:e[+-]?\d+)?)(?=(?!e[+-]?\d)[A-Za-z])/, '$1 '),
    );
    const figure = readNumber(parts?.[1] ?? '');
    const unit = (parts?.[2] ?? '').replace(/[-\s·]+/g, ' ').trim();
    if (figure === null)
      return textFault(`${trimmed} is not ${kind.what}`, `write ${kind.example}`);
    const per = Object.hasOwn(kind.units, unit) ? kind.units[unit] : undefined;
    if (per === undefined)
      return textFault(
        `${trimmed} is ${kind.what} ${unit === '' ? 'without a unit' : `in ${unit}, which is not known`}`,
        `write it in ${Object.keys(kind.units).join(', ')}`,
      );
    const value = figure * per;
    if (!(value > 0) || value > kind.most)
      return textFault(
        `${trimmed} is not above 0 and up to ${kind.most} ${Object.keys(kind.units)[0]!}`,
        `write ${kind.example}`,
      );
    return ok(value);
  };

/** Nm. */
export const readTorque = read(KINDS.torque);
/** N. */
export const readForce = read(KINDS.force);
/** kPa. */
export const readPressure = read(KINDS.pressure);
