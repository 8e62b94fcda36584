import type { Mark, Paint } from './colour.ts';
import type { Say } from './verbs.ts';

/**
 * Which words of a verdict stand out, and how. Tables are set in columns before they are painted, so that
 * marks never count as width; colour repeats what the words say.
 */
const RULES: readonly (readonly [RegExp, Mark])[] = [
  [/(?<= )(?:missed|missed, but close)$/gm, 'bad'],
  [/(?<= )(?:met|met, but close)$/gm, 'good'],
  [/^! .*$/gm, 'bad'],
  [/^Not good enough.*?:/gm, 'bad'],
  [/^Good enough\b/gm, 'good'],
  [/^(?:What makes it|Assumed[^:\n]*|Front up|Back up)(?=:)/gm, 'heading'],
  [/^\S.*(?=: what makes it$)/gm, 'heading'],
  [/^wrote .*$/gm, 'quiet'],
];

/** Says the same, with the words of a verdict painted. */
export const painted =
  (say: Say, paint: Paint): Say =>
  (text) => {
    say(
      RULES.reduce(
        (now, [pattern, mark]) => now.replace(pattern, (words) => paint(mark, words)),
        text,
      ),
    );
  };
