import type { Cutter } from '../job.ts';
import type { At, Context } from './context.ts';
import { fault, note } from './context.ts';
import type { Drawer } from './cutters.ts';
import { cutterNamed } from './cutters.ts';

/** The flat cutter that mills faces in place: the one that is named, or the only one there is. */
export function millOf(
  context: Context,
  raw: { readonly cutter?: string | undefined },
  at: At,
  drawer: Drawer,
  words: { readonly taken: string; readonly silent: string },
): Cutter | null {
  if (raw.cutter !== undefined) {
    const cutter = cutterNamed(context, drawer, [raw, 'cutter'], raw.cutter);
    if (cutter !== null && cutter.kind !== 'flat')
      fault(
        context,
        [raw, 'cutter'],
        `${cutter.name} is a ${cutter.kind} cutter, which cannot mill an upright face`,
        'name a flat cutter',
      );
    return cutter;
  }
  const flat = drawer.cutters.filter((cutter) => cutter.kind === 'flat');
  const [only] = flat;
  if (only !== undefined && flat.length === 1) {
    note(context, at, `${words.taken} with ${only.name}, the only flat cutter`);
    return only;
  }
  if (drawer.isKnown && !context.touched.has(raw))
    fault(context, at, words.silent, `write cutter: ${only?.name ?? 'flat 6'}`);
  return null;
}
