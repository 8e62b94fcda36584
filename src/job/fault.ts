/** A place in a file that a person wrote; lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** Something that is wrong in a file, where, and what to write instead (empty when nothing can be said). */
export interface Fault extends Place {
  readonly message: string;
  readonly instead: string;
}

/** Something that a person should know about a file that is not wrong. */
export interface Note extends Place {
  readonly message: string;
}

/** `file:line:col: what is wrong; what to write instead`. */
export function faultText(fault: Fault): string {
  const place = `${fault.file}:${fault.line}:${fault.column}`;
  return `${place}: ${fault.message}${fault.instead === '' ? '' : `; ${fault.instead}`}`;
}

/** `file:line:col: what to know`. */
export const noteText = (note: Note): string =>
  `${note.file}:${note.line}:${note.column}: ${note.message}`;

/** The files in the given order, each from top to bottom; a fault that is found twice is told once. */
export function inReadingOrder<T extends Note>(found: readonly T[], files: readonly string[]): T[] {
  const seen = new Set<string>();
  const once = found.filter((fault) => {
    const text = noteText(fault);
    return !seen.has(text) && seen.add(text);
  });
  return once.sort(
    (a, b) =>
      files.indexOf(a.file) - files.indexOf(b.file) || a.line - b.line || a.column - b.column,
  );
}
