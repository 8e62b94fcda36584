import { closest, distance } from 'fastest-levenshtein';

/** The word that was probably meant: two letters changed places or a third of them differ; null when none is near. */
export function probablyMeant(written: string, words: readonly string[]): string | null {
  if (words.length === 0) return null;
  const near = closest(written.toLowerCase(), words);
  const off = distance(written.toLowerCase(), near.toLowerCase());
  const allowed = near.length < 4 ? 1 : Math.max(2, Math.floor(near.length / 3));
  return off <= allowed ? near : null;
}

/** `did you mean flat 6`, or the words there are. */
export function suggestion(written: string, words: readonly string[], what: string): string {
  const near = probablyMeant(written, words);
  if (near !== null) return `did you mean ${near}?`;
  if (words.length === 0) return `there is no ${what}`;
  return `write ${inWords(words)}`;
}

/** `a, b or c`. */
export const inWords = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)!}`;
