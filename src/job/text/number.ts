const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const FRACTION = /^([+-]?)(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)$/;

/**
 * The number that is written as a decimal (`12`, `.5`, `1e-3`) or as a workshop fraction (`1/4`,
 * `1 1/2`, `1-1/2`); null when it is neither, or too large to be a number.
 */
export function readNumber(text: string): number | null {
  if (DECIMAL.test(text)) return finite(Number(text));
  const parts = FRACTION.exec(text);
  if (parts === null) return null;
  const [, sign, whole, over, under] = parts;
  const size = Number(whole ?? 0) + Number(over) / Number(under);
  return finite(sign === '-' ? -size : size);
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

const COMMA = /^([+-]?\d*),(\d+)(.*)$/;

/** What to write for a number with a decimal comma; null when there is none. */
export function withoutComma(text: string): string | null {
  const parts = COMMA.exec(text);
  return parts === null ? null : `${parts[1]!}.${parts[2]!}${parts[3]!}`;
}
