import type { Lain } from './trials.ts';
import { movedBy, type Motion } from './true-sets.ts';

/** How a blank turned about the line x = `lineMm` has moved on the layout, from where the machine then cuts it. */
export function onLayout({ sine, at }: Lain, lineMm: number): Motion {
  const [dx, dy] = at(0, 0);
  const cut = [2 * lineMm, 0] as const;
  // What the moved blank takes for the place of that cut, brought back by its turn alone.
  const [x, y] = movedBy({ sine, x: 0, y: 0 }, [cut[0] - dx, cut[1] + dy]);
  return { sine, x: cut[0] - x, y: cut[1] - y };
}
