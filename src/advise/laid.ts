import type { Corner, Edge, Face, Job, Turn } from '../job/job.ts';

/** Edges of the blank that meet at a corner of the bed with the front up: the one along X, and the one along Y. */
export const EDGES_AT: Readonly<Record<Corner, { readonly alongX: Edge; readonly alongY: Edge }>> =
  {
    'near-left': { alongX: 'lower', alongY: 'left' },
    'near-right': { alongX: 'lower', alongY: 'right' },
    'far-left': { alongX: 'upper', alongY: 'left' },
    'far-right': { alongX: 'upper', alongY: 'right' },
  };

/** The corner at the other end along X or along Y. */
export function otherCorner(corner: Corner, along: 'x' | 'y'): Corner {
  const [far, hand] = corner.split('-') as ['near' | 'far', 'left' | 'right'];
  return along === 'x'
    ? `${far}-${hand === 'left' ? 'right' : 'left'}`
    : `${far === 'near' ? 'far' : 'near'}-${hand}`;
}

export const isAlongX = (edge: Edge): boolean => edge === 'lower' || edge === 'upper';

/** Keys of the placings in the order of work. */
export const placingsInOrder = (job: {
  readonly first: Face;
}): readonly ['front-up' | 'back-up', 'front-up' | 'back-up'] =>
  job.first === 'back' ? ['back-up', 'front-up'] : ['front-up', 'back-up'];

/** A place of the blank as it lies in a placing, or the other way round: mirroring twice is nothing. */
export function mirrored(
  at: readonly [number, number],
  placing: 'front-up' | 'back-up',
  turn: Turn,
  { widthMm, heightMm }: Job['blank'],
): readonly [number, number] {
  if (placing === 'front-up') return at;
  return turn === 'about-y' ? [widthMm - at[0], at[1]] : [at[0], heightMm - at[1]];
}

/** Whole tenths: what a person writes. */
export const tenths = (mm: number): number => Math.round(mm * 10) / 10;
