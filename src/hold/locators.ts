import type { Job } from '../job/job.ts';
import { dowelHolesIn } from '../job/located.ts';
import type { Outline } from '../plane/outline.ts';
import type { Point } from '../plane/point.ts';
import { blankInLayout } from '../setup/place.ts';
import type { Placing } from '../setup/placing.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Vector } from './grip.ts';
import type { Held } from './verdict.ts';
import { strengthsOf } from './wood.ts';

/** What locates also bears: faces push and never pull, dowels bear every level way up to a limit. */
export interface Locators {
  readonly stops: Held['stops'];
  readonly dowels: readonly Held['ties'][number][];
}

/** What locates the blank or the part in a placing, as contacts; height of a face: its middle, or half thickness. */
export function locatorsOf(job: Job, placing: Placing): Locators {
  return {
    stops: job.locating === 'nest' ? nestContacts(job, placing) : stopContacts(job, placing),
    dowels: dowelContacts(job, placing),
  };
}

function stopContacts(job: Job, placing: Placing): Held['stops'] {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  return placing.contacts.map(({ at, face }) => {
    const alongX = Math.min(at.x - lowX, highX - at.x);
    const alongY = Math.min(at.y - lowY, highY - at.y);
    const isSide = alongX === alongY ? face === 'side' : alongX < alongY;
    const normal: Vector = isSide
      ? [at.x < (lowX + highX) / 2 ? 1 : -1, 0, 0]
      : [0, at.y < (lowY + highY) / 2 ? 1 : -1, 0];
    return { at: [at.x, at.y, job.blank.thickMm / 2], normal };
  });
}

/** The walls push at the outermost places in eight directions; in the first placing a nest round the part is not there. */
function nestContacts(job: Job, placing: Placing): Held['stops'] {
  if (job.locating !== 'nest') return [];
  if (job.nest.around !== null && placing.order === 'first') return [];
  const zMm = Math.min(job.nest.wallMm, job.blank.thickMm) / 2;
  return furthest(pieceOf(job, placing).outline).flatMap(({ places, towards: [c, s] }) =>
    places.map(({ x, y }) => ({ at: [x, y, zMm], normal: [-c, -s, 0] })),
  );
}

/** A dowel bears as much as the wood beside it does over this many of its diameters. Estimate. */
const BEARS_DIAMETERS = 1.2;

/** Dowels that stand in this placing; those drilled with the blank come only after the first. */
function dowelContacts(job: Job, { mirror, order }: Placing): Locators['dowels'] {
  const holes = dowelHolesIn(job);
  if (holes === null || (holes.drilled === 'with-the-blank' && order === 'first')) return [];
  const { diameterMm, at } = holes;
  const mostN = strengthsOf(job.blank.material).crush * diameterMm ** 2 * BEARS_DIAMETERS;
  return at.map((hole) => {
    const { x, y } = blankInLayout(job, mirror, hole);
    return { at: [x, y, 0], sidewaysN: mostN, downN: 0 };
  });
}

/** The places of an outline that are furthest out, in each of eight directions; a side of it has both its ends. */
export function furthest(outline: Outline<'layout'>): readonly {
  readonly towards: readonly [number, number];
  readonly places: readonly Point<'layout'>[];
}[] {
  return Array.from({ length: 8 }, (_, k) => {
    const towards = [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)] as const;
    const out = outline.map(({ x, y }) => towards[0] * x + towards[1] * y);
    const most = out.reduce((far, one) => Math.max(far, one), -Infinity);
    return { towards, places: outline.filter((_p, i) => most - out[i]! < SAME_MM) };
  });
}

/** Corners of one side lie equally far out but for rounding, mm. */
const SAME_MM = 1e-6;

/** The places on which something stands at least: the furthest out in eight directions. */
export const supportOf = (outline: Outline<'layout'>): readonly Vector[] =>
  [...new Set(furthest(outline).flatMap(({ places }) => places))].map(({ x, y }) => [x, y, 0]);
