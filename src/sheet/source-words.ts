import type { Units } from '../job/job.ts';
import type { Prediction, SourceLine } from '../stackup/prediction.ts';
import { writtenSpread } from './written-spread.ts';

/** A source by the name that shares and `assumed` use, in plain words. */
export function sourceWords(prediction: Prediction, name: string): string {
  return lineOf(prediction, name)?.words ?? name;
}

/** The same with how far it may be off: `the blank's length along X (±0.4 mm)`. */
export function sourceAndSpread(prediction: Prediction, name: string, units: Units): string {
  const line = lineOf(prediction, name);
  if (!line) return name;
  // A strain is a pure number: the wood moves by a share of its length.
  const isStrain = line.name.startsWith('movement ');
  return `${line.words} (${isStrain ? line.text : writtenSpread(line.text, units)})`;
}

function lineOf({ sources }: Prediction, name: string): SourceLine | undefined {
  return sources.find((line) => line.name === name);
}
