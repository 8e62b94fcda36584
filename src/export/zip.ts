import { invariant } from '../num/invariant.ts';

export interface Entry {
  /** Path inside the archive, plain ASCII, with forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/**
 * A ZIP archive with its entries stored as they are, dated 1980-01-01: the same bytes for the same
 * entries. Source: PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16 (from memory), held to by an
 * independent reader in the tests.
 */
export function zipOf(entries: readonly Entry[]): Uint8Array {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const { path, bytes } of entries) {
    invariant(/^[A-Za-z0-9_./[\]-]+$/.test(path), `archive path ${path}`);
    const name = ascii(path);
    const shared = [
      ...word(VERSION),
      ...word(0),
      ...word(0),
      ...word(0),
      ...word(FIRST_OF_1980),
      ...long(crc32(bytes)),
      ...long(bytes.length),
      ...long(bytes.length),
      ...word(name.length),
      ...word(0),
    ];
    const head = Uint8Array.from([...long(0x04034b50), ...shared, ...name]);
    parts.push(head, bytes);
    directory.push(
      Uint8Array.from([
        ...long(0x02014b50),
        ...word(VERSION),
        ...shared,
        ...word(0),
        ...word(0),
        ...word(0),
        ...long(0),
        ...long(offset),
        ...name,
      ]),
    );
    offset += head.length + bytes.length;
  }
  const size = directory.reduce((sum, part) => sum + part.length, 0);
  invariant(offset + size < 2 ** 32 && entries.length < 2 ** 16, 'an archive of 4 GB or more');
  const end = Uint8Array.from([
    ...long(0x06054b50),
    ...word(0),
    ...word(0),
    ...word(entries.length),
    ...word(entries.length),
    ...long(size),
    ...long(offset),
    ...word(0),
  ]);
  return joinedBytes([...parts, ...directory, end]);
}

export function joinedBytes(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let from = 0;
  for (const part of parts) {
    bytes.set(part, from);
    from += part.length;
  }
  return bytes;
}

const VERSION = 20;
/** Day, month and year since 1980 as the format packs them. */
const FIRST_OF_1980 = (1 << 5) | 1;

const word = (value: number): number[] => [value & 0xff, (value >>> 8) & 0xff];
const long = (value: number): number[] => [...word(value & 0xffff), ...word(value >>> 16)];
const ascii = (text: string): number[] => Array.from(text, (letter) => letter.charCodeAt(0));

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = TABLE[(c ^ byte) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
