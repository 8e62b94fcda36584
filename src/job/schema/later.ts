/**
 * Keys that the format has and this version does not read, by the mapping they stand in (list
 * places written as `*`). Take a key out of this table when it arrives.
 */
export const NOT_YET: Readonly<Record<string, readonly string[]>> = {
  '': ['dowels', 'nest', 'repeat', 'program', 'tabs', 'screws', 'outline', 'fits'],
  blank: ['outline'],
  'front.*': ['tabs', 'repeat', 'program'],
  'back.*': ['tabs', 'repeat', 'program'],
  stops: ['dowel', 'dowels', 'nest', 'pins'],
  hold: ['clamps', 'screws', 'tabs'],
  bed: ['t-tracks'],
};

/** Words that a key takes in the format and not yet in this version, by key. */
export const WORDS_NOT_YET: Readonly<Record<string, readonly string[]>> = {
  fence: ['dowel'],
  'side-touch': ['dowel'],
};
