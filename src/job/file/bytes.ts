import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Fault } from '../fault.ts';

/** A file as it was handed in; `name` is what messages call it. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Job and shop files are a page long; this is room for a hundred. */
const LARGEST_BYTES = 1_000_000;
const PLUS_MINUS_LATIN1 = 0xb1;

/** The text of a UTF-8 file, without its byte-order mark, or why these bytes are not one. */
export function textOf(
  { name, bytes }: NamedBytes,
  largestBytes = LARGEST_BYTES,
): Result<string, Fault> {
  const wrong = (at: number, message: string, instead: string): Result<never, Fault> =>
    faulty([{ file: name, ...placeOfByte(bytes, at), message, instead }]);
  if (bytes.length > largestBytes)
    return wrong(
      0,
      `the file has ${bytes.length} bytes, and at most ${largestBytes} are read`,
      'name a job or shop file',
    );
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return wrong(0, 'the file is saved as UTF-16', 'save it as UTF-8');
  const control = bytes.findIndex((byte) => byte < 32 && byte !== 9 && byte !== 10 && byte !== 13);
  if (control >= 0)
    return wrong(
      control,
      `the file holds the byte ${bytes[control]!}, so it is not text`,
      'name a job or shop file',
    );
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    const at = firstBadByte(bytes);
    return bytes[at] === PLUS_MINUS_LATIN1
      ? wrong(
          at,
          'the ± is saved as one byte (Latin-1 or Windows-1252)',
          'save the file as UTF-8, or write +-',
        )
      : wrong(at, `the byte ${bytes[at]!} is not UTF-8`, 'save the file as UTF-8');
  }
}

/** Index of the first byte that no UTF-8 text can have there: the longest prefix that decodes, by halving. */
function firstBadByte(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    // A prefix may end inside a character, so the tail is allowed to be unfinished.
    if (decodes(bytes.subarray(0, middle))) good = middle;
    else bad = middle;
  }
  return good;
}

function decodes(prefix: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(prefix, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function placeOfByte(bytes: Uint8Array, at: number): { line: number; column: number } {
  const before = bytes.subarray(0, at);
  const lastBreak = before.lastIndexOf(10);
  const line = before.reduce((count, byte) => count + (byte === 10 ? 1 : 0), 1);
  // Columns count characters: bytes that continue a UTF-8 character do not count.
  const column = before.subarray(lastBreak + 1).filter((byte) => (byte & 0xc0) !== 0x80).length + 1;
  return { line, column };
}
