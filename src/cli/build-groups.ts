/** What a build can be asked for alone. */
export const BUILD_GROUPS = [
  'sheet',
  'report',
  'prediction',
  'hold',
  'stops',
  'parts',
  'programs',
] as const;

export type BuildGroup = (typeof BUILD_GROUPS)[number];
