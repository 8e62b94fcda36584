/**
 * Keys that the format has and this version does not read, by the mapping they stand in (list
 * places written as `*`). Take a key out of this table when it arrives.
 */
export const NOT_YET: Readonly<Record<string, readonly string[]>> = {
  '': ['outline', 'fits'],
  blank: ['outline'],
  'front.*': ['program'],
  'back.*': ['program'],
  stops: ['pins'],
};
