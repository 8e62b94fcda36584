import type { Placing } from '../../../setup/placing.ts';
import type { SheetStop } from '../../sheet-input.ts';

/** Whether the blank touches this stop in this placing. */
export function isInUse(stop: SheetStop, placing: Placing): boolean {
  const carried = stop.lands.flatMap((land) => land.contacts);
  return placing.contacts.some((contact) => carried.includes(contact.id));
}
