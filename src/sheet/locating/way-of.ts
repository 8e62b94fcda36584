import type { SheetInput } from '../sheet-input.ts';
import { stopsWay } from './stops/stops-way.ts';
import type { Way } from './way.ts';

/** The way in which the job locates its blank, as the sheet tells it. */
export function wayOf(input: SheetInput): Way {
  if (input.made === 'stops') return stopsWay(input);
  throw new Error('later');
}
