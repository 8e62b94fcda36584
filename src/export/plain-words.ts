/**
 * The text with letters of plain ASCII, digits, space, dot and dash only, so that a name can never
 * become a move, a tag or a path. Accents are taken off; everything else becomes a space, and rows
 * of spaces one. May be empty.
 */
export function plainWords(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9 .-]+/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
}

/** A file name of lower-case letters, digits and dashes, at most 60; `otherwise` when nothing is left. */
export function fileNameOf(text: string, otherwise = 'job'): string {
  const name = plainWords(text)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  return name === '' || isDeviceName(name) ? otherwise : name;
}

/** Some systems keep these names for devices, whatever comes after a dot. */
const isDeviceName = (name: string): boolean => /^(con|prn|aux|nul|(com|lpt)[0-9])$/.test(name);
