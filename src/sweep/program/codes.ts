/**
 * The codes that this reader carries out, by modal group; G codes as ten times their number. Two of one
 * group in a line contradict each other.
 */
export type Group =
  | 'motion'
  | 'plane'
  | 'units'
  | 'distance'
  | 'arc distance'
  | 'feed mode'
  | 'cutter radius'
  | 'tool length'
  | 'return'
  | 'path'
  | 'zero'
  | 'once'
  | 'stop'
  | 'spindle'
  | 'tool change'
  | 'coolant'
  | 'override';

const table = (
  rows: readonly (readonly [Group, readonly number[]])[],
): ReadonlyMap<number, Group> =>
  new Map(rows.flatMap(([group, codes]) => codes.map((code) => [code, group] as const)));

/**
 * G40: the path is that of the tip. G41, G42 (path made by the controller from a radius it knows), G10
 * (sets zeros), G38 (probing) and cycles other than these move the cutter where no reader of the file
 * can tell, so they are not understood.
 */
const G_GROUPS = table([
  ['motion', [0, 10, 20, 30, 730, 800, 810, 820, 830]],
  ['plane', [170, 180, 190]],
  ['units', [200, 210]],
  ['distance', [900, 910]],
  ['arc distance', [901, 911]],
  ['feed mode', [930, 940]],
  ['cutter radius', [400]],
  ['tool length', [430, 490]],
  ['return', [980, 990]],
  ['path', [610, 611, 640]],
  ['zero', [540, 550, 560, 570, 580, 590, 591, 592, 593]],
  ['once', [40, 280, 281, 300, 301, 530, 920, 921, 922, 923]],
]);

const M_GROUPS = table([
  ['stop', [0, 1, 2, 30]],
  ['spindle', [3, 4, 5]],
  ['tool change', [6]],
  ['coolant', [7, 8, 9]],
  ['override', [48, 49]],
]);

export const groupOfG = (code: number): Group | undefined => G_GROUPS.get(code);
export const groupOfM = (code: number): Group | undefined => M_GROUPS.get(code);

/** Codes that take X, Y and Z for themselves, so that no motion can share the line. */
export const TAKES_AXES: ReadonlySet<number> = new Set([280, 300, 920]);

export const nameOfG = (code: number): string =>
  `G${code % 10 === 0 ? code / 10 : (code / 10).toFixed(1)}`;

/** A drilling cycle. */
export const isCycle = (motion: number): boolean => motion >= 730 && motion !== 800;
