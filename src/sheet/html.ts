/** Markup that is safe to put on a page: made only by `markup`, which escapes everything else. */
export interface Html {
  readonly html: string;
}

type Part = Html | string | number | readonly Html[];

/** Markup with every text and number in it escaped; only other markup goes in as it stands. */
export function markup(strings: TemplateStringsArray, ...parts: readonly Part[]): Html {
  const pieces = strings.map((text, i) => text + (i < parts.length ? written(parts[i]!) : ''));
  return { html: pieces.join('') };
}

/** Pieces in order, nothing between. */
export function joined(pieces: readonly Html[]): Html {
  return { html: pieces.map((piece) => piece.html).join('') };
}

function written(part: Part): string {
  if (typeof part === 'number') return String(part);
  if (typeof part === 'string') return escaped(part);
  return 'html' in part ? part.html : joined(part).html;
}

function escaped(text: string): string {
  return (
    text
      // Control characters and lone halves of a pair are not allowed on a page at all.
      .replace(/\p{Surrogate}/gu, '\ufffd')
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g, '\ufffd')
      // A number and its unit stay on one line.
      .replace(/(\d) (?=(mm|in|%)(?!\w))/g, '$1\u00a0')
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
      .replace(/'/g, '&#39;')
  );
}
