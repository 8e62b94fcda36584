import { outlineIn } from '../drawing/read.ts';
import type { Shape } from '../job.ts';
import type { RawOutline } from '../schema/raw-job.ts';
import type { Context } from './context.ts';
import { fault, note } from './context.ts';

/** An outline out of a drawing; null, with its faults, when it cannot be had. */
export function outlineOf(context: Context, raw: RawOutline): Shape | null {
  const bytes = context.drawings.get(raw.drawing);
  if (bytes === undefined) {
    fault(
      context,
      [raw, 'drawing'],
      `the drawing ${raw.drawing} is not there`,
      'write its place from this file',
    );
    return null;
  }
  const read = outlineIn(raw.drawing, bytes, raw.named, raw.units ?? null);
  if (!read.ok) {
    for (const { message, instead } of read.faults)
      fault(context, [raw, 'named'], message, instead);
    return null;
  }
  if (read.value.note !== null) note(context, [raw, 'named'], `${raw.drawing}: ${read.value.note}`);
  return { kind: 'outline', path: read.value.path };
}
