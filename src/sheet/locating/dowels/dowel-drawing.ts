import type { Point } from '../../../plane/point.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Field } from '../../field.ts';
import { onPaper } from '../../field.ts';
import type { Html } from '../../html.ts';
import { joined, markup } from '../../html.ts';
import type { Box, Candidate } from '../../label-room.ts';
import { boxAround, overlapMm2, roomFor } from '../../label-room.ts';
import type { Drawn, Spot } from '../../svg.ts';
import { ACCENT, INK, dot, textAt } from '../../svg.ts';
import { pieceOf } from '../../../sweep/piece.ts';
import type { Plan } from '../way.ts';
import type { Dowel } from './dowel-places.ts';
import { holeOver } from './dowel-places.ts';
import type { DowelSet } from './dowel-set.ts';
import { areStanding } from './dowel-set.ts';

/** Smaller than this a circle is lost on paper, mm. */
const LEAST_RADIUS_MM = 1.3;

/** Where a dowel stands in its hole a black disc in a ring; where one is to be drilled for a ring with a cross. */
export function dowelDrawing(set: DowelSet, placing: Placing, field: Field): Html {
  const radius = radiusOn(set, field);
  return joined(
    set.dowels.map(({ stands }) => {
      const spot = onPaper(field, stands);
      return areStanding(set, placing) ? disc(spot, radius) : crossed(spot, radius);
    }),
  );
}

export function dowelMarks(set: DowelSet, field: Field): readonly Box[] {
  const wide = 2 * radiusOn(set, field) + 1.6;
  return set.dowels.map(({ stands }) => {
    const { x, y } = onPaper(field, stands);
    return boxAround(x, y, wide, wide);
  });
}

/** `drill 1`, or, on the dowels, `2 on 1` when hole 2 comes over dowel 1. */
export function dowelLabels(
  set: DowelSet,
  placing: Placing,
  field: Field,
  taken: readonly Box[],
): Drawn {
  const piece = onPiece(set, placing, field);
  const boxes = [...taken];
  const drawn = set.dowels.map((dowel) => {
    const words = labelWords(set, dowel, placing);
    const spot = onPaper(field, dowel.stands);
    const { box } = roomFor(within(beside(spot, words.length * 2.05), piece), boxes, field.box);
    boxes.push(box);
    const foot = { x: box.x + box.width / 2, y: box.y + box.height / 2 + 1.3 };
    return textAt(foot, words, {
      sizeMm: 3.6,
      weight: 700,
      anchor: 'middle',
      fill: INK,
      rim: 'white',
    });
  });
  return { html: joined(drawn), taken: boxes };
}

/** Right, left, above, below, then further off. */
function beside({ x, y }: Spot, width: number): readonly Candidate[] {
  return [4, 6, 9, 13, 18].flatMap((away) => {
    const aside = away + width / 2 - 1;
    return [
      [aside, 0],
      [-aside, 0],
      [0, -away - 1],
      [0, away + 1],
    ].map(([dx, dy], i) => ({ box: boxAround(x + dx!, y + dy!, width, 5), cost: away + i / 10 }));
  });
}

/** A label across the edge of the blank is hard to read. */
function within(candidates: readonly Candidate[], piece: Box): readonly Candidate[] {
  return candidates.map(({ box, cost }) => ({
    box,
    cost: cost + (box.width * box.height - overlapMm2(box, piece)),
  }));
}

function onPiece({ job }: DowelSet, placing: Placing, field: Field): Box {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  const [low, high] = [
    onPaper(field, { x: lowX, y: lowY }),
    onPaper(field, { x: highX, y: highY }),
  ];
  // The line of a marked edge is thick.
  return { x: low.x + 1, y: high.y + 1, width: high.x - low.x - 2, height: low.y - high.y - 2 };
}

function labelWords(set: DowelSet, dowel: Dowel, placing: Placing): string {
  return areStanding(set, placing)
    ? `hole ${holeOver(set.job, set.dowels, dowel, placing)} on ${dowel.number}`
    : `drill ${dowel.number}`;
}

/** Discs in the small plan of the turn. */
export function dowelSketch({ dowels }: DowelSet, { spot }: Plan): Html {
  return joined(dowels.map(({ stands }) => disc(spot(stands), 1.2)));
}

function radiusOn({ holes }: DowelSet, { reduction }: Field): number {
  return Math.max(LEAST_RADIUS_MM, holes.diameterMm / 2 / reduction);
}

function disc({ x, y }: Spot, radius: number): Html {
  return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${dot(radius + 0.6)}" fill="#ffffff" stroke="${INK}" stroke-width="0.4"/><circle cx="${dot(x)}" cy="${dot(y)}" r="${dot(radius - 0.3)}" fill="${INK}"/>`;
}

function crossed({ x, y }: Spot, radius: number): Html {
  const arm = radius + 1.2;
  return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="${dot(radius)}" fill="#ffffff" stroke="${ACCENT}" stroke-width="0.6"/><path d="M${dot(x - arm)} ${dot(y)}h${dot(2 * arm)}M${dot(x)} ${dot(y - arm)}v${dot(2 * arm)}" stroke="${ACCENT}" stroke-width="0.4"/>`;
}

/** All the places where dowels stand, for what must fit into a drawing. */
export const dowelReach = ({ dowels }: DowelSet): readonly Point<'layout'>[] =>
  dowels.map(({ stands }) => stands);
