import { z } from 'zod';
import type { Result } from '../../num/result.ts';
import type { TextFault } from '../text/text-fault.ts';

/**
 * The one file that speaks to zod. A `Schema<T>` says whether plain values have the hand-written
 * raw type `T`; nothing is transformed, so a value that passes is a `T` as it stands.
 */
export type Schema<T> = z.ZodType<T>;
export type Issue = z.core.$ZodIssue;

/** What a key means, for editors and for the key reference. */
export interface About {
  readonly description: string;
  readonly examples?: readonly unknown[];
}

/** A mapping with these keys and no others. The message of an unknown key is the list of known ones. */
export function keyed<T extends object>(shape: { [K in keyof T]-?: Schema<T[K]> }): Schema<T> {
  const known = Object.keys(shape).join(' ');
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? known : undefined),
  }) as unknown as Schema<T>;
}

/** A mapping from names that people choose. */
export const named = <T>(value: Schema<T>): Schema<Readonly<Record<string, T>>> =>
  z.record(z.string(), value);

export const optional = <T>(schema: Schema<T>): Schema<T | undefined> => schema.optional();
export const listOf = <T>(item: Schema<T>): Schema<readonly T[]> => z.array(item);
export const pairOf = <T>(item: Schema<T>): Schema<readonly [T, T]> => z.tuple([item, item]);
export const threeOf = <T>(item: Schema<T>): Schema<readonly [T, T, T]> =>
  z.tuple([item, item, item]);
export const oneOf = <const T extends string>(...words: T[]): Schema<T> => z.literal(words);
export const yesOrNo = (): Schema<'yes' | 'no' | boolean> => z.literal(['yes', 'no', true, false]);
/** A name or a remark; never empty. */
export const text = (): Schema<string> => z.string().min(1);
export const whole = (): Schema<number> => z.int();

/** Either of two; `wanted` is what to write when it is neither. */
export const either = <A, B>(a: Schema<A>, b: Schema<B>, wanted: string): Schema<A | B> =>
  z.union([a, b], { error: wanted });

/** A number or a text that `read` can make out. */
export function written(
  wanted: string,
  read: (text: string) => Result<unknown, TextFault>,
): Schema<number | string> {
  return z.union([z.number(), z.string()], { error: wanted }).superRefine((value, context) => {
    const result = read(String(value));
    if (result.ok) return;
    for (const { message, instead } of result.faults)
      context.addIssue({ code: 'custom', message, params: { instead } });
  });
}

/** A plain number; `wrongWith` says what is wrong with one, or null. */
export function number(
  wanted: string,
  wrongWith: (value: number) => string | null,
): Schema<number> {
  return z.number({ error: wanted }).superRefine((value, context) => {
    const wrong = wrongWith(value);
    if (wrong === null) return;
    context.addIssue({ code: 'custom', message: `${value} ${wrong}`, params: { instead: wanted } });
  });
}

/** The same values, with what they mean. */
export const about = <T>(schema: Schema<T>, description: string, ...examples: T[]): Schema<T> =>
  schema.meta(examples.length === 0 ? { description } : { description, examples });

/** The same values, with the unit that a bare number is in, for `explain` and editors. */
export const inUnit = <T>(schema: Schema<T>, unit: string): Schema<T> =>
  schema.meta({ 'x-unit': unit });

/** Issues of a value against a schema; none when the value is a `T`. */
export function issuesOf<T>(schema: Schema<T>, value: unknown): readonly Issue[] {
  const result = schema.safeParse(value);
  return result.success ? [] : result.error.issues;
}

/** JSON Schema (draft 7) of what a person may write. */
export const jsonSchemaOf = <T>(schema: Schema<T>): Readonly<Record<string, unknown>> =>
  z.toJSONSchema(schema, { io: 'input', target: 'draft-7' });
