import type { Corner } from '../../job/job.ts';

const WORDS: Record<Corner, string> = {
  'near-left': 'near left',
  'near-right': 'near right',
  'far-left': 'far left',
  'far-right': 'far right',
};

export const cornerWords = (corner: Corner): string => WORDS[corner];
