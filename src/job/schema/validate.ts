import type { Fault } from '../fault.ts';
import type { Holder, Places } from '../file/places.ts';
import type { Issue, Schema } from './build.ts';
import { issuesOf } from './build.ts';
import { faultsOf, plainIssues, walk } from './issues.ts';
import { probablyMeant } from './closest.ts';
import { NOT_YET } from './later.ts';
import { openPath } from './examples.ts';

/** What is sound of a file, and every fault of its form. */
export interface Validated<T> {
  /** The file with its faulty keys and list items taken out, so that the rest can be looked at too. */
  readonly sound: T;
  readonly faults: readonly Fault[];
  /** Mappings and lists out of which something was taken: what is missing there is not missing. */
  readonly touched: ReadonlySet<object>;
  /** Those out of which a faulty value was taken: what is left may not be what was meant. */
  readonly spoilt: ReadonlySet<object>;
}

/** Checks a root mapping; takes faulty parts out of it, in place. */
export function validated<W, T>(
  whole: Schema<W>,
  part: Schema<T>,
  root: Holder,
  places: Places,
): Validated<T> {
  const issues = issuesOf(whole, root).flatMap((issue) => plainIssues(issue));
  const faults = issues
    .filter((issue) => !isExplained(issue, issues, root))
    .flatMap((issue) => faultsOf(issue, root, places));
  const [touched, spoilt] = [new Set<object>(), new Set<object>()];
  // Taking a part out can leave its holder without something it needs; each round shrinks the file.
  let left: readonly Issue[] = issues;
  while (left.length > 0) {
    // All are found before any is taken, because list places shift.
    const cuts = left.flatMap((issue) => cutsFor(issue, root));
    for (const { holder, key, item, spoils } of cuts) {
      if (item === null) Reflect.deleteProperty(holder, key);
      else if (holder instanceof Array && holder.includes(item))
        (holder as unknown[]).splice(holder.indexOf(item), 1);
      touched.add(holder);
      if (spoils) spoilt.add(holder);
    }
    if (cuts.length === 0) break;
    left = partIssues(part, root);
  }
  return { sound: root as T, faults, touched, spoilt };
}

const partIssues = <T>(part: Schema<T>, root: Holder): readonly Issue[] =>
  issuesOf(part, root).flatMap((issue) => plainIssues(issue));

/** A missing key whose misspelling, or whose later form, is reported already. */
function isExplained(issue: Issue, all: readonly Issue[], root: Holder): boolean {
  if (!walk(root, issue.path).isMissing) return false;
  const outer = openPath(issue.path.slice(0, -1));
  const missing = String(issue.path.at(-1));
  return all.some(
    (other) =>
      other.code === 'unrecognized_keys' &&
      String(other.path) === String(issue.path.slice(0, -1)) &&
      other.keys.some(
        (key) =>
          probablyMeant(key, [missing]) !== null || (outer !== '' && NOT_YET[outer]?.includes(key)),
      ),
  );
}

interface Cut {
  readonly holder: Holder;
  readonly key: PropertyKey;
  /** The list item to take out; null for a key of a mapping. */
  readonly item: object | null;
  readonly spoils: boolean;
}

/** What has to go for this issue: an unknown key, a faulty value, or the item or mapping that lacks something. */
function cutsFor(issue: Issue, root: Holder): readonly Cut[] {
  if (issue.code === 'unrecognized_keys') {
    const holder = walk(root, issue.path).value as Holder;
    return issue.keys.map((key) => ({ holder, key, item: null, spoils: false }));
  }
  // Of a list of mappings one item can go; a pair without its second number goes as a whole.
  for (let path = issue.path; path.length > 0; path = path.slice(0, -1)) {
    const { holder, value, isMissing } = walk(root, path);
    const key = path.at(-1)!;
    if (!Array.isArray(holder) && !isMissing) return [{ holder, key, item: null, spoils: true }];
    if (Array.isArray(holder) && isMapping(value))
      return [{ holder, key, item: value, spoils: true }];
  }
  return [];
}

const isMapping = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
