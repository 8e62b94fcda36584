import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import type { SheetStop } from './sheet-input.ts';

/** Whether the blank touches this stop in this placing. */
export function isInUse(stop: SheetStop, placing: Placing): boolean {
  const carried = stop.lands.flatMap((land) => land.contacts);
  return placing.contacts.some((contact) => carried.includes(contact.id));
}

/** Whether a place is inside a closed outline. */
export function isInside(outline: readonly Point<'layout'>[], at: Point<'layout'>): boolean {
  let inside = false;
  for (const [i, a] of outline.entries()) {
    const b = outline[(i + 1) % outline.length]!;
    const crosses = a.y > at.y !== b.y > at.y;
    if (crosses && at.x < a.x + ((at.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}
