import type { Progress } from '../stackup/predicting.ts';
import type { Phase, Stage } from '../stackup/steps.ts';

const ENDS = '(Ctrl-C ends with what is known)';

/** One line under a second's worth of reading: trials, digits so far, and how long it may still take. */
export function progressText(progress: Progress, sinceMs: number): string {
  const { trials, likelyTrials, digits, digitsAsked } = progress;
  if (trials === 0) return `the first trials ${ENDS}`;
  const leftMs = (sinceMs / trials) * Math.max(0, likelyTrials - trials);
  return `${trials} trials, ${digits} of ${digitsAsked} digits certain, about ${timeText(leftMs)} left ${ENDS}`;
}

const WORDS: Readonly<Record<Phase, string>> = {
  trials: 'trials',
  shares: 'what makes it',
  'worst case': 'the worst case',
  gauge: 'what a gauge lets through',
  batches: 'batches of parts',
};

/** The same of what comes after the trials, with the time since that part of it began. */
export function stageText(trials: number, { phase, done }: Stage, sinceMs: number): string {
  const left = done > 0 ? `, about ${timeText((sinceMs / done) * (1 - done))} left` : '';
  return `${trials} trials done; ${WORDS[phase]}: ${Math.floor(100 * done)} %${left} ${ENDS}`;
}

function timeText(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  return seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
}
