import type { Fault, Place } from '../fault.ts';

type Said = readonly [message: string, instead: string];

/** What a slip of YAML means to somebody who has never heard of it, by the parser's code for it. */
const SAID: Readonly<Record<string, Said>> = {
  TAB_AS_INDENT: ['the line is indented with a tab', 'indent with two spaces'],
  MULTIPLE_DOCS: [
    'the file holds a second document',
    'remove the line --- or ... and what follows',
  ],
  TAG_RESOLVE_FAILED: ['the value begins with !', 'put it in quotes'],
  BAD_SCALAR_START: [
    'the value begins with a sign that means something else here',
    'put it in quotes',
  ],
  BAD_DQ_ESCAPE: ['a \\ in double quotes begins a code that is not known', 'use single quotes'],
  MISSING_CHAR: [
    'a bracket, brace, quote or comma is missing',
    'close what was opened before here',
  ],
  BAD_INDENT: [
    'the line stands further in or out than the lines it belongs to',
    'line it up with them',
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    'a second colon, or a line that stands too far in, makes this unreadable',
    'put one key: value on a line, or quotes around a text with a colon',
  ],
  MULTILINE_IMPLICIT_KEY: ['a key runs over two lines', 'put key: value on one line'],
  UNEXPECTED_TOKEN: [
    'this does not belong here',
    'look for a comma or bracket too many, or a line without its key',
  ],
};

/** A fault of the file's form; `source` is the text from there on. */
export function syntaxFault(
  error: { readonly code: string; readonly message: string },
  place: Place,
  source: string,
): Fault {
  if (error.code === 'DUPLICATE_KEY') {
    const key = /^[^:\n]+/.exec(source)?.[0].trim() ?? '';
    return { ...place, message: `the key ${key} is here twice`, instead: 'keep one of them' };
  }
  if (error.code === 'BAD_INDENT' && error.message.startsWith('Flow'))
    return {
      ...place,
      message: 'a bracket or brace above is not closed',
      instead: 'close it (an unquoted # begins a remark)',
    };
  const said = SAID[error.code];
  if (said !== undefined) return { ...place, message: said[0], instead: said[1] };
  const first = error.message.split('\n')[0] ?? '';
  return { ...place, message: first.charAt(0).toLowerCase() + first.slice(1), instead: '' };
}
