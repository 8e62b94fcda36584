import { createHash } from 'node:crypto';

/** What a report of a fault of ours may tell; nothing of it names a folder or a person. */
export interface FaultContext {
  readonly version: string;
  readonly verb: string;
  readonly node: string;
  readonly platform: string;
}

/**
 * A short text that a person can send when the program itself is at fault: what broke, where in our
 * own files, nothing of theirs. Paths and text in quotes are left out, since they may be
 * from a job.
 */
export function faultReport(error: unknown, context: FaultContext): string {
  const { name, message, stack = '' } = error instanceof Error ? error : new Error(String(error));
  const where = stack
    .split('\n')
    .map((line) => /\(?([^()\s]+):(\d+):\d+\)?\s*$/.exec(line))
    .flatMap((match) => (match === null ? [] : [`${ours(match[1]!)}:${match[2]!}`]))
    .slice(0, 6);
  const lines = [
    `flipwright ${context.version}, Node ${context.node}, ${context.platform}`,
    `while: ${context.verb}`,
    `fault: ${withoutPaths(`${name}: ${message}`)}`,
    ...where.map((place) => `at: ${place}`),
  ];
  const number = createHash('sha256').update(lines.slice(1).join('\n')).digest('hex').slice(0, 8);
  return [`--- report ${number}`, ...lines, '---'].join('\n');
}

/** From the room on: `stackup/predict.js`. A file that is not ours keeps only its name. */
function ours(path: string): string {
  const parts = path.replace(/^file:\/\//, '').split(/[\\/]/);
  const house = Math.max(parts.lastIndexOf('dist'), parts.lastIndexOf('src'));
  return house >= 0 ? parts.slice(house + 1).join('/') : parts.at(-1)!;
}

/** Paths and quoted texts left out, long texts cut. A folder may have spaces: from the first slash to the last. */
const withoutPaths = (text: string): string =>
  text
    .replace(/(["'`])(?:(?!\1).)*\1/g, '"…"')
    .replace(/(?:[A-Za-z]:)?[\\/](?:[^:\n]*[\\/])?\S*/g, '…')
    .replace(/\s+/g, ' ')
    .slice(0, 300);
