import type { Feature, Job } from '../../job/job.ts';
import { kerfOf } from '../../hold/kerf.ts';
import { differenceOf, grown } from '../../plane/clip.ts';
import { mapped } from '../../plane/move.ts';
import type { Outline } from '../../plane/outline.ts';
import { blankInLayout } from '../../setup/place.ts';
import type { Placing } from '../../setup/placing.ts';
import { partOf, pieceOf } from '../../sweep/piece.ts';
import { outlineOf } from '../../sweep/feature-outline.ts';
import { blockOf, type Block, type Taken } from './block.ts';
import { coarser } from './coarser.ts';

/** The blank, or the part that lies there, at the end of a placing: with all that is cut by then. */
export function blankBlock(job: Job, placing: Placing): Block {
  const piece = pieceOf(job, placing);
  const free = piece.name === 'part' ? partOf(job) : null;
  const cuts = job.features
    .filter(({ face }) => placing.order === 'second' || face === placing.faceUp)
    .filter((feature) => feature !== free)
    .flatMap((feature) => takenBy(job, placing, feature));
  return blockOf([piece.outline], 0, job.blank.thickMm, cuts);
}

function takenBy(job: Job, placing: Placing, feature: Feature): readonly Taken[] {
  const { thickMm } = job.blank;
  const here = (loops: readonly Outline<'blank'>[]): readonly Outline<'layout'>[] =>
    loops.map((loop) =>
      mapped<'blank', 'layout'>(
        coarser(loop, STRAY_MM),
        (at) => blankInLayout(job, placing.mirror, at),
        placing.mirror === 'none',
      ),
    );
  /** From so far below the face that it is cut from to so much further. */
  const below = (loops: readonly Outline<'blank'>[], fromMm: number, toMm: number): Taken =>
    feature.face === placing.faceUp
      ? { loops: here(loops), lowMm: thickMm - toMm, highMm: thickMm - fromMm }
      : { loops: here(loops), lowMm: fromMm, highMm: toMm };
  if (feature.cut !== 'chamfer' && feature.cut !== 'chamfer-outside')
    return [
      below(kerfOf(feature), 0, feature.through ? thickMm : Math.min(feature.depthMm, thickMm)),
    ];
  const outline = outlineOf(feature, CHORD_MM);
  const slope = Math.tan((feature.cutter.vee?.includedRad ?? Math.PI / 2) / 2);
  const side = feature.cut === 'chamfer' ? -1 : 1;
  return Array.from({ length: STEPS }, (_, k) => {
    const [from, to] = [(feature.depthMm * k) / STEPS, (feature.depthMm * (k + 1)) / STEPS];
    const wideMm = (feature.depthMm - (from + to) / 2) * slope;
    const other = grown([outline], side * wideMm, CHORD_MM);
    return below(
      side < 0 ? differenceOf([outline], other) : differenceOf(other, [outline]),
      from,
      to,
    );
  });
}

const CHORD_MM = 0.05;
/** A picture shows no less than this, mm. */
const STRAY_MM = 0.06;
/** A slanting face is shown as so many steps. */
const STEPS = 5;
