/** An element of an SVG drawing with what it says of itself. */
export interface Element {
  /** Without its prefix. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly line: number;
  /** The elements it stands in, the outermost first. */
  readonly within: readonly Element[];
}

/** Holders of what is only drawn by way of something else. */
const ASIDE = new Set(['defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern']);
/** Deeper than this is no drawing. */
const DEEPEST = 200;

/** Every element that is drawn, in order. Anything that is not an element is passed over. */
export function elementsOf(text: string): readonly Element[] {
  const elements: Element[] = [];
  let open: readonly Element[] = [];
  let [at, line, counted] = [0, 1, 0];
  for (;;) {
    const start = text.indexOf('<', at);
    if (start < 0) return elements;
    for (; counted < start; counted++) if (text[counted] === '\n') line++;
    const remark = REMARKS.find(([opening]) => text.startsWith(opening, start));
    if (remark !== undefined) {
      const end = text.indexOf(remark[1], start + remark[0].length);
      if (end < 0) return elements;
      at = end + remark[1].length;
      continue;
    }
    const end = tagEnd(text, start);
    if (end < 0) return elements;
    const tag = text.slice(start + 1, end);
    at = end + 1;
    if (tag.startsWith('/')) {
      const name = localName(tag.slice(1).trim());
      const last = open.findLastIndex((one) => one.name === name);
      if (last >= 0) open = open.slice(0, last);
      continue;
    }
    const isWhole = tag.endsWith('/');
    const name = localName(/^[^\s/>]*/.exec(tag)?.[0] ?? '');
    const element: Element = { name, attributes: attributesIn(tag), line, within: open };
    if (!open.some((one) => ASIDE.has(one.name)) && !ASIDE.has(name)) elements.push(element);
    if (!isWhole && open.length < DEEPEST) open = [...open, element];
  }
}

const REMARKS = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<?', '?>'],
  ['<!', '>'],
] as const;

/** Where the tag ends that begins there; quotes may hold a `>`. */
function tagEnd(text: string, start: number): number {
  let quote = '';
  for (let at = start + 1; at < text.length; at++) {
    const sign = text[at]!;
    if (quote !== '') quote = sign === quote ? '' : quote;
    else if (sign === '"' || sign === "'") quote = sign;
    else if (sign === '>') return at;
  }
  return -1;
}

function attributesIn(tag: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, name, double, single] of tag.matchAll(/([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g))
    if (name !== undefined) found.set(name, plain(double ?? single ?? ''));
  return found;
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};
const plain = (value: string): string =>
  value.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? '');

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);
