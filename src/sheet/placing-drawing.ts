import type { Job, Units } from '../job/job.ts';
import type { Bounds } from '../plane/measure.ts';
import type { Placing, Side } from '../setup/placing.ts';
import { badges } from './badges.ts';
import { blankDrawing, smallFeatures } from './blank-drawing.ts';
import type { Field } from './field.ts';
import { fieldFor, onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import { scaleBar } from './scale-bar.ts';
import { pieceOf } from '../sweep/piece.ts';
import type { Located } from './locating/way.ts';
import { sideWords } from './side-words.ts';
import { FAINT, INK, arrow, dot, drawing, textAt, textUp } from './svg.ts';
import { touchDrawing, touchMarks } from './touch-drawing.ts';
import { lengthText } from './words.ts';
import { zeroAndMark } from './zero-drawing.ts';

export const PAPER_MM = 186;
const LEFT_MM = 26;
const RIGHT_MM = 32;
const TOP_MM = 13.5;
const BOTTOM_MM = 18;
/** Most height for the bed: two placings of a wide blank share a page, of a tall one they do not. */
const WIDE_MM = 82;
const TALL_MM = 130;

/** One placing from above, to one of the usual scales, near side towards the reader. */
export function placingDrawing(job: Job, placing: Placing, located: Located): Html {
  const { box } = pieceOf(job, placing);
  const room = {
    widthMm: PAPER_MM - LEFT_MM - RIGHT_MM,
    heightMm: box.highY - box.lowY > box.highX - box.lowX ? TALL_MM : WIDE_MM,
  };
  const field = fieldFor(job, placing, located.reach, { x: LEFT_MM, y: TOP_MM }, room);
  const zero = zeroAndMark(job, placing, field, [
    ...located.marks(field),
    ...smallFeatures(job, placing, field),
    ...touchMarks(job, placing, field),
  ]);
  const touches = touchDrawing(job, placing, field, zero.taken);
  const labels = located.labels(field, touches.taken);
  const height = TOP_MM + field.box.height + BOTTOM_MM;
  return drawing(
    `${placing.order} placing from above, ${placing.faceUp} face up`,
    PAPER_MM,
    height,
    joined([
      bed(field),
      located.under(field),
      blankDrawing(job, placing, field),
      located.over(field),
      zero.html,
      touches.html,
      labels.html,
      badges(job, placing, field, labels.taken),
      dimensions(box, field, job.shop.units),
      ...sides(job, placing, located, field),
      operator(field),
      scaleWords(field, height - 2),
      scaleBar(
        { x: PAPER_MM - RIGHT_MM, y: height - 2 },
        'end',
        1 / field.reduction,
        40,
        job.shop.units,
      ),
    ]),
  );
}

function scaleWords(field: Field, y: number): Html {
  return textAt({ x: 0, y }, `from above, 1 : ${field.reduction}`, { sizeMm: 3.5, fill: FAINT });
}

function bed({ box }: Field): Html {
  return markup`<rect x="${dot(box.x)}" y="${dot(box.y)}" width="${dot(box.width)}" height="${dot(box.height)}" fill="#f1f0ec" stroke="${FAINT}" stroke-width="0.2"/>`;
}

/** Length along X above, along Y at the right, between arrow heads. */
function dimensions({ lowX, lowY, highX, highY }: Bounds, field: Field, units: Units): Html {
  const [widthMm, heightMm] = [highX - lowX, highY - lowY];
  const [a, c] = [onPaper(field, { x: lowX, y: highY }), onPaper(field, { x: highX, y: lowY })];
  const y = field.box.y - 2;
  const x = field.box.x + field.box.width + 2;
  const look = { sizeMm: 3.5, weight: 700 } as const;
  return joined([
    between({ x: a.x, y }, { x: c.x, y }),
    textAt({ x: (a.x + c.x) / 2, y: y - 1.6 }, lengthText(widthMm, units), {
      ...look,
      anchor: 'middle',
    }),
    between({ x, y: a.y }, { x, y: c.y }),
    textUp({ x: x + 4.4, y: (a.y + c.y) / 2 }, lengthText(heightMm, units), look),
  ]);
}

function between(from: { x: number; y: number }, to: { x: number; y: number }): Html {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return joined([arrow(middle, from, 0.25, INK), arrow(middle, to, 0.25, INK)]);
}

function sides(job: Job, placing: Placing, located: Located, field: Field): Html[] {
  const { box } = field;
  const middleX = box.x + box.width / 2;
  const line = (side: Side, y: number): Html =>
    textAt(
      { x: middleX, y },
      [side.toUpperCase(), ...sideWords(job, placing, located, side)].join(' · '),
      {
        sizeMm: 3.6,
        weight: 700,
        anchor: 'middle',
      },
    );
  const column = (side: Side, x: number, anchor: 'start' | 'end'): Html => {
    const words = [side.toUpperCase(), ...sideWords(job, placing, located, side).flatMap(halved)];
    const top = box.y + box.height / 2 - ((words.length - 1) * LINE_MM) / 2 + 1.2;
    return joined(
      words.map((word, i) =>
        textAt({ x, y: top + i * LINE_MM }, word, { sizeMm: 3.6, weight: 700, anchor }),
      ),
    );
  };
  return [
    line('far', 4),
    line('near', box.y + box.height + 5),
    column('left', box.x - 2, 'end'),
    column('right', box.x + box.width + 8.5, 'start'),
  ];
}

const LINE_MM = 4.8;

/** `against the second side stop` is too long for the column beside the drawing. */
function halved(words: string): string[] {
  const [against, ...rest] = words.split(' the ');
  return against === 'against' ? [against, ...rest.join(' ').split(/ (?=side)/)] : [words];
}

function operator({ box }: Field): Html {
  const [x, y] = [box.x + box.width / 2, box.y + box.height + 8];
  const wedge = (dx: number): Html =>
    markup`<path d="M${dot(x + dx - 2.2)} ${dot(y + 5.2)}l2.2 -4l2.2 4z" fill="${INK}"/>`;
  return joined([
    wedge(-22),
    wedge(22),
    textAt({ x, y: y + 5 }, 'you stand here', { sizeMm: 3.8, weight: 700, anchor: 'middle' }),
  ]);
}
