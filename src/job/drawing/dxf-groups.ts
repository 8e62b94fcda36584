import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';

/** One pair of a DXF file: a code that says what the value is. */
export interface Group {
  readonly code: number;
  readonly value: string;
  /** Line of the value, from 1. */
  readonly line: number;
}

/** What begins with a group 0: an entity, a section's end. */
export interface Entity {
  readonly type: string;
  readonly line: number;
  readonly groups: readonly Group[];
}

/** A text DXF as the drawing's own units and the entities of its model; blocks and tables are left out. */
export interface DxfFile {
  /** `$INSUNITS` of the header; null when it is not there. */
  readonly unitsCode: number | null;
  readonly entities: readonly Entity[];
}

/**
 * Reads the pairs by themselves: the parsers at hand lose the corners of polylines with vertex numbers
 * (group 91), or wait for ever for the end of one that is cut short.
 */
export function readDxf(text: string): Result<DxfFile, TextFault> {
  const lines = text.split(/\r\n|\n|\r/);
  const groups: Group[] = [];
  for (let index = 0; index + 1 < lines.length; index += 2) {
    const code = /^\s*(\d{1,4})\s*$/.exec(lines[index]!)?.[1];
    if (code === undefined)
      return textFault(
        `line ${index + 1} should hold a group code and holds ${shown(lines[index]!)}`,
        'save the drawing as a text (ASCII) DXF',
      );
    const group = { code: Number(code), value: lines[index + 1]!.trim(), line: index + 2 };
    if (group.code === 0 && group.value === 'EOF') return ok(sorted(groups));
    groups.push(group);
  }
  return textFault('the file ends without EOF, so it is cut short', 'save the drawing again');
}

function sorted(groups: readonly Group[]): DxfFile {
  const entities: Entity[] = [];
  let [section, unitsCode]: [string, number | null] = ['', null];
  let current: { type: string; line: number; groups: Group[] } | null = null;
  groups.forEach((group, index) => {
    if (section === 'HEADER' && group.code === 9 && group.value === '$INSUNITS') {
      const units = Number(groups[index + 1]?.value);
      unitsCode = Number.isInteger(units) ? units : null;
    }
    if (group.code !== 0) {
      if (group.code === 2 && groups[index - 1]?.value === 'SECTION') section = group.value;
      current?.groups.push(group);
      return;
    }
    current = section === 'ENTITIES' ? { type: group.value, line: group.line, groups: [] } : null;
    if (group.value === 'ENDSEC') [section, current] = ['', null];
    if (current !== null) entities.push(current);
  });
  return { unitsCode, entities };
}

const shown = (line: string): string =>
  line.trim() === ''
    ? 'nothing'
    : line
        .trim()
        .slice(0, 20)
        .replace(/[^\x20-\x7e]/g, '?');

/** The first value of a code as a number; `otherwise` when it is not there, NaN when it is no number. */
export function numberOf({ groups }: Entity, code: number, otherwise = NaN): number {
  const found = groups.find((group) => group.code === code);
  if (found === undefined) return otherwise;
  return found.value === '' ? NaN : Number(found.value);
}

export const textIn = ({ groups }: Entity, code: number): string =>
  groups.find((group) => group.code === code)?.value ?? '';
