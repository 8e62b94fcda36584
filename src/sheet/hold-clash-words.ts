import type { Units } from '../job/job.ts';
import type { Clash } from '../sweep/clash.ts';
import { lengthText } from './words.ts';

/** What comes too near to what, where, how high, by how much, and while what. */
export function clashWords(clash: Clash, units: Units): string {
  const { what, body, kind, at, heightMm, shortMm, during } = clash;
  const meets = kind === 'strikes' ? 'STRIKES' : 'comes too near to';
  const place = `${lengthText(at.x, units)}, ${lengthText(at.y, units)}`;
  const height =
    heightMm < 0
      ? `${lengthText(-heightMm, units)} below the bed’s surface`
      : `${lengthText(heightMm, units)} above the bed`;
  const by =
    during.by === 'feature'
      ? `while ${during.name} is cut`
      : `in line ${during.line}${during.lineCount > 1 ? ` (and ${during.lineCount - 1} more)` : ''}`;
  return `the ${what} ${meets} ${body} at ${place}, ${height} ${by}: ${lengthText(shortMm, units)} too low, room kept included`;
}
