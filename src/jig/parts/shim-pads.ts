import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { figure, made, type Step } from '../answer.ts';
import { roundedBox } from '../plate/curve.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/** Small holes tell the pads apart. */
const MARK_RADIUS_MM = 1;
const MARK_PITCH_MM = 4;

/** Pads of rising thickness to lay under a blank or a stop; as many small holes as steps. */
export function shimPads(sizes: JigSizesOf<'shim-pads'>): Step<readonly JigPart[]> {
  const [sideMm, stepMm, count] = [given(sizes.side), given(sizes.step), given(sizes.count)];
  const refusal = unmet('shim-pads', [
    {
      what: 'side',
      isMm: sideMm,
      least: count * MARK_PITCH_MM + MARK_PITCH_MM,
      because: `${count} marks do not fit in`,
    },
    { what: 'step', isMm: stepMm, least: 0.1, because: 'no printer makes a layer of it' },
  ]);
  if (refusal !== null) return refusal;
  return made(
    Array.from({ length: count }, (_, i): JigPart => {
      const thickMm = Number(((i + 1) * stepMm).toFixed(6));
      const name = `shim pad ${figure(thickMm)}`;
      return {
        name,
        purpose: `Lifts by ${figure(thickMm)} mm.`,
        count: 4,
        form: {
          kind: 'plate',
          plate: {
            name,
            thickMm,
            outline: roundedBox({ x: 0, y: 0 }, { x: sideMm, y: sideMm }, partNumbers.cornerMm),
            holes: Array.from({ length: i + 1 }, (_, k) => ({
              ends: [{ x: MARK_PITCH_MM * (k + 1), y: MARK_PITCH_MM }] as const,
              radiusMm: MARK_RADIUS_MM,
              depthMm: null,
              seat: null,
            })),
            words: [],
          },
        },
        notes: ['Measure each with a caliper and write it on: a print is good to 0.1 mm or so.'],
      };
    }),
  );
}
