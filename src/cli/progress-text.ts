import type { Progress } from '../stackup/predicting.ts';

/** One line under a second's worth of reading: trials, digits so far, and how long it may still take. */
export function progressText(progress: Progress, sinceMs: number): string {
  const { trials, likelyTrials, digits, digitsAsked } = progress;
  const leftMs = (sinceMs / trials) * Math.max(0, likelyTrials - trials);
  return `${trials} trials, ${digits} of ${digitsAsked} digits certain, about ${timeText(leftMs)} left (Ctrl-C ends with what is known)`;
}

function timeText(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  return seconds < 90 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
}
