import type { Edit } from '../../job/edit.ts';
import { fenceIn } from '../../job/located.ts';
import type { Corner, Edge, Job, Turn } from '../../job/job.ts';
import type { Variants } from '../../job/variants.ts';
import { EDGES_AT, isAlongX, otherCorner } from '../laid.ts';
import { editsOfWay } from '../ways/edits-of-way.ts';
import { wayKey, wayOf, type Located, type Way } from '../ways/way.ts';

/** Corner, fence and turn in which places are searched; the same kind of locating throughout. */
export interface Frame {
  readonly way: Way;
  /** Nothing for the job as it is written. */
  readonly edits: readonly Edit[];
}

const CORNERS: readonly Corner[] = ['near-left', 'near-right', 'far-left', 'far-right'];
const TURNS: readonly Turn[] = ['about-y', 'about-x'];

/**
 * The job's own frame first, then those that its blank allows: edges that are marked stay against the stops, and a job
 * with programs of its own stays turned as they were made for.
 */
export function framesOf(variants: Variants): readonly Frame[] {
  const { job } = variants.whole;
  const own = wayOf(job);
  const others = hasPrograms(variants) ? [] : waysLike(job, own);
  return [
    { way: own, edits: [] },
    ...others
      .filter((way) => wayKey(way) !== wayKey(own))
      .flatMap((way): readonly Frame[] => {
        const edits = editsOfWay(variants, way);
        return 'because' in edits ? [] : [{ way, edits }];
      }),
  ];
}

const hasPrograms = (variants: Variants): boolean => variants.written(['program']) !== undefined;

function waysLike(job: Job, own: Way): readonly Way[] {
  return TURNS.flatMap((turn) =>
    locatedLike(job, own, turn).map((located): Way => ({ ...own, turn, located })),
  );
}

function locatedLike(job: Job, { located }: Way, turn: Turn): readonly Located[] {
  switch (located.kind) {
    case 'stops': {
      // An arm and a button: other corners would make two kinds of one.
      if (located.touch === 'mixed') return turn === job.turn ? [located] : [];
      const isTwo = located.frontUp !== located.backUp;
      return CORNERS.flatMap((frontUp) =>
        Object.values(EDGES_AT[frontUp]).flatMap((fence): readonly Located[] => {
          const along = isAlongX(fence) ? 'x' : 'y';
          if (isTwo && (turn === 'about-y') !== (along === 'x')) return [];
          const backUp = isTwo ? otherCorner(frontUp, along) : frontUp;
          return keepsMarks(job, Object.values(EDGES_AT[frontUp]))
            ? [{ ...located, fence, frontUp, backUp }]
            : [];
        }),
      );
    }
    case 'fence-and-dowel': {
      const fences: readonly Edge[] = turn === 'about-y' ? ['lower', 'upper'] : ['left', 'right'];
      if (!isDrilledWithBlank(job)) return turn === job.turn ? [located] : [];
      return fences
        .filter((fence) => keepsMarks(job, [fence]))
        .map((fence): Located => ({ ...located, fence }));
    }
    case 'dowels':
      return isDrilledWithBlank(job) && job.locating === 'dowels' && isWhole(job, located)
        ? [located]
        : [];
    case 'nest':
      return [];
  }
}

/** What writing another way gives: two dowels on the line, or four in pairs. */
const isWhole = (
  { dowels }: Extract<Job, { locating: 'dowels' }>,
  { layout }: Extract<Located, { kind: 'dowels' }>,
): boolean => dowels.at.length === (layout === 'line' ? 2 : 4);

function isDrilledWithBlank(job: Job): boolean {
  if (job.locating === 'dowels') return job.dowels.drilled === 'with-the-blank';
  return job.locating === 'fence-and-dowel'
    ? job.fenceAndDowel.dowel.drilled === 'with-the-blank'
    : true;
}

/** Edges that somebody marked as true, and that are against the stops now, stay there. */
function keepsMarks(job: Job, edges: readonly Edge[]): boolean {
  const { marked } = job.blank;
  const now =
    job.locating === 'stops'
      ? Object.values(EDGES_AT[job.stops.corner.frontUp])
      : [fenceIn(job)?.fence].filter((edge) => edge !== undefined);
  return marked.filter((edge) => now.includes(edge)).every((edge) => edges.includes(edge));
}
