/** Plain text for terminals of 80 columns. */
export const WIDTH = 80;

/** Columns as wide as their widest cell, two spaces between; cells keep their own alignment. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[]): string[] {
  const widths = (rows[0] ?? []).map((_, k) =>
    Math.max(...rows.map((row) => (row[k] ?? '').length)),
  );
  return rows.map((row) =>
    row
      .map((cell, k) => (right.includes(k) ? cell.padStart(widths[k]!) : cell.padEnd(widths[k]!)))
      .join('  ')
      .trimEnd(),
  );
}

/** Text broken at spaces so that no line is wider than the terminal or `width`; spaces in front stay, later lines are indented. */
export function wrapped(text: string, indent = '', width = WIDTH): string[] {
  const words = text.trimStart();
  const lines: string[] = [];
  let line = text.slice(0, text.length - words.length);
  let isEmpty = true;
  for (const word of words.split(' ')) {
    if (!isEmpty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line = isEmpty ? line + word : `${line} ${word}`;
    }
    isEmpty = false;
  }
  return words === '' ? lines : [...lines, line];
}
