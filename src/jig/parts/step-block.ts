import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { cannot, figure, made, type Step } from '../answer.ts';
import { polygonCurve } from '../plate/curve.ts';
import type { Xy } from '../plate/drawing.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** More steps than this are a slip of the finger. */
const MOST_STEPS = 40;

/** A staircase to stand under the heel of a clamp at any height up to its own. */
export function stepBlock(job: Job, sizes: JigSizesOf<'step-block'>): Step<readonly JigPart[]> {
  const [riseMm, runMm, wideMm] = [given(sizes.rise), given(sizes.run), given(sizes.wide)];
  const wantedMm = sizes.high ?? job.blank.thickMm + riseMm;
  const refusal = unmet('step-block', [
    { what: 'rise', isMm: riseMm, least: 0.5, because: 'its steps could not be told apart' },
    { what: 'run', isMm: runMm, least: 4, because: 'a heel finds no hold on a step' },
    { what: 'wide', isMm: wideMm, least: 12, because: 'it would fall over' },
  ]);
  if (refusal !== null) return refusal;
  const steps = Math.max(2, Math.ceil(wantedMm / riseMm - 1e-9));
  if (steps > MOST_STEPS)
    return cannot(
      `step-block: ${steps} steps of ${figure(riseMm)} mm up to ${figure(wantedMm)} mm are too many`,
      `rise: ${figure(Math.ceil((wantedMm / MOST_STEPS) * 10) / 10)} or more`,
    );
  const longMm = runMm * (steps + 1);
  // Up from the left: each step a riser and a tread; the top tread runs to the back.
  const stairs = Array.from({ length: steps }, (_, step) => steps - 1 - step).flatMap(
    (step): readonly Xy[] => {
      const y = (step + 1) * riseMm;
      const endMm = step === steps - 1 ? longMm : (step + 1) * runMm;
      return [
        { x: endMm, y },
        { x: step * runMm, y },
      ];
    },
  );
  const corners = [{ x: 0, y: 0 }, { x: longMm, y: 0 }, ...stairs];
  return made([
    {
      name: 'step block',
      purpose: 'Stands under the heel of a clamp: take the step just over the blank.',
      count: 2,
      form: {
        kind: 'plate',
        plate: {
          name: 'step block',
          thickMm: wideMm,
          outline: polygonCurve(corners),
          holes: [],
          words: [],
        },
      },
      notes: [
        `${steps} steps of ${figure(riseMm)} mm, up to ${figure(steps * riseMm)} mm. Printed lying on its side, so that the layers run up and down the steps.`,
      ],
    },
  ]);
}
