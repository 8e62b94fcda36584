import type { Prediction, SourceLine } from '../stackup/prediction.ts';

/** A source by the name that shares and `assumed` use, in plain words. */
export function sourceWords(prediction: Prediction, name: string): string {
  return lineOf(prediction, name)?.words ?? name;
}

/** The same with how far it may be off: `the blank's length along X (±0.4)`. */
export function sourceAndSpread(prediction: Prediction, name: string): string {
  const line = lineOf(prediction, name);
  return line ? `${line.words} (${line.text})` : name;
}

function lineOf({ sources }: Prediction, name: string): SourceLine | undefined {
  return sources.find((line) => line.name === name);
}
