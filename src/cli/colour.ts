import { styleText } from 'node:util';

/** What a mark stands for; the word beside it says the same, so that colour is never needed. */
export type Mark = 'good' | 'bad' | 'heading' | 'quiet';

/** Puts a mark on a piece of text, or leaves it as it is. */
export type Paint = (mark: Mark, text: string) => string;

const STYLES = {
  good: 'green',
  bad: ['bold', 'red'],
  heading: 'bold',
  quiet: 'dim',
} as const satisfies Record<Mark, Parameters<typeof styleText>[0]>;

/** Leaves every text as it is: for pipes and files. */
export const plainPaint: Paint = (_mark, text) => text;

const colourPaint: Paint = (mark, text) =>
  // Whether to paint was decided by `paintFor`; the library would decide again by its own rules.
  styleText(STYLES[mark], text);

/**
 * Colour only for a person at a terminal: not when piped, not with `NO_COLOR` (https://no-color.org:
 * set and not empty), not on a terminal called dumb; `FORCE_COLOR` asks for it anyhow.
 */
export function paintFor(
  stream: { readonly isTTY?: boolean },
  environment: Readonly<Record<string, string | undefined>>,
): Paint {
  if ((environment['NO_COLOR'] ?? '') !== '') return plainPaint;
  const forced = environment['FORCE_COLOR'];
  if (forced !== undefined && forced !== '0' && forced !== 'false') return colourPaint;
  return stream.isTTY === true && environment['TERM'] !== 'dumb' ? colourPaint : plainPaint;
}
