import type { Cutter, Job, Units } from '../job/job.ts';
import { markup } from './html.ts';
import { markedCorner } from './locating/piece.ts';
import { partOf } from '../sweep/piece.ts';
import type { Way } from './locating/way.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { lengthText, spreadText, unitText } from './words.ts';

/** Before anything is cut: make what locates the blank, mark and measure it, warm the machine. */
export function prepareSteps(job: Job, way: Way): Step[] {
  const units = job.shop.units;
  return [
    ...way.prepare,
    markBlank(job),
    measureThickness(job, units),
    measureSizes(job, units),
    measureSquare(units),
    step(
      markup`Warm the machine up for 10 to 15 minutes, then home it. Nothing loose on gantry, spindle, bed or cutter? Bed clean?`,
    ),
    measureCutters(cuttersOf(job, way), units),
  ];
}

/** The number that the step has in which length and width of the blank are measured, after those of the way. */
export function sizesStepNumber(prepare: readonly Step[]): number {
  return prepare.length + 3;
}

function markBlank(job: Job): Step {
  const corner = markedCorner(job);
  const vertical = corner.x > 0 ? 'right' : 'left';
  const level = corner.y > 0 ? 'upper' : 'lower';
  const edges = job.blank.marked;
  const marked =
    edges.length === 0
      ? markup``
      : markup` Pencil a line along the ${edges.join(' and the ')} edge, on both faces: ${edges.length === 1 ? 'this is the reference edge' : 'these are the reference edges'}.`;
  const part = partOf(job);
  const faces = markup`Write <b>FRONT</b> on one face of the blank and <b>BACK</b> on the other.`;
  if (part !== null)
    return step(
      markup`${faces} Looking at the front, write a big <b>M</b> where the picture has it: inside ${part.name}, which becomes the part, in its corner towards the ${level} and the ${vertical} edge. Write another on the back <b>in that same place of the wood</b>. If a cut will take an M away, tape a note over the next place that stays.${marked}`,
    );
  return step(
    markup`${faces} Looking at the front, write a big <b>M</b> in the corner of the ${level} and the ${vertical} edge, and another on the back <b>in that same corner of the wood</b>.${marked}`,
  );
}

function measureThickness({ blank }: Job, units: Units): Step {
  const unit = unitText(units);
  const places = ['M corner', 'next corner', 'across', 'last corner', 'middle'];
  return step(
    markup`Measure the thickness at the four corners and in the middle. Wanted: ${lengthText(blank.thickMm, units)}, ${spreadText(blank.thickSpread.distribution, units)}.`,
    ...places.map((label) => ({ label, unit })),
  );
}

function measureSizes(job: Job, units: Units): Step {
  const { blank } = job;
  const unit = unitText(units);
  const size = (mm: number): string => lengthText(mm, units);
  return step(
    markup`Measure between left and right edge, ${size(blank.widthAtYMm)} up from the lower edge, and between lower and upper edge, ${size(blank.heightAtXMm)} in from the left edge, both at half the thickness, ${size(blank.thickMm / 2)} from either face. Wanted: ${size(blank.widthMm)}, ${spreadText(blank.widthSpread.distribution, units)}, and ${size(blank.heightMm)}, ${spreadText(blank.heightSpread.distribution, units)}.`,
    { label: 'left to right', unit },
    { label: 'lower to upper', unit },
  );
}

function measureSquare(units: Units): Step {
  const unit = unitText(units);
  return step(
    markup`Hold a square in the M corner, on the face and then up the edges. Write down the gap at the end of the square's blade. Lay the blank on the flat bed and feel under it for hollows.`,
    { label: 'corner', unit },
    { label: 'edges', unit },
    { label: 'hollow', unit },
  );
}

function measureCutters(cutters: readonly Cutter[], units: Units): Step {
  const unit = unitText(units);
  const each = cutters.map((cutter) => {
    const out =
      cutter.stickOutMm === null ? '' : `, ${lengthText(cutter.stickOutMm, units)} out of the nut`;
    const flute =
      cutter.fluteMm === null ? '' : `, flutes ${lengthText(cutter.fluteMm, units)} long`;
    return markup`<li> ${cutter.name}: ${lengthText(cutter.diameterMm, units)} across${flute}${out} </li>`;
  });
  return step(
    markup`Lay the cutters ready, clean and sharp, and measure them across the flutes. Never run one above the speed marked on it. <ul> ${each} </ul>`,
    ...cutters.map((cutter) => ({ label: cutter.name, unit })),
  );
}

/** Every cutter that the job uses, once. */
function cuttersOf(job: Job, way: Way): Cutter[] {
  const all = [...way.cutters, ...job.features.map((feature) => feature.cutter)];
  return all.filter((cutter, i) => all.findIndex((other) => other.name === cutter.name) === i);
}
