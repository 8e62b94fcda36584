import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Fault, Place } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { textOf } from '../file/bytes.ts';

/** One cell of a table file, without the blanks round it, and where it stands. */
export interface Cell extends Place {
  readonly text: string;
}

export interface TableRow {
  readonly cells: readonly Cell[];
  readonly line: number;
  /** The last line of the file, without an end: it may have been cut short. */
  readonly isUnended: boolean;
}

/**
 * The rows of a comma, semicolon or tab separated file; empty lines and lines that begin with # are
 * left out. Cells may be in double quotes, as spreadsheets write them (RFC 4180), within one line.
 */
export function readTable(file: NamedBytes): Result<readonly TableRow[], Fault> {
  const text = textOf(file);
  if (!text.ok) return text;
  const lines = text.value.split('\n');
  const faults: Fault[] = [];
  const separator = separatorOf(lines);
  const rows = lines.flatMap((raw, index): TableRow[] => {
    const content = raw.replace(/\r$/, '');
    if (content.trim() === '' || content.trimStart().startsWith('#')) return [];
    const line = index + 1;
    const isUnended = index === lines.length - 1;
    const cells = cellsOf(content, separator, { file: file.name, line });
    if (cells === null && !isUnended)
      faults.push({
        file: file.name,
        line,
        column: 1,
        message: 'a double quote is not closed',
        instead: 'close it in the same line, or take it out',
      });
    return [{ cells: cells ?? [], line, isUnended }];
  });
  return faults.length > 0 ? faulty(faults) : ok(rows);
}

/** What the first line that says anything is divided by. */
function separatorOf(lines: readonly string[]): string {
  const first = lines.find((line) => line.trim() !== '' && !line.trimStart().startsWith('#')) ?? '';
  return ['\t', ';', ','].find((sign) => first.includes(sign)) ?? ',';
}

/** Null when a quote is not closed. */
function cellsOf(
  content: string,
  separator: string,
  at: { readonly file: string; readonly line: number },
): readonly Cell[] | null {
  const cells: Cell[] = [];
  let [text, column, quoted] = ['', 1, false];
  const end = (next: number): void => {
    cells.push({ ...at, column, text: text.trim() });
    [text, column] = ['', next];
  };
  for (let k = 0; k < content.length; k++) {
    const sign = content[k]!;
    if (quoted) {
      if (sign !== '"') text += sign;
      else if (content[k + 1] === '"') text += content[++k]!;
      else quoted = false;
      // A double quote later on is the sign for inches.
    } else if (sign === '"' && text.trim() === '') [text, quoted] = ['', true];
    else if (sign === separator) end(k + 2);
    else text += sign;
  }
  if (quoted) return null;
  end(content.length + 1);
  return cells;
}

/** A cell for a table file: in quotes where it would be read as more than one. */
export function cellText(text: string): string {
  const plain = text.replace(/[\r\n]+/g, ' ').trim();
  return /[",;\t]/.test(plain) || plain.startsWith('#')
    ? `"${plain.replaceAll('"', '""')}"`
    : plain;
}
