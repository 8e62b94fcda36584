/** A number in [0, 1) that a text stands for. FNV-1a of 32 bits, its bits stirred. */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const character of text) {
    hash ^= character.codePointAt(0)!;
    hash = Math.imul(hash, 0x01000193);
  }
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  hash ^= hash >>> 13;
  return (hash >>> 0) / 4294967296;
}
