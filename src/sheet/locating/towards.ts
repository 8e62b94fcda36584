import type { Side } from '../../setup/placing.ts';

/** Which way to push, for who stands at the near side. */
export function towards(side: Side): string {
  return WORDS[side];
}

const WORDS: Readonly<Record<Side, string>> = {
  near: 'towards you',
  far: 'away from you',
  left: 'to the left',
  right: 'to the right',
};
