import type { Job } from '../../../job/job.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { inOrder, markCorner } from '../../places.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText } from '../../words.ts';
import { writtenSpread } from '../../written-spread.ts';
import { layFreely } from '../freely.ts';
import { pieceOf } from '../../../sweep/piece.ts';
import { pushedSide, takeUpWords } from '../take-up.ts';
import type { Located, Way } from '../way.ts';
import { nestDrawing, nestReach, nestSketch } from './nest-drawing.ts';
import { cutNest, haveBoard } from './nest-making.ts';

type NestJob = Extract<Job, { locating: 'nest' }>;

/** Located by a recess that this machine cut: round the blank, or round the part that is cut free of it. */
export function nestWay(job: NestJob, placings: Placings): Way {
  const { nest } = job;
  const [first, second] = inOrder(job, placings);
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const piece = pieceOf(job, second).name;
  return {
    heights: { title: 'Heights over the nest', column: 'Nest', tells: 'the walls of the nest' },
    cautions: nestCautions(piece),
    prepare: [haveBoard(job, nest, nest.around === null ? first : second)],
    cutters: [nest.cutter],
    key: {
      title: 'Nest',
      things: [
        markup`walls ${size(nest.wallMm)} high, cut with ${nest.cutter.name}; ${nest.around === null ? 'round the blank, in both placings' : `round ${nest.around}, in the second placing`}; gap on every side ${writtenSpread(nest.clearance.text, job.shop.units)}`,
      ],
      lines: [
        markup`<b>Hatched</b>: the walls of the nest`,
        markup`<b>M</b>: the pencilled ${nest.around === null ? 'corner' : 'mark on the part'}`,
      ],
      pictures: [],
    },
    turning: {
      before: nest.around === null ? [] : freed(job, nest.around),
      burrs: markup`Take the burrs off the edges of the ${piece} with one light stroke. Do not sand or plane the edges that meet the nest. Vacuum bed, nest and pockets.`,
      after: [],
    },
    next: nextPart(job),
    in: (placing) => inNest(job, placing),
  };
}

function inNest(job: NestJob, placing: Placing): Located {
  const { nest } = job;
  const piece = pieceOf(job, placing).name;
  const isFirst = placing.order === 'first';
  const isThere = nest.around === null || !isFirst;
  const isCutNow = isThere && (nest.around !== null || isFirst);
  return {
    making: isCutNow ? cutNest(job, nest, placing) : [],
    laying: isThere
      ? layInNest(job, placing)
      : layFreely(job, placing, nest.laid, 'for every cut of this face'),
    drilling: [],
    passing: isThere ? "the nest's walls, the screws of its board" : 'all that stands on the bed',
    landmark: isThere
      ? { words: "a marked place on top of the nest's wall", short: "top of the nest's wall" }
      : { words: 'a marked place of the bed beside the blank', short: 'bed beside the blank' },
    floor: isThere ? "nest's floor" : 'bed',
    hidesFloor: isThere,
    atEdges: isThere ? "just above the nest's walls" : 'at half its thickness',
    atMiddle: isThere ? "just above the nest's walls" : "at half the blank's thickness",
    lifting: isThere ? `lift the ${piece} straight up out of the nest` : 'take the part out',
    sideWords: (side) => (isThere ? pushedSide(nest.takeUp, side) : []),
    reach: isThere ? nestReach(job, nest, placing) : [],
    under: (field) =>
      isThere ? nestDrawing(job, nest, placing, field, `hatch-${placing.faceUp}`) : markup``,
    over: () => markup``,
    marks: () => [],
    labels: (_, taken) => ({ html: markup``, taken }),
    sketch: (plan) => (isThere ? nestSketch(plan) : markup``),
  };
}

function layInNest(job: NestJob, placing: Placing): Step[] {
  const { name } = pieceOf(job, placing);
  const { takeUp } = job.nest;
  return [
    step(markup`Blow and brush the floor and the corners of the nest, and the ${name}, clean.`),
    step(
      markup`Lower the ${name} level into the nest, <b>${placing.faceUp.toUpperCase()} up, M at the ${markCorner(job, placing)}</b>, by hand, until it lies on the floor all over. <b>Never hammer or force it:</b> if it binds, lift it out, look for chips and burrs, and whether it is the right way round.`,
    ),
    step(
      markup`${takeUpWords(takeUp, name, `the ${takeUp} wall of the nest holds`)} <b>The nest holds nothing down:</b> tighten the clamps a little each, crosswise, before any cut; a clamp must not drag the ${name}.`,
    ),
    step(
      markup`Press on each corner in turn: the ${name} must not rock.${takeUp === 'anywhere' ? '' : ` A thin feeler must not go in along the ${takeUp} wall.`} If it does, take it out, clean, and lay it again.`,
    ),
  ];
}

/** One nest serves every part when zero does not come from the blank it was cut out of. */
const servesAll = ({ zero, first }: NestJob): boolean =>
  (first === 'front' ? zero.backUp : zero.frontUp).xy.kind !== 'kept';

/** Where the nest is, the next blank would lie over a hole. */
function nextPart(job: NestJob): readonly Step[] {
  const { nest, parts } = job;
  if (nest.around === null || parts.count === 1) return [];
  return [
    servesAll(job)
      ? step(
          markup`<b>For the next of the ${parts.count} parts</b> go on from where the part is lowered into the nest: nest and zero stay.`,
        )
      : step(
          markup`<b>Before the next of the ${parts.count} blanks:</b> take the board of the nest off the bed, and begin again with the first placing. Each blank has its own zero, so each part wants a nest that is cut anew from it, in a fresh board.`,
        ),
  ];
}

/** What is left to do when the part was cut out of the blank. */
function freed(job: NestJob, outline: string): readonly Step[] {
  const { count } = job.parts;
  return [
    ...(count > 1 && servesAll(job)
      ? [
          step(
            markup`Make the first placing of all ${count} blanks before you go on: the nest will stand in the way of it.`,
          ),
        ]
      : []),
    step(
      markup`Clear the waste of the blank off the bed. Pare the edge of the part flush all along ${outline}, where tabs or a skin were left: what stands out there keeps it out of the nest.`,
    ),
  ];
}

function nestCautions(piece: 'blank' | 'part'): readonly Html[] {
  return [
    markup`<b>A nest locates, it does not hold.</b> A ${piece} that only lies in its nest is thrown out by the cutter: hold it down as well.`,
    markup`<b>You cut into the board of the nest:</b> no screw or nail may be where the cutter comes. Never force the ${piece} into the nest.`,
  ];
}
