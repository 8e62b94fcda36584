import type { Corner, Edge } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { isFar, isRight } from '../resolve/on-bed.ts';
import { inWords } from '../schema/closest.ts';
import type { Known } from './job.ts';

/**
 * Which corners, fence and turn go together. The fence is one fixed row of contacts, so both
 * corners must be on it; another corner is only met again along the direction that turns.
 */
export function checkCorners(context: Context, { raw }: Known): void {
  const stops = raw.stops;
  if (stops?.corner === undefined) return;
  const { corner } = stops;
  const { 'front-up': frontUp, 'back-up': backUp } = corner;
  const edges = EDGES_AT[frontUp];
  const fence = stops.fence.replace('-edge', '') as Edge;
  if (!edges.includes(fence)) {
    fault(
      context,
      [stops, 'fence'],
      `the ${stops.fence} does not meet the ${frontUp} corner with the front up`,
      `write fence: ${inWords(edges.map((edge) => `${edge}-edge`))}`,
    );
    return;
  }
  const side = SIDE_OF[fence];
  const sound = `${frontUp} or ${otherEnd(frontUp, fence)}`;
  if (!backUp.includes(side)) {
    fault(
      context,
      [corner, 'back-up'],
      `the fence stands on the ${side} side, and the ${backUp} corner is not on it`,
      `write ${sound}${otherFence(frontUp, backUp, edges, fence)}`,
    );
    return;
  }
  const turned = raw.turn;
  if (turned === undefined || backUp === frontUp) return;
  const runsAlongX = side === 'near' || side === 'far';
  if (runsAlongX === (turned === 'about-y')) return;
  const [along, changing] = runsAlongX ? ['X', 'near and far'] : ['Y', 'left and right'];
  fault(
    context,
    [corner, 'back-up'],
    `turned ${turned}, ${changing} edges change places, so a corner at the other end of a fence along ${along} gains nothing`,
    `write ${frontUp}, or turn: ${runsAlongX ? 'about-y' : 'about-x'}, or a fence along ${runsAlongX ? 'Y' : 'X'}`,
  );
}

/** The other edge at the front-up corner, when a fence there would hold both corners. */
function otherFence(frontUp: Corner, backUp: Corner, edges: readonly Edge[], fence: Edge): string {
  const other = edges.find((edge) => edge !== fence)!;
  return backUp !== frontUp && backUp.includes(SIDE_OF[other]) ? `, or fence: ${other}-edge` : '';
}

/** The blank's edges at a corner of the bed, front up. */
const EDGES_AT: Readonly<Record<Corner, readonly Edge[]>> = {
  'near-left': ['lower', 'left'],
  'near-right': ['lower', 'right'],
  'far-left': ['upper', 'left'],
  'far-right': ['upper', 'right'],
};

const SIDE_OF: Readonly<Record<Edge, 'near' | 'far' | 'left' | 'right'>> = {
  lower: 'near',
  upper: 'far',
  left: 'left',
  right: 'right',
};

function otherEnd(corner: Corner, fence: Edge): Corner {
  const alongX = fence === 'lower' || fence === 'upper';
  const far = isFar(corner) !== !alongX;
  const right = isRight(corner) !== alongX;
  return `${far ? 'far' : 'near'}-${right ? 'right' : 'left'}`;
}
