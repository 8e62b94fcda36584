import type { Cutter, StopsJob, Units } from '../job/job.ts';
import { markup } from './html.ts';
import { markedCorner } from './places.ts';
import type { SheetInput } from './sheet-input.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { lengthText, spreadText, unitText } from './words.ts';

/** Before anything is cut: mark and measure the blank, make the stops, warm the machine. */
export function prepareSteps(input: SheetInput): Step[] {
  const { job } = input;
  const units = job.shop.units;
  return [
    ...beforeSizes(input),
    measureSizes(job, units),
    measureSquare(units),
    step(
      markup`Warm the machine up for 10 to 15 minutes, then home it. Nothing loose on gantry, spindle, bed or cutter? Bed clean?`,
    ),
    measureCutters(job, units),
  ];
}

/** The number that the step has in which length and width of the blank are measured. */
export function sizesStepNumber(input: SheetInput): number {
  return beforeSizes(input).length + 1;
}

function beforeSizes(input: SheetInput): Step[] {
  const { job } = input;
  return [printStops(input), markBlank(job), measureThickness(job, job.shop.units)];
}

function printStops({ job, fileNames, stops }: SheetInput): Step {
  const units = job.shop.units;
  const files = fileNames.length === 0 ? 'no file' : fileNames.join(', ');
  const screws = stops.flatMap((stop) => stop.screws);
  const threads = [...new Set(screws.map((screw) => screw.thread))];
  const pins = stops.flatMap((stop) => stop.pins);
  const pinned =
    pins.length === 0
      ? ''
      : ` and ${pins.length} steel pins ${lengthText(pins[0]!.diameterMm, units)} thick`;
  const fixing =
    screws.length === 0
      ? ''
      : ` Have ${screws.length} ${threads.join('/')} screws${pinned} at hand.`;
  return step(
    markup`Print or cut the ${stops.length === 1 ? 'stop' : 'stops'} from the ${fileNames.length === 1 ? 'file' : 'files'} beside this sheet: ${files}.${fixing} Take burrs and strings off the contact faces.`,
  );
}

function markBlank(job: StopsJob): Step {
  const corner = markedCorner(job);
  const vertical = corner.x > 0 ? 'right' : 'left';
  const level = corner.y > 0 ? 'upper' : 'lower';
  const edges = job.blank.marked;
  const marked =
    edges.length === 0
      ? markup``
      : markup` Pencil a line along the ${edges.join(' and the ')} edge, on both faces: ${edges.length === 1 ? 'this is the reference edge' : 'these are the reference edges'}.`;
  return step(
    markup`Write <b>FRONT</b> on one face of the blank and <b>BACK</b> on the other. Looking at the front, write a big <b>M</b> in the corner of the ${level} and the ${vertical} edge, and another on the back <b>in that same corner of the wood</b>.${marked}`,
  );
}

function measureThickness({ blank }: StopsJob, units: Units): Step {
  const unit = unitText(units);
  const places = ['M corner', 'next corner', 'across', 'last corner', 'middle'];
  return step(
    markup`Measure the thickness at the four corners and in the middle. Wanted: ${lengthText(blank.thickMm, units)}, ${spreadText(blank.thickSpread.distribution, units)}.`,
    ...places.map((label) => ({ label, unit })),
  );
}

function measureSizes(job: StopsJob, units: Units): Step {
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

function measureCutters(job: StopsJob, units: Units): Step {
  const unit = unitText(units);
  const cutters = cuttersOf(job);
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
export function cuttersOf(job: StopsJob): Cutter[] {
  const milling = job.stops.made.kind === 'milled-in-place' ? [job.stops.made.cutter] : [];
  const all = [...milling, ...job.features.map((feature) => feature.cutter)];
  return all.filter((cutter, i) => all.findIndex((other) => other.name === cutter.name) === i);
}
