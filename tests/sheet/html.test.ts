import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markup } from '../../src/sheet/html.ts';

describe('markup', () => {
  it('lets no text open a tag, a character reference or an attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const { html } = markup`${text}`;
        expect(html).not.toMatch(/[<>"']/);
        expect(html.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
      { seed: 1 },
    );
  });

  it('gives plain text back when it is read again', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = markup`${text}`.html
          .replace(/&lt;/g, '<')
          .replace(/&gt;/g, '>')
          .replace(/&quot;/g, '"')
          .replace(/&#39;/g, "'")
          .replace(/&amp;/g, '&')
          .replace(/\u00a0/g, ' ');
        expect(read).toBe(text.replace(/\u007f/g, '\ufffd'));
      }),
      { seed: 2 },
    );
  });

  it('keeps a number and its unit together', () => {
    expect(markup`${'99 % within 0.2 mm of it'}`.html).toBe('99\u00a0% within 0.2\u00a0mm of it');
  });
});
