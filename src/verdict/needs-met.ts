import type { NeedPrediction, Prediction } from '../stackup/prediction.ts';

/** `close`: more trials could still turn it. */
export type Met = 'met' | 'met, but close' | 'missed, but close' | 'missed';

export function metBy(need: NeedPrediction, goodEnoughShare: number): Met {
  const off = need.chance - goodEnoughShare;
  const close = Math.abs(off) < 2 * need.chanceSe;
  return off >= 0 ? (close ? 'met, but close' : 'met') : close ? 'missed, but close' : 'missed';
}

/** True when every need reaches the wished chance. */
export function goodEnough(prediction: Prediction, goodEnoughShare: number): boolean {
  return prediction.needs.every((need) => need.chance >= goodEnoughShare);
}
