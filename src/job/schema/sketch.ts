/** A picture in plain characters and the keys that it stands beside. */
export interface Sketch {
  readonly keys: readonly string[];
  readonly lines: string;
}

/** Keys with `, ` between them; a line break in front and spaces behind are dropped. */
export const sketch = (keys: string, lines: string): Sketch => ({
  keys: keys.split(', '),
  lines: lines.replace(/^\n/, '').trimEnd(),
});
