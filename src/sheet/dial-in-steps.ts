import type { DialledAxis, DialledIn, Job, Units } from '../job/job.ts';
import { lengthFormulas, type LengthFormula } from '../measure/length-formula.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { deviationText, lengthText, trueMinus, unitText } from './words.ts';

/** What is moved of the second placing's zero: offsets that were measured, and what each blank measures. */
export function dialInSteps(job: Job): Step[] {
  const { dialled } = job;
  const steps = dialled === undefined ? [] : [storedStep(job.shop.units, dialled)];
  return [
    ...steps,
    ...lengthFormulas(job).flatMap((formula): Step[] => {
      const told = dialled?.[formula.axis] ?? null;
      // The length of the test piece is in an offset that was found without a caliper.
      if (told !== null && told.calipered === null) return [];
      return [lengthStep(job.shop.units, formula, told !== null)];
    }),
  ];
}

function storedStep(units: Units, { x, y, measured, file }: DialledIn): Step {
  const told: readonly (readonly [string, DialledAxis])[] = [
    ...(x === null ? [] : [['X', x] as const]),
    ...(y === null ? [] : [['Y', y] as const]),
  ];
  const words = told.map(([axis, one]) => `${axis} ${signed(one.offsetMm, units)}`).join(', ');
  return step(
    markup`<b>Dial in what the test piece told:</b> move the zero of this placing by <b>${words}</b>; X positive to the right, Y away from you. Measured ${measured}, kept in ${lastPart(file)}. It holds only while stops, their height, thickness, cutters and zero are as they were: when one was changed or set anew, leave this out and turn a test piece over again.`,
    ...told.map(([axis]) => ({ label: `${axis} zero moved by`, unit: unitText(units) })),
  );
}

function lengthStep(
  units: Units,
  { axis, factor, nominalMm, caliperAtMm, example }: LengthFormula,
  isDialled: boolean,
): Step {
  const A = axis.toUpperCase();
  const edge = axis === 'x' ? 'lower' : 'left';
  const times = Math.abs(factor - 1) < 5e-4 ? '' : `${trueMinus(factor.toFixed(2))} × `;
  const head: Html = isDialled
    ? markup`<b>And this blank's own length:</b>`
    : markup`<b>This blank's own length, if you calipered it:</b> how far it is off shifts the back against the front here, and can be dialled out.`;
  return step(
    markup`${head} caliper it along ${A}, ${lengthText(caliperAtMm, units)} from its ${edge} edge, and move the ${A} zero of this placing by <b>${times}(measured − ${lengthText(nominalMm, units)})</b>; positive is ${axis === 'x' ? 'to the right' : 'away from you'}. For example ${lengthText(example.measuredMm, units)} measured: ${signed(example.offsetMm, units)}.`,
    { label: 'measured', unit: unitText(units) },
    { label: `${A} zero moved by`, unit: unitText(units) },
  );
}

/** After the part: what to write down, and what makes the next prediction better. */
export function learnSteps(job: Job): Step[] {
  const combs =
    'test-piece' in job.jig
      ? markup` The combs of the test piece have a card of their own: read it, write the walls into a readings file, and <b>flipwright learn</b> works out what to dial in for the next part.`
      : markup``;
  return [
    step(
      markup`Log these figures with <b>flipwright learn</b>, part by part: it tells whether parts come out as predicted, whether they drift, and what to dial in.${combs}`,
    ),
  ];
}

const signed = (mm: number, units: Units): string =>
  `${mm < 0 ? '' : '+'}${deviationText(mm, units)}`;

const lastPart = (path: string): string => path.replace(/^.*[/\\]/, '');
