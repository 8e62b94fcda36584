import type { RecurrenceKey } from '../stackup/prediction.ts';

/** What stays the same from part to part; it can be measured on a test piece and dialled out. */
export const RECURS: readonly RecurrenceKey[] = ['shop', 'powerUp', 'setup'];
/** What is new with each part, placing or feature; nothing dials it out. */
export const NEW_EACH_TIME: readonly RecurrenceKey[] = ['part', 'placing', 'feature'];

/** How each kind is told at the bench. */
export const RECURRENCE_WORDS: Readonly<Record<RecurrenceKey, string>> = {
  shop: 'this machine and its cutters',
  powerUp: 'each switching on',
  setup: 'setting up',
  part: 'each blank',
  placing: 'each placing',
  feature: 'each cut',
};
