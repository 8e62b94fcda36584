const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)$/;

/** A number as it was written, so that `3/8` stays exact until it is in millimetres. */
export interface Ratio {
  readonly over: number;
  readonly under: number;
}

/**
 * What is written as a decimal (`12`, `.5`, `1e-3`) or as a workshop fraction (`1/4`, `1 1/2`,
 * `1-1/2`); null when it is neither, or too large to be a number.
 */
export function readRatio(text: string): Ratio | null {
  if (DECIMAL.test(text)) return finite({ over: Number(text), under: 1 });
  const parts = FRACTION.exec(text);
  if (parts === null) return null;
  const [, sign, whole, part, parted] = parts;
  const under = Number(parted);
  const over = Number(whole ?? 0) * under + Number(part);
  return finite({ over: sign === '-' ? -over : over, under });
}

/** The same as one number. */
export function readNumber(text: string): number | null {
  const ratio = readRatio(text);
  return ratio === null ? null : ratio.over / ratio.under;
}

const finite = (ratio: Ratio): Ratio | null =>
  Number.isFinite(ratio.over / ratio.under) ? ratio : null;

const COMMA = /^([+-]?\d*),(\d+)(.*)$/;

/** What to write for a number with a decimal comma; null when there is none. */
export function withoutComma(text: string): string | null {
  const parts = COMMA.exec(text);
  return parts === null ? null : `${parts[1]!}.${parts[2]!}${parts[3]!}`;
}
