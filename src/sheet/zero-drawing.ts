import type { Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Field } from './field.ts';
import { ARROW_MM, onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box } from './label-room.ts';
import { boxAround, boxesBeside, roomFor } from './label-room.ts';
import { markedPlace } from './locating/piece.ts';
import { pieceOf } from '../sweep/piece.ts';
import { inLayout } from './places.ts';
import type { Drawn, Spot } from './svg.ts';
import { ACCENT, INK, arrow, dot, textAt } from './svg.ts';

/** The zero, which way X and Y grow from it, and the pencilled M in its corner of the blank. */
export function zeroAndMark(
  job: Job,
  placing: Placing,
  field: Field,
  marks: readonly Box[],
): Drawn {
  const at = onPaper(field, placing.zero);
  const letters = [
    boxAround(at.x + ARROW_MM + 2.6, at.y, 4, 5),
    boxAround(at.x, at.y - ARROW_MM - 2.8, 4, 5),
  ];
  const lines = [
    boxAround(at.x + ARROW_MM / 2, at.y, ARROW_MM, 2),
    boxAround(at.x, at.y - ARROW_MM / 2, 2, ARROW_MM),
    boxAround(at.x, at.y, 6, 6),
  ];
  const soFar = [...marks, ...letters, ...lines];
  const word = roomFor(boxesBeside(at, 14, 5), soFar, field.box).box;
  const mark = markBox(job, placing, field, [...soFar, word]);
  return {
    html: joined([
      zeroSign(at),
      lettered(at),
      textAt(foot(word), 'ZERO', {
        sizeMm: 3.6,
        weight: 700,
        anchor: 'middle',
        fill: ACCENT,
        rim: 'white',
      }),
      markSign(mark),
    ]),
    taken: [...soFar, word, mark],
  };
}

function zeroSign({ x, y }: Spot): Html {
  const r = 2.4;
  return markup`${arrow({ x, y }, { x: x + ARROW_MM, y }, 0.7, ACCENT)}${arrow({ x, y }, { x, y: y - ARROW_MM }, 0.7, ACCENT)}<circle cx="${dot(x)}" cy="${dot(y)}" r="${r}" fill="#ffffff" stroke="${ACCENT}" stroke-width="0.6"/><path d="M${dot(x)} ${dot(y)}v${-r}a${r} ${r} 0 0 1 ${r} ${r}zM${dot(x)} ${dot(y)}v${r}a${r} ${r} 0 0 1 ${-r} ${-r}z" fill="${ACCENT}"/>`;
}

function lettered({ x, y }: Spot): Html {
  const look = { sizeMm: 4, weight: 700, anchor: 'middle', fill: ACCENT, rim: 'white' } as const;
  return joined([
    textAt({ x: x + ARROW_MM + 2.6, y: y + 1.5 }, 'X', look),
    textAt({ x, y: y - ARROW_MM - 1.4 }, 'Y', look),
  ]);
}

function markBox(job: Job, placing: Placing, field: Field, taken: readonly Box[]): Box {
  const corner = inLayout(job, placing, markedPlace(job));
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  const at = onPaper(field, corner);
  const inX = corner.x > (lowX + highX) / 2 ? -1 : 1;
  const inY = corner.y > (lowY + highY) / 2 ? 1 : -1;
  const steps = [4.6, 5.4, 7, 9, 12, 16, 21, 27];
  const candidates = steps.flatMap((dx) =>
    steps.map((dy) => ({
      box: boxAround(at.x + inX * dx, at.y + inY * dy, 6, 6),
      cost: dx + dy,
    })),
  );
  return roomFor(candidates, taken, field.box).box;
}

/** A pencilled M in a triangle-cornered box, as the sheet tells to write it. */
export function markSign(box: Box): Html {
  return joined([
    markup`<rect x="${dot(box.x)}" y="${dot(box.y)}" width="${box.width}" height="${box.height}" rx="1.2" fill="#ffffff" stroke="${INK}" stroke-width="0.7"/>`,
    textAt(foot(box), 'M', { sizeMm: 4.4, weight: 700, anchor: 'middle', fill: INK }),
  ]);
}

function foot(box: Box): Spot {
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 + box.height * 0.26 };
}
