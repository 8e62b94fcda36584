import { JIG_SIZES, type JigPartName, type JigSize, type JigWishes } from '../jig-sizes.ts';
import type { RawJig } from '../schema/raw-jig.ts';
import { mm } from './lengths.ts';

/** The parts asked for, each size as it was written or its default. */
export function jigOf(raw: RawJig): JigWishes {
  const wishes: Partial<Record<JigPartName, Readonly<Record<string, number | null>>>> = {};
  for (const part of Object.keys(JIG_SIZES) as JigPartName[]) {
    const wish = raw[part];
    if (wish === undefined || wish === 'no' || wish === false) continue;
    const written = typeof wish === 'object' ? wish : {};
    const sizes: Readonly<Record<string, JigSize>> = JIG_SIZES[part];
    wishes[part] = Object.fromEntries(
      Object.entries(sizes).map(([key, size]) => {
        const value = written[key];
        if (value === undefined) return [key, size.value];
        return [key, size.kind === 'count' ? Number(value) : mm(value)];
      }),
    );
  }
  return wishes as JigWishes;
}
