import type { Edit, Plain } from '../../job/edit.ts';
import type { Job, Units } from '../../job/job.ts';

/** Source: international yard and pound agreement, 1959. */
const MM_PER_INCH = 25.4;

/** One place that can be moved, mm, in steps that a person writes. */
export interface Dial {
  /** For the middle of a sentence: `the first button of the fence`. */
  readonly words: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** As the job has it now. */
  readonly now: number;
  /** Where most people would put it. */
  readonly plain: number;
}

/** The places of one way of locating, and the jobs that moving them gives. */
export interface Places {
  readonly dials: readonly Dial[];
  /** Null where the places contradict each other, or leave no wood. */
  readonly jobAt: (at: readonly number[]) => Job | null;
  /** Changes of the job file, only of what is elsewhere than now. */
  readonly editsAt: (at: readonly number[]) => readonly Edit[];
}

/** What a key of the file says of some of the dials. */
export interface Written {
  readonly path: Edit['path'];
  /** Which dials it takes. */
  readonly from: number;
  readonly count: number;
  readonly value: (at: readonly number[], mm: (value: number) => Plain) => Plain;
}

/** The edits of what differs from now. */
export function editsOf(
  dials: readonly Dial[],
  written: readonly Written[],
  units: Units,
): Places['editsAt'] {
  return (at) =>
    written.flatMap(({ path, from, count, value }): readonly Edit[] => {
      const isSame = dials.slice(from, from + count).every(({ now }, k) => now === at[from + k]!);
      return isSame ? [] : [{ path, value: value(at, (mm) => lengthIn(mm, units)) }];
    });
}

/** A length as it is written in a file of that shop: bare millimetres, or inches with their unit. */
export const lengthIn = (mm: number, units: Units): Plain =>
  units === 'inch' ? `${Number((mm / MM_PER_INCH).toFixed(4))} in` : Number(mm.toFixed(2));

/** Steps along an edge and in height: what can be set with a rule. */
export const stepsOf = (units: Units): { readonly along: number; readonly up: number } =>
  units === 'inch' ? { along: MM_PER_INCH / 16, up: MM_PER_INCH / 32 } : { along: 1, up: 0.5 };

/** The value nearest to one that was wished for: on a whole step within the dial's ends, or where it is now. */
export function snapped({ low, high, step, now }: Dial, wish: number): number {
  if (Math.abs(wish - now) < step / 2) return now;
  const whole = Math.round(wish / step) * step;
  const [first, last] = [
    Math.ceil(low / step - 1e-9) * step,
    Math.floor(high / step + 1e-9) * step,
  ];
  return rounded(Math.min(last, Math.max(first, whole)));
}

/** Without the dust of binary fractions. */
const rounded = (mm: number): number => Number(mm.toFixed(6));
