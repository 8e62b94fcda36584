import type { Need } from '../job.ts';
import type { RawNeed } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm, pointMm } from './lengths.ts';

/** A need, and the mapping it was written in. */
export interface KnownNeed {
  readonly need: Need;
  readonly raw: RawNeed;
}

export function needsOf(context: Context, raws: readonly RawNeed[]): readonly KnownNeed[] {
  return raws.flatMap((raw) => {
    const need = needOf(context, raw);
    return need === null ? [] : [{ need, raw }];
  });
}

function needOf(context: Context, raw: RawNeed): Need | null {
  const { name, concentric, misalignment } = raw;
  const withinMm = mm(raw.within);
  if ((concentric === undefined) === (misalignment === undefined)) {
    if (concentric !== undefined || !context.touched.has(raw))
      fault(
        context,
        startPlace(context, raw),
        concentric === undefined
          ? `the need ${name} does not say what it is about`
          : `the need ${name} is about two things`,
        'write one of concentric: [shaft hole, pocket] or misalignment: [70, 120]',
      );
    return null;
  }
  if (concentric !== undefined) return { kind: 'concentric', name, features: concentric, withinMm };
  return misalignment === undefined
    ? null
    : { kind: 'misalignment', name, at: pointMm(misalignment), withinMm };
}
