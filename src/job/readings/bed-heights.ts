import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Point } from '../../plane/point.ts';
import type { Fault } from '../fault.ts';
import type { NamedBytes } from '../file/bytes.ts';
import { readLength } from '../text/length.ts';
import type { Cell, TableRow } from './table.ts';
import { readTable } from './table.ts';

/** One height of the bed: mm, upwards, against the machine's travel; the level they count from is any. */
export interface BedReading {
  readonly at: Point<'bed'>;
  readonly heightMm: number;
  readonly line: number;
}

const WRITE_LIST = 'write x,y,height in the first line, and a reading a line below';
const WRITE_GRID =
  'write y\\x and then the places along X in the first line, and a place along Y with its heights in each line below';
/** Nothing on a bed stands higher or lower; a larger figure is a slip of the finger. */
const HIGHEST_MM = 20;

/**
 * Height readings from a table file: a list under `x,y,height` (in any order of columns), or a grid
 * whose first cell is `y\x`. Lengths as everywhere: mm, or with their unit. A cell of a grid may be
 * empty: not read there.
 */
export function readBedHeights(file: NamedBytes): Result<readonly BedReading[], Fault> {
  const table = readTable(file);
  if (!table.ok) return table;
  const [head, ...rows] = table.value;
  if (head === undefined)
    return faulty([
      { file: file.name, line: 1, column: 1, message: 'the file is empty', instead: WRITE_LIST },
    ]);
  const first = head.cells[0];
  const faults: Fault[] = [];
  const readings =
    first !== undefined && /^y\s*[\\/]\s*x$/i.test(first.text)
      ? gridOf(head, rows, faults)
      : listOf(file.name, head, rows, faults);
  return faults.length > 0 ? faulty(faults) : ok(readings);
}

function listOf(
  file: string,
  head: TableRow,
  rows: readonly TableRow[],
  faults: Fault[],
): readonly BedReading[] {
  const names = head.cells.map(({ text }) => text.toLowerCase());
  const columns = ['x', 'y', 'height'].map((name) => names.indexOf(name));
  if (columns.includes(-1)) {
    const lacking = ['x', 'y', 'height'].filter((name) => !names.includes(name));
    faults.push({
      file,
      line: head.line,
      column: 1,
      message: `the first line has no ${lacking.join(' and no ')}`,
      instead: `${WRITE_LIST}; or ${WRITE_GRID}`,
    });
    return [];
  }
  return rows.flatMap((row): BedReading[] => {
    if (row.cells.length !== names.length) {
      faults.push(wrongCount(file, row, names.length));
      return [];
    }
    const [x, y, height] = columns.map((k) => mmOf(row.cells[k]!, faults));
    return readingOf(row, x!, y!, height!, faults, row.cells[columns[2]!]!);
  });
}

function gridOf(head: TableRow, rows: readonly TableRow[], faults: Fault[]): readonly BedReading[] {
  const [corner, ...tops] = head.cells;
  const xs = tops.map((cell) => mmOf(cell, faults));
  return rows.flatMap((row): BedReading[] => {
    if (row.cells.length !== head.cells.length) {
      faults.push(wrongCount(corner!.file, row, head.cells.length));
      return [];
    }
    const [side, ...cells] = row.cells;
    const y = mmOf(side!, faults);
    return cells.flatMap((cell, k) =>
      cell.text === '' ? [] : readingOf(row, xs[k]!, y, mmOf(cell, faults), faults, cell),
    );
  });
}

function readingOf(
  row: TableRow,
  x: number | null,
  y: number | null,
  height: number | null,
  faults: Fault[],
  cell: Cell,
): BedReading[] {
  if (x === null || y === null || height === null) return [];
  if (Math.abs(height) <= HIGHEST_MM) return [{ at: { x, y }, heightMm: height, line: row.line }];
  faults.push({
    ...placeOf(cell),
    message: `height ${cell.text} is more than any bed is out by`,
    instead: `write the height above or below one level, at most ${HIGHEST_MM} mm`,
  });
  return [];
}

function mmOf(cell: Cell, faults: Fault[]): number | null {
  const read = readLength(cell.text);
  if (read.ok) return read.value.value;
  for (const { message, instead } of read.faults)
    faults.push({ ...placeOf(cell), message, instead });
  return null;
}

const wrongCount = (file: string, row: TableRow, wanted: number): Fault => ({
  file,
  line: row.line,
  column: 1,
  message: `the line has ${row.cells.length} cells and the first line ${wanted}`,
  instead: 'give each line as many; a decimal comma counts as one more, write a point',
});

const placeOf = ({ file, line, column }: Cell) => ({ file, line, column });
