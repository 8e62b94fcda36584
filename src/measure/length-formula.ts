import { BATCH } from '../num/batch.ts';
import type { Job } from '../job/job.ts';
import { misfitModel } from '../setup/misfit.ts';
import { placingsOf } from '../setup/place.ts';
import { dialSign } from '../setup/dial-sign.ts';
import { judgedPlace } from './dial-in.ts';

/**
 * Second placing's offset along one machine axis from a calipered size of the blank:
 * `offset = factor x (measured - nominal)`, mm.
 */
export interface LengthFormula {
  readonly axis: 'x' | 'y';
  readonly factor: number;
  readonly nominalMm: number;
  /** Where to caliper: the size along the axis, at this distance from the blank's lower or left edge, mm. */
  readonly caliperAtMm: number;
  /** A blank 0.30 over its size, and what to dial in. */
  readonly example: { readonly measuredMm: number; readonly offsetMm: number };
}

const OVER_MM = 0.3;

/**
 * How the size of each blank moves the back against the front in this set-up, by the model of turning
 * over itself; none where it does not, as with opposite corners.
 */
export function lengthFormulas(job: Job): readonly LengthFormula[] {
  const at = judgedPlace(job);
  const probe: Job = {
    ...job,
    needs: [{ kind: 'misalignment', name: 'formula', at, withinMm: 1 }],
  };
  const misfit = misfitModel(probe);
  return (['x', 'y'] as const).flatMap((axis): LengthFormula[] => {
    const column = misfit.deviations.findIndex(
      ({ kind }) => kind === (axis === 'x' ? 'width' : 'height'),
    );
    if (column < 0) return [];
    const draws = new Float64Array(misfit.deviations.length * BATCH);
    const out = new Float64Array(misfit.outputCount * BATCH);
    draws[column * BATCH] = OVER_MM;
    misfit.evaluate(draws, 1, out);
    const moved = out[axis === 'x' ? 0 : BATCH]! / OVER_MM;
    if (Math.abs(moved) < 1e-6) return [];
    const factor = -dialSign(job, axis) * moved;
    const nominalMm = axis === 'x' ? job.blank.widthMm : job.blank.heightMm;
    return [
      {
        axis,
        factor,
        nominalMm,
        caliperAtMm: touchedAt(job, axis),
        example: { measuredMm: nominalMm + OVER_MM, offsetMm: factor * OVER_MM },
      },
    ];
  });
}

/** Level with the contact that feels the size, so that edges out of parallel do not come in. */
function touchedAt(job: Job, axis: 'x' | 'y'): number {
  const { frontUp, backUp } = placingsOf(job);
  const edges = axis === 'x' ? ['left', 'right'] : ['lower', 'upper'];
  const places = [frontUp, backUp].flatMap(({ contacts }) =>
    contacts.filter(({ edge }) => edges.includes(edge)).map(({ alongEdgeMm }) => alongEdgeMm),
  );
  if (places.length === 0) return axis === 'x' ? job.blank.widthAtYMm : job.blank.heightAtXMm;
  return places.reduce((sum, mm) => sum + mm, 0) / places.length;
}
