import type { Job, Nest } from '../../../job/job.ts';
import { frontUpCorner } from '../../../setup/place.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { xyWords } from '../../place-words.ts';
import { zeroOf } from '../../touch-places.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText, unitText } from '../../words.ts';
import { writtenSpread } from '../../written-spread.ts';
import { partOf, pieceOf } from '../../../sweep/piece.ts';
import { nestShape, type NestShape } from '../../../jig/nest/nest-shape.ts';
import { RIM_MM, UNDER_MM } from '../../../jig/nest/numbers.ts';
import { reliefWords, wallTable } from './nest-table.ts';

/** A board to cut the nest into. */
export function haveBoard(job: Job, nest: Nest, placing: Placing): Step {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const { lowX, lowY, highX, highY } = nestShape(job, nest, placing).box;
  return step(
    markup`Have a flat board of MDF or plywood at hand for the nest, at least ${size(highX - lowX + 2 * RIM_MM)} by ${size(highY - lowY + 2 * RIM_MM)} and ${size(nest.wallMm + UNDER_MM)} thick, and brass or wood screws to hold it down along its rim.`,
  );
}

/** Cutting the nest, when it is wanted: before the first placing, or round the part between the placings. */
export function cutNest(job: Job, nest: Nest, placing: Placing): Step[] {
  const { name } = pieceOf(job, placing);
  const unit = unitText(job.shop.units);
  const shape = nestShape(job, nest, placing);
  return [
    screwDown(job, placing, shape),
    step(zeroFor(job, placing)),
    clear(job, nest, placing, shape),
    ...relieve(job, nest, placing, shape),
    step(
      markup`Vacuum the nest, break its upper rim with one stroke of fine paper, leave its walls alone. Try the ${name} in it, ${placing.faceUp} up: it must drop in by hand and lie flat. The gap all round is to be ${writtenSpread(nest.clearance.text, job.shop.units)} on every side. If it does not go in, do not force it: run the last pass again a little further out on the wall where it binds. If the gap is wider, the nest is spoilt: cut another.`,
      ...['left', 'right', 'near', 'far'].map((label) => ({ label: `gap ${label}`, unit })),
    ),
    ...belongTogether(job, placing),
  ];
}

function screwDown(job: Job, placing: Placing, { box }: NestShape): Step {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const corner = frontUpCorner(job);
  const part = pieceOf(job, placing).name === 'part' ? ' of the first placing' : '';
  return step(
    markup`Screw the board for the nest flat onto the bed, so that it reaches ${size(RIM_MM)} or more beyond the nest on every side: the nest is ${size(box.highX - box.lowX)} by ${size(box.highY - box.lowY)}. The ${corner} corner of the blank${part} is at ${xyWords(job, job.onBed.value)} from the near-left corner of the bed${job.onBed.origin.kind === 'assumed' ? ' (assumed, the job does not say)' : ''}. Sink the screws, at the outermost rim only, where no cutter comes.`,
  );
}

function zeroFor(job: Job, placing: Placing): Html {
  const { xy } = zeroOf(job, placing);
  const z = markup`Set Z zero on the <b>top of the board</b>.`;
  if (xy.kind === 'kept' && placing.order === 'second')
    return markup`X and Y zero stay as they are: the nest is cut from the zero of the first placing. ${z}`;
  return markup`Set X and Y zero once, by eye, at the ${frontUpCorner(job)} corner of the picture's blank. ${z}`;
}

function clear(job: Job, nest: Nest, placing: Placing, shape: NestShape): Step {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const { cutter } = nest;
  const part = partOf(job);
  const how = markup`with ${cutter.name}, <b>${size(nest.wallMm)} deep</b> below the board's top, in light passes and without ridges on the floor, for the ${part === null ? 'blank' : 'part'} lies on it`;
  const table = markup`The table says where the <b>centre</b> of the cutter runs along the walls, half its ${size(cutter.diameterMm)} off them; from → to is the way that climbs with a spindle that turns clockwise seen from above. ${wallTable(job, shape, cutter, placing)}`;
  if (part === null) return step(markup`<b>Cut the nest</b> ${how}. ${table}`);
  const { lowX, lowY, highX, highY } = shape.box;
  const { zero } = placing;
  return step(
    markup`<b>Cut the nest</b> ${how}. Its outline is that of ${part.name} as the part lies with the ${placing.faceUp} up, <b>mirrored</b> (${job.turn === 'about-y' ? 'left and right' : 'near and far'} change places) and ${size(shape.gapMm)} wider on every side; the cutter runs inside it. It spans X ${size(lowX - zero.x)} to ${size(highX - zero.x)} and Y ${size(lowY - zero.y)} to ${size(highY - zero.y)}: check that on the screen before you cut.`,
  );
}

function relieve(job: Job, nest: Nest, placing: Placing, shape: NestShape): Step[] {
  if (shape.reliefs.length === 0) return [];
  return [
    step(
      markup`<b>Relieve the inside corners</b>, which ${nest.cutter.name} leaves round: with the same cutter go straight down to the same depth with its centre at ${reliefWords(job, shape, placing)}.`,
    ),
  ];
}

function belongTogether(job: Job, placing: Placing): Step[] {
  const isZero = [job.zero.frontUp, job.zero.backUp].some(({ xy }) => xy.kind === 'nest');
  return isZero || zeroOf(job, placing).xy.kind === 'kept'
    ? [
        step(
          markup`<b>From now on do not touch X and Y zero, the screws of the board, or the power switch</b>, but where this sheet says so: nest and zero now belong together.`,
        ),
      ]
    : [];
}
