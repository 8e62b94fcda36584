import { JIG_SIZES, type JigPartName, type JigSize, type JigWishes } from '../jig-sizes.ts';
import type { RawJig } from '../schema/raw-jig.ts';
import type { Context } from './context.ts';
import { fault } from './context.ts';
import { mm } from './lengths.ts';

/** More of one thing than a bench needs. */
const MOST = 100;

/** The parts asked for, each size as it was written or its default. */
export function jigOf(context: Context, raw: RawJig): JigWishes {
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
        if (size.kind !== 'count') return [key, mm(value)];
        const count = Number(value);
        if (count < 1 || count > MOST)
          fault(
            context,
            [written, key],
            `${key} ${count} is not a number of them`,
            `write 1 to ${MOST}`,
          );
        return [key, count];
      }),
    );
  }
  return wishes as JigWishes;
}
