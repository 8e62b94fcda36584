import type { Node, Scalar } from 'yaml';
import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Edit } from '../edit.ts';
import type { Fault, Place } from '../fault.ts';
import { readNumber } from '../text/number.ts';
import type { Holder, Places } from './places.ts';
import { noPlaces } from './places.ts';
import { syntaxFault } from './syntax.ts';

/** A file's root mapping as plain values; null when the text could not be made out at all. */
export interface ReadText {
  readonly root: Holder | null;
  readonly places: Places;
  readonly faults: readonly Fault[];
}

/** Reads YAML 1.2 text into plain values, noting where each stands. Aliases are refused, so nothing can grow. */
export function readYaml(file: string, text: string): ReadText {
  const places = noPlaces();
  const start: Place = { file, line: 1, column: 1 };
  const unreadable = (faults: readonly Fault[]): ReadText => ({ root: null, places, faults });
  const tooDeep: Fault = {
    ...start,
    message: 'the file is nested too deeply to be read',
    instead: 'name a job or shop file',
  };
  const lines = new LineCounter();
  const parsed =
    bracketDepth(text) > DEEPEST || DASHES.test(text) ? null : parsedOrTooDeep(text, lines);
  if (parsed === null) return unreadable([tooDeep]);
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line, column: col };
  };
  const faults: Fault[] = [];
  for (const error of [...parsed.errors, ...parsed.warnings]) {
    faults.push(syntaxFault(error, placeOf(error.pos[0]), text.slice(error.pos[0])));
    // After a slip of form the rest is read askew; only a key that is here twice leaves it in order.
    if (error.code !== 'DUPLICATE_KEY') return unreadable(faults);
  }
  if (!isMap(parsed.contents))
    return unreadable([...faults, isEmpty(parsed.contents) ? empty(start) : notKeyed(start)]);
  const reading: Reading = { text, places, faults: [], placeOf };
  const root = plainMap(parsed.contents.items, parsed.contents, reading);
  const [formFault] = reading.faults;
  return formFault === undefined ? { root, places, faults } : unreadable([...faults, formFault]);
}

/** Job and shop files are five deep. */
const DEEPEST = 50;

/** Lists in lists in one line: - - - -. */
const DASHES = new RegExp(`^[ \\t]*(?:[-?][ \\t]+){${DEEPEST}}`, 'm');

function bracketDepth(text: string): number {
  let [depth, deepest] = [0, 0];
  for (const sign of text) {
    if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ']' || sign === '}') depth--;
  }
  return deepest;
}

function parsedOrTooDeep(text: string, lines: LineCounter) {
  try {
    const parsed = parseDocument(text, { lineCounter: lines, prettyErrors: false, version: '1.2' });
    // The parser recurses, and tells of an exhausted stack as a slip of form.
    return parsed.errors.some(({ message }) => /call stack/i.test(message)) ? null : parsed;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * The text with these changes: values that are replaced lose the remark behind them, all other remarks stay,
 * and `remark` stands on top.
 */
export function editedYaml(text: string, edits: readonly Edit[], remark: string): string {
  const parsed = parseDocument(text, { prettyErrors: false, version: '1.2' });
  for (const { path, value } of edits) {
    if (value === null && parsed.hasIn(path)) parsed.deleteIn(path);
    else if (value === null) continue;
    else parsed.setIn(path, parsed.createNode(value, { flow: true }));
  }
  const before = parsed.commentBefore;
  parsed.commentBefore = before === null ? ` ${remark}` : `${before}\n ${remark}`;
  return parsed.toString({ lineWidth: 0 });
}

interface Reading {
  readonly text: string;
  readonly places: Places;
  readonly faults: Fault[];
  readonly placeOf: (offset: number) => Place;
}

function plain(node: unknown, reading: Reading): unknown {
  if (isMap(node)) return plainMap(node.items, node, reading);
  if (isSeq(node)) return plainList(node.items, node, reading);
  if (isScalar(node)) return plainScalar(node, reading);
  if (isAlias(node))
    reading.faults.push({
      ...reading.placeOf(node.range?.[0] ?? 0),
      message: `*${node.source} repeats another part of the file, which is not done here`,
      instead: 'write the values out',
    });
  return null;
}

function plainMap(
  items: readonly { key: unknown; value: unknown }[],
  node: Node,
  reading: Reading,
): Holder {
  const values: Record<string, unknown> = {};
  const entries = new Map<string, { key: Place; value: Place }>();
  for (const { key, value } of items) {
    const keyAt = reading.placeOf(startOffset(key) ?? startOffset(node) ?? 0);
    if (!isScalar(key)) {
      reading.faults.push({
        ...keyAt,
        message: 'a key is not one word or name',
        instead: 'write key: value',
      });
      continue;
    }
    const name = String(key.value);
    // The first of two equal keys counts; the second has its fault already.
    if (entries.has(name)) continue;
    const offset = startOffset(value);
    entries.set(name, { key: keyAt, value: offset === null ? keyAt : reading.placeOf(offset) });
    // Not by assignment: `__proto__` is a key like any other.
    Object.defineProperty(values, name, {
      value: plain(value, reading),
      enumerable: true,
      writable: true,
      configurable: true,
    });
  }
  reading.places.start.set(values, reading.placeOf(startOffset(node) ?? 0));
  reading.places.entries.set(values, entries);
  return values;
}

function plainList(items: readonly unknown[], node: Node, reading: Reading): Holder {
  const values = items.map((item) => plain(item, reading));
  const at = reading.placeOf(startOffset(node) ?? 0);
  const entries = items.map((item, index) => {
    const offset = startOffset(item);
    const place = offset === null ? at : reading.placeOf(offset);
    return [String(index), { key: place, value: place }] as const;
  });
  reading.places.start.set(values, at);
  reading.places.entries.set(values, new Map(entries));
  return values;
}

/** Numbers only where a plain decimal is written: `0x10` and `.nan` stay text, and are refused as such. */
function plainScalar(node: Scalar, reading: Reading): unknown {
  if (typeof node.value !== 'number') return node.value;
  const [from, to] = node.range ?? [0, 0];
  const source = reading.text.slice(from, to).trim();
  return readNumber(source) ?? source;
}

const startOffset = (node: unknown): number | null =>
  isMap(node) || isSeq(node) || isScalar(node) || isAlias(node) ? (node.range?.[0] ?? null) : null;

const isEmpty = (contents: unknown): boolean =>
  contents === null || (isScalar(contents) && contents.value === null);

const empty = (place: Place): Fault => ({
  ...place,
  message: 'the file is empty',
  instead: 'start from flipwright new',
});

const notKeyed = (place: Place): Fault => ({
  ...place,
  message: 'the file is not a list of key: value lines',
  instead: 'start from flipwright new',
});
