import type { Holding, Strap } from '../../src/job/holding.ts';

export const strap: Strap = {
  name: 'strap',
  count: 4,
  slotMm: [20, 60],
  lengthMm: 80,
  padMm: [20, 12],
  heightMm: 12,
  thread: 'M6',
  torqueNm: 4,
};

/** Four straps and nothing else; whatever is not wished is left out. */
export const aHolding = (wish: Partial<Holding> = {}): Holding => ({
  programs: { frontUp: null, backUp: null },
  clamps: { kind: 'auto', frontUp: { pin: [], forbid: [] }, backUp: { pin: [], forbid: [] } },
  screws: [],
  tabs: new Map(),
  friction: null,
  force: { sidewaysN: null, liftN: null },
  vacuum: null,
  tape: null,
  hasFiller: false,
  straps: [strap],
  screw: null,
  board: { material: null, oldHoles: [] },
  tracks: [],
  boardScrews: [],
  cutting: new Map([['flat 6', { flutes: 2, helix: 'up', stepMm: 3 }]]),
  ...wish,
});
