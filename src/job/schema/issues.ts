import type { Fault, Place } from '../fault.ts';
import type { Holder, Places } from '../file/places.ts';
import { keyPlace, startOf, valuePlace } from '../file/places.ts';
import type { Issue } from './build.ts';
import { inWords, probablyMeant } from './closest.ts';
import { exampleAt, openPath } from './examples.ts';
import { NOT_YET } from './later.ts';

/** An issue with the whole path to it: of a union, the issues of the form that was probably meant. */
export function plainIssues(issue: Issue, before: readonly PropertyKey[] = []): readonly Issue[] {
  const path = [...before, ...issue.path];
  if (issue.code !== 'invalid_union') return [{ ...issue, path }];
  const form = issue.errors.find(
    (issues) => issues.length > 0 && !issues.every((one) => one.path.length === 0 && isOfForm(one)),
  );
  return form === undefined ? [{ ...issue, path }] : form.flatMap((one) => plainIssues(one, path));
}

/** Whether an issue says that the whole value has another form (a text, not a list). */
const isOfForm = (issue: Issue): boolean =>
  issue.code === 'invalid_type' ||
  (issue.code === 'invalid_union' &&
    plainIssues(issue).every((one) => one.code === 'invalid_union' && one.path.length === 0));

/** The faults of one plain issue, at their places. */
export function faultsOf(issue: Issue, root: Holder, places: Places): readonly Fault[] {
  const { holder, value, isMissing } = walk(root, issue.path);
  if (issue.code === 'unrecognized_keys')
    return unknownKeys(issue.keys, issue.message.split(' '), issue.path, value as Holder, places);
  const last = issue.path.at(-1);
  const key = typeof last === 'symbol' || last === undefined ? '' : last;
  const label = labelOf(issue.path);
  if (isMissing)
    return [
      at(
        startOf(places, holder),
        `${whereOf(issue.path)}${label} is missing`,
        exampleAt(issue.path),
      ),
    ];
  const place = valuePlace(places, holder, key);
  if (value === null)
    return [at(place, `${label} is empty (an unquoted # begins a remark)`, exampleAt(issue.path))];
  return [at(place, ...saidOf(issue, label, value))];
}

function saidOf(issue: Issue, label: string, value: unknown): readonly [string, string] {
  switch (issue.code) {
    case 'custom': {
      const instead: unknown = issue.params?.['instead'];
      return [`${label} ${issue.message}`, typeof instead === 'string' ? instead : ''];
    }
    case 'invalid_value': {
      const words = issue.values.map(String);
      const word = shown(value);
      return [`${label} ${word} is not known`, `write ${inWords(words)}`];
    }
    case 'too_small':
    case 'too_big': {
      if (value === '') return [`${label} is empty`, exampleAt(issue.path)];
      if (!Array.isArray(value)) break;
      const wanted = issue.code === 'too_small' ? issue.minimum : issue.maximum;
      const entries = value.length === 1 ? 'entry' : 'entries';
      return [
        `${label} has ${value.length} ${entries} and needs ${wanted}`,
        'separate them with commas, and write decimals with a point',
      ];
    }
    case 'invalid_union':
      return [`${label} is ${kindOf(value)}`, issue.message];
    case 'invalid_type':
      if (issue.expected === 'string')
        return [
          `${label} is ${kindOf(value)} and should be a text`,
          `write it in quotes: "${shown(value)}"`,
        ];
      return [
        `${label} is ${kindOf(value)} and should be ${EXPECTED[issue.expected] ?? issue.expected}`,
        insteadOf(issue.message, issue.expected) ?? exampleAt(issue.path),
      ];
    case 'invalid_element':
    case 'invalid_format':
    case 'invalid_key':
    case 'not_multiple_of':
    case 'unrecognized_keys':
  }
  return [`${label} ${shown(value)} is not what belongs here`, exampleAt(issue.path)];
}

/** Some forms say by themselves what to write. */
function insteadOf(message: string, expected: string): string | null {
  if (message.startsWith('write')) return message;
  return expected === 'int' ? 'write a number without a point' : null;
}

const EXPECTED: Readonly<Record<string, string>> = {
  object: 'key: value pairs',
  record: 'key: value pairs',
  array: 'a list in [ ]',
  tuple: 'a list in [ ]',
  number: 'a number',
  int: 'a whole number',
};

function unknownKeys(
  keys: readonly string[],
  known: readonly string[],
  path: readonly PropertyKey[],
  holder: Holder,
  places: Places,
): readonly Fault[] {
  const later = NOT_YET[openPath(path)] ?? [];
  const free = known.filter((key) => !(key in holder));
  return keys.map((key) => {
    const place = keyPlace(places, holder, key);
    if (later.includes(key)) return at(place, `${key} is not in this version yet`, 'take it out');
    const near = probablyMeant(key, free);
    if (near !== null) return at(place, `the key ${key} is not known`, `did you mean ${near}?`);
    return at(
      place,
      `the key ${key} is not known`,
      free.length === 0 ? 'take it out' : `write ${inWords(free)}`,
    );
  });
}

const at = (place: Place, message: string, instead: string): Fault => ({
  ...place,
  message,
  instead,
});

/** The value at a path, and the mapping or list it stands in. */
export function walk(root: Holder, path: readonly PropertyKey[]) {
  let holder: Holder = root;
  let value: unknown = root;
  let isMissing = false;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) break;
    holder = value as Holder;
    isMissing = !Object.hasOwn(holder, step);
    value = (holder as Readonly<Record<PropertyKey, unknown>>)[step];
  }
  return { holder, value, isMissing };
}

/** What messages call a value: its nearest key. */
export function labelOf(path: readonly PropertyKey[]): string {
  return [...path].reverse().find((step) => typeof step === 'string') ?? 'the file';
}

/** The key that a missing key belongs to: `stops: `. */
function whereOf(path: readonly PropertyKey[]): string {
  const outer = path.slice(0, -1);
  return outer.length === 0 ? '' : `${labelOf(outer)}: `;
}

function kindOf(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a group of keys';
  if (typeof value === 'number') return `the number ${value}`;
  if (typeof value === 'string') return `the text ${shown(value)}`;
  return shown(value);
}

/** A value in a message: never longer than a line. */
function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
