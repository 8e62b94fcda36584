import { WIDTH, wrapped } from './lines.ts';

/** Text on lines of the terminal behind `first`, later lines behind `rest`; a number and its unit stay together. */
export function flow(text: string, first = '', rest = ' '.repeat(first.length)): string[] {
  const tied = text.replace(/(\d) (?=(%|mm|min|point)\b|%)/g, '$1\u00a0');
  const width = WIDTH - Math.max(first.length, rest.length);
  return wrapped(tied, '', width).map(
    (line, k) => (k === 0 ? first : rest) + line.replaceAll('\u00a0', ' '),
  );
}
