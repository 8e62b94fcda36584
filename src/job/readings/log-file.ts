import type { Fault, Note } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { readDate } from '../text/date.ts';
import { readLength } from '../text/length.ts';
import type { Cell, TableRow } from './table.ts';
import { cellText, readTable } from './table.ts';

/** One figure of a finished part, as it was logged; mm (per 100 for a need that is a turn). */
export interface LogRow {
  readonly date: string;
  /** Which part it is, counted from 1. */
  readonly part: number;
  /** The name of a need. */
  readonly what: string;
  readonly value: number;
  /** What it was measured with; empty when nobody said. */
  readonly gauge: string;
  readonly note: string;
  readonly line: number;
}

const COLUMNS = ['date', 'part', 'what', 'value', 'gauge', 'note'] as const;
export const LOG_HEAD = `${COLUMNS.join(',')}\n`;

/** What the log beside a job file is called. */
export const logName = (job: string): string => `${job.replace(/\.ya?ml$/i, '')}.log.csv`;

/** A row as it stands in the file, its end with it. The value is never the last cell: a row cut short shows. */
export const logLine = (row: Omit<LogRow, 'line' | 'value'> & { readonly value: string }): string =>
  `${[row.date, String(row.part), row.what, row.value, row.gauge, row.note].map(cellText).join(',')}\n`;

export interface ReadLog {
  readonly rows: readonly LogRow[];
  readonly faults: readonly Fault[];
  /** A last row that was cut short while it was written; nothing before it is lost. */
  readonly cutShort: Note | null;
}

/** Every sound row of a log, and every fault of the others with its line. */
export function readLog(file: NamedBytes): ReadLog {
  const table = readTable(file);
  if (!table.ok) return { rows: [], faults: table.faults, cutShort: null };
  const [head, ...rows] = table.value;
  const heads = head?.cells.map(({ text }) => text.toLowerCase()) ?? [];
  if (COLUMNS.some((name, k) => heads[k] !== name) || heads.length !== COLUMNS.length)
    return {
      rows: [],
      faults: [
        {
          file: file.name,
          line: head?.line ?? 1,
          column: 1,
          message: 'the first line is not that of a log',
          instead: `write ${COLUMNS.join(',')}`,
        },
      ],
      cutShort: null,
    };
  const faults: Fault[] = [];
  let cutShort: Note | null = null;
  const sound = rows.flatMap((row): LogRow[] => {
    const found: Fault[] = [];
    const one = rowOf(file.name, row, found);
    if (one !== null && found.length === 0) return [one];
    if (row.isUnended && row.cells.length < COLUMNS.length)
      cutShort = {
        file: file.name,
        line: row.line,
        column: 1,
        message: 'the last row was cut short and does not count; log that part again',
      };
    else faults.push(...found);
    return [];
  });
  return { rows: sound, faults, cutShort };
}

/** Larger than any figure of a part here. */
const LARGEST_MM = 10_000;

function rowOf(file: string, row: TableRow, faults: Fault[]): LogRow | null {
  const at = (cell: Cell, message: string, instead: string): void => {
    faults.push({ file, line: row.line, column: cell.column, message, instead });
  };
  if (row.cells.length !== COLUMNS.length) {
    faults.push({
      file,
      line: row.line,
      column: 1,
      message: `the row has ${row.cells.length} cells, and a log has ${COLUMNS.length}`,
      instead: `write ${COLUMNS.join(',')}; a decimal comma counts as one more, write a point`,
    });
    return null;
  }
  const [date, part, what, value, gauge, note] = row.cells as unknown as readonly [
    Cell,
    Cell,
    Cell,
    Cell,
    Cell,
    Cell,
  ];
  const day = readDate(date.text);
  if (!day.ok) at(date, day.faults[0]!.message, day.faults[0]!.instead);
  if (!/^[1-9]\d{0,5}$/.test(part.text))
    at(
      part,
      `${part.text === '' ? 'nothing' : part.text} is not the number of a part`,
      'write 1, 2, 3 ...',
    );
  if (what.text === '') at(what, 'nobody says what was measured', 'write the name of a need');
  const length = readLength(value.text);
  if (!length.ok) at(value, length.faults[0]!.message, length.faults[0]!.instead);
  else if (Math.abs(length.value.value) > LARGEST_MM)
    at(value, `${value.text} is more than any part measures`, 'write it in mm');
  if (faults.length > 0 || !day.ok || !length.ok) return null;
  return {
    date: day.value,
    part: Number(part.text),
    what: what.text,
    value: length.value.value,
    gauge: gauge.text,
    note: note.text,
    line: row.line,
  };
}
