import type { Edge, Feature, Job } from '../job/job.ts';
import { isInside } from '../plane/distance.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import type { Field } from './field.ts';
import { onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box } from './label-room.ts';
import { partOf, pieceOf, type Piece } from '../sweep/piece.ts';
import { inLayout } from './places.ts';
import type { Spot } from './svg.ts';
import { INK, dot, pointsText } from './svg.ts';

/** The blank from above: marked edges thick, features of the face that is up full, of the other dashed. */
export function blankDrawing(job: Job, placing: Placing, field: Field): Html {
  const piece = pieceOf(job, placing);
  // The outline that set the part free is drawn as the part itself.
  const here = piece.name === 'blank' ? job.features : job.features.filter(isLeft(job));
  const hidden = here.filter((feature) => feature.face !== placing.faceUp);
  const seen = here.filter((feature) => feature.face === placing.faceUp);
  const marked = piece.name === 'blank' ? job.blank.marked : [];
  return joined([
    pieceDrawing(piece, field),
    ...seen.map((feature) => seenFeature(feature, job, placing, field)),
    ...hidden.map((feature) => hiddenFeature(feature, job, placing, field)),
    ...marked.map((edge) => markedEdge(edge, job, placing, field)),
  ]);
}

/** Whether a cut is in the part, and not in the waste that is gone, nor its outline. */
const isLeft =
  (job: Job) =>
  (feature: Feature): boolean => {
    const part = partOf(job);
    if (part === null || feature === part) return false;
    const { lowX, lowY, highX, highY } = boundsOf(outlineOf(feature, CHORD_MM));
    const middle = point((lowX + highX) / 2, (lowY + highY) / 2);
    return isInside(middle, outlineOf(part, CHORD_MM));
  };

function pieceDrawing({ name, box, outline }: Piece, field: Field): Html {
  const look = markup`fill="#ffffff" stroke="${INK}" stroke-width="0.5"`;
  if (name === 'part')
    return markup`<polygon points="${pointsText(outline.map((at) => onPaper(field, at)))}" ${look}/>`;
  const a = onPaper(field, { x: box.lowX, y: box.highY });
  const c = onPaper(field, { x: box.highX, y: box.lowY });
  return markup`<rect x="${dot(a.x)}" y="${dot(a.y)}" width="${dot(c.x - a.x)}" height="${dot(c.y - a.y)}" ${look}/>`;
}

/** Chords this near to the arc look round at any of the scales, mm. */
const CHORD_MM = 0.1;

export function featureOnPaper(feature: Feature, job: Job, placing: Placing, field: Field): Spot[] {
  return outlineOf(feature, CHORD_MM).map((at) => onPaper(field, inLayout(job, placing, at)));
}

/** Pieces of paper with a feature so small that a label would hide it. */
export function smallFeatures(job: Job, placing: Placing, field: Field): Box[] {
  return job.features
    .map((feature) => boundsOf(featureOnPaper(feature, job, placing, field)))
    .map((b) => ({ x: b.lowX, y: b.lowY, width: b.highX - b.lowX, height: b.highY - b.lowY }))
    .filter((box) => box.width < SMALL_MM && box.height < SMALL_MM);
}

const SMALL_MM = 8;

function seenFeature(feature: Feature, job: Job, placing: Placing, field: Field): Html {
  const spots = featureOnPaper(feature, job, placing, field);
  return markup`<polygon points="${pointsText(spots)}" fill="#000000" fill-opacity="0.07" stroke="${INK}" stroke-width="0.55" stroke-linejoin="round"/>`;
}

function hiddenFeature(feature: Feature, job: Job, placing: Placing, field: Field): Html {
  const spots = featureOnPaper(feature, job, placing, field);
  return markup`<polygon points="${pointsText(spots)}" fill="none" stroke="${INK}" stroke-width="0.35" stroke-dasharray="1.8 1.2" stroke-linejoin="round"/>`;
}

function markedEdge(edge: Edge, job: Job, placing: Placing, field: Field): Html {
  const [from, to] = endsOf(edge, job).map((at) => onPaper(field, inLayout(job, placing, at)));
  return markup`<line x1="${dot(from!.x)}" y1="${dot(from!.y)}" x2="${dot(to!.x)}" y2="${dot(to!.y)}" stroke="${INK}" stroke-width="1.5"/>`;
}

function endsOf(edge: Edge, job: Job): [Point<'blank'>, Point<'blank'>] {
  const { widthMm: w, heightMm: h } = job.blank;
  if (edge === 'lower') return [point(0, 0), point(w, 0)];
  if (edge === 'upper') return [point(0, h), point(w, h)];
  return edge === 'left' ? [point(0, 0), point(0, h)] : [point(w, 0), point(w, h)];
}

const point = (x: number, y: number): Point<'blank'> => ({ x, y });
