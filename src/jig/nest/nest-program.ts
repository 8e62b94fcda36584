import type { Cutter, Job } from '../../job/job.ts';
import { cannot, figure, mm, type Step } from '../answer.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { overheadOf } from '../../sweep/overhead.ts';
import { clearPocket } from '../program/clear-pocket.ts';
import { feedsOf } from '../program/feeds.ts';
import type { Move, Program } from '../program/program.ts';
import { CAUTIONS } from '../program/words.ts';
import { nestShape } from './nest-shape.ts';
import { UNDER_MM } from './numbers.ts';

const NAME = 'cut the nest';
const SAFE_OVER_MM = 5;
const WITNESS_MM = 2;

/**
 * Cuts the nest into a board that is screwed to the bed: clears it, goes round its walls, and relieves
 * the corners that the cutter leaves round. Heights count from the floor of the nest, on which the
 * blank lies. Null: the job has no nest.
 */
export function cutNest(
  job: Job,
  placings: Placings,
): Step<{ readonly program: Program; readonly cutter: Cutter }> | null {
  if (job.locating !== 'nest') return null;
  const { nest } = job;
  const { cutter, wallMm } = nest;
  const feeds = feedsOf(cutter);
  if (feeds.kind === 'cannot') return feeds;
  // A nest round the part is cut between the placings, one round the blank before the first.
  const [first, second] =
    placings.frontUp.order === 'first'
      ? [placings.frontUp, placings.backUp]
      : [placings.backUp, placings.frontUp];
  const placing = nest.around === null ? first : second;
  const shape = nestShape(job, nest, placing);
  const { zero } = placing;
  if (cutter.stickOutMm !== null && cutter.stickOutMm < wallMm)
    return cannot(
      `${NAME}: its walls are ${mm(wallMm)} high and ${cutter.name} sticks out ${mm(cutter.stickOutMm)}`,
      `walls of ${figure(cutter.stickOutMm)} or less, or a cutter that sticks out further`,
    );
  const low = overheadOf(job, cutter).find(
    ({ what, fromMm }) => what !== 'cutter' && what !== 'dust shoe' && fromMm < wallMm + 1,
  );
  if (low !== undefined)
    return cannot(
      `${NAME}: the ${low.what} would come down on its board, ${mm(wallMm + 1 - low.fromMm)} too low`,
      `a cutter that sticks out ${mm(wallMm + 1 - low.fromMm)} more`,
    );
  const fromZero = (p: { readonly x: number; readonly y: number }) => ({
    x: p.x - zero.x,
    y: p.y - zero.y,
  });
  const cleared = clearPocket(
    shape.outline.map(fromZero),
    wallMm,
    0,
    cutter.fluteMm ?? wallMm,
    feeds.value,
  );
  if (cleared.length === 0)
    return cannot(`${NAME}: ${cutter.name} does not go into it`, 'a thinner cutter under nest');
  const what = nest.around === null ? 'blank' : 'part';
  const { lowX, lowY, highX, highY } = shape.box;
  const program: Program = {
    name: NAME,
    jobName: job.name,
    header: [
      `For: the nest in which the ${what} lies, ${placing.faceUp} up: ${figure(highX - lowX)} by ${figure(highY - lowY)} mm, ${figure(wallMm)} deep, ${figure(shape.gapMm)} wider than the ${what} on every side.`,
      `On the bed: a board ${figure(wallMm + UNDER_MM)} mm thick or more, screwed down at its rim, the screws sunk. No ${what}.`,
      `X and Y zero: as the bench sheet says for the ${placing.order} placing. Z zero: top of the board.`,
      `Edges: ${placing.base.edge} edge ${placing.base.side}, ${placing.end.edge} edge ${placing.end.side}; marked: ${job.blank.marked.join(' and ')}.`,
    ],
    cautions: [
      ...CAUTIONS,
      'From here on nest and zero belong together. Do not touch either.',
      'See that no screw of the board is in the way of the cutter.',
    ],
    cutter: feeds.value.cutter,
    zeroAt: zero,
    zeroHighMm: wallMm,
    highestMm: wallMm,
    safeMm: wallMm + SAFE_OVER_MM,
    witness: {
      at: { x: 0, y: 0, z: wallMm + WITNESS_MM },
      over: 'X0 Y0 as the bench sheet shows it',
    },
    spindle: 'turns',
    moves: [
      ...cleared,
      ...shape.reliefs
        .map(fromZero)
        .flatMap(({ x, y }, i): readonly Move[] => [
          { kind: 'note', words: `corner ${i + 1}` },
          { kind: 'over', x, y },
          { kind: 'cut', to: { x, y, z: 0 }, feedMmPerMin: feeds.value.downMmPerMin },
          { kind: 'up' },
        ]),
    ],
  };
  return { kind: 'made', value: { program, cutter } };
}
