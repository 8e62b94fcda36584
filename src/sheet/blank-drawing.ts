import type { Edge, Feature, Job } from '../job/job.ts';
import { boundsOf } from '../plane/measure.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import { outlineOf } from '../sweep/feature-outline.ts';
import type { Field } from './field.ts';
import { onPaper } from './field.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import type { Box } from './label-room.ts';
import { inLayout } from './places.ts';
import type { Spot } from './svg.ts';
import { INK, dot, pointsText } from './svg.ts';

/** The blank from above: marked edges thick, features of the face that is up full, of the other dashed. */
export function blankDrawing(job: Job, placing: Placing, field: Field): Html {
  const { widthMm, heightMm } = job.blank;
  const [a, c] = [onPaper(field, { x: 0, y: heightMm }), onPaper(field, { x: widthMm, y: 0 })];
  const sheet = markup`<rect x="${dot(a.x)}" y="${dot(a.y)}" width="${dot(c.x - a.x)}" height="${dot(c.y - a.y)}" fill="#ffffff" stroke="${INK}" stroke-width="0.5"/>`;
  const hidden = job.features.filter((feature) => feature.face !== placing.faceUp);
  const seen = job.features.filter((feature) => feature.face === placing.faceUp);
  return joined([
    sheet,
    ...seen.map((feature) => seenFeature(feature, job, placing, field)),
    ...hidden.map((feature) => hiddenFeature(feature, job, placing, field)),
    ...job.blank.marked.map((edge) => markedEdge(edge, job, placing, field)),
  ]);
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
