import type { Blank, Need } from '../../job.ts';
import type { Context } from '../../resolve/context.ts';
import { fault } from '../../resolve/context.ts';
import type { RawNeed } from '../../schema/raw-job.ts';
import { said } from '../../text/said.ts';

/** A point that is judged must be on the blank. */
export function checkPoint(
  context: Context,
  blank: Blank | null,
  need: Extract<Need, { kind: 'misalignment' }>,
  raw: RawNeed,
): void {
  if (raw.misalignment === undefined || blank === null) return;
  const sizes = { x: blank.widthMm, y: blank.heightMm };
  for (const [index, axis] of (['x', 'y'] as const).entries()) {
    if (need.at[axis] >= 0 && need.at[axis] <= sizes[axis]) continue;
    fault(
      context,
      [raw.misalignment, index],
      `misalignment at ${axis} = ${said(need.at[axis])} mm is off the blank, which spans 0 to ${said(sizes[axis])} mm`,
      `write 0 to ${said(sizes[axis])}`,
    );
  }
}
