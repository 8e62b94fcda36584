import { takenWhenLeftOut } from './left-out.ts';
import { jobSchema, shopSchema } from './published.ts';
import { sketchOf } from './sketches.ts';

/** The part of a JSON Schema that a reader of keys needs. */
interface Node {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Node | boolean;
  readonly items?: Node | readonly Node[];
  readonly anyOf?: readonly Node[];
  readonly 'x-unit'?: string;
}

/** One key of the job or the shop file. */
export interface KeyRow {
  /** `blank.size`, `front[ ].at` (each of a list), `touch-off.< >.thick` (a name of the user's own). */
  readonly path: string;
  readonly file: 'job' | 'shop';
  readonly isNeeded: boolean;
  readonly means: string;
  /** Words that may stand there, when only certain ones may. */
  readonly words: readonly string[];
  /** Unit of a bare number; null where no number stands. */
  readonly unit: string | null;
  /** In the short form of YAML. */
  readonly examples: readonly string[];
  readonly leftOut: string | null;
  readonly sketch: string | null;
}

/** Every key of a job file, without those of the shop file that it may hold too. */
export function jobRows(): readonly KeyRow[] {
  const shop = new Set(Object.keys((shopSchema() as Node).properties ?? {}));
  return rows(jobSchema(), '', 'job').filter(
    ({ path }) => path === 'name' || !shop.has(path.split(/[.[]/)[0] ?? ''),
  );
}

/** Every key of a shop file. */
export const shopRows = (): readonly KeyRow[] => rows(shopSchema(), '', 'shop');

/** The long form of a spread is explained once, above the tables. */
const isLongSpread = (node: Node): boolean => node.properties?.['readings'] !== undefined;

function rows(node: Node, path: string, file: KeyRow['file']): readonly KeyRow[] {
  if (isLongSpread(node)) return [];
  const own = Object.entries(node.properties ?? {}).flatMap(([key, child]) => {
    const inner = path === '' ? key : `${path}.${key}`;
    return [
      rowOf(inner, child, node.required?.includes(key) ?? false, file),
      ...rows(child, inner, file),
    ];
  });
  const { items, additionalProperties: named } = node;
  const listed = isNode(items) ? rows(items, `${path}[ ]`, file) : [];
  const byName = typeof named === 'object' ? rows(named, `${path}.< >`, file) : [];
  const either = (node.anyOf ?? []).filter(isDescribed).flatMap((one) => rows(one, path, file));
  return [...own, ...listed, ...byName, ...either];
}

const rowOf = (path: string, node: Node, isNeeded: boolean, file: KeyRow['file']): KeyRow => ({
  path,
  file,
  isNeeded,
  means: node.description ?? '',
  words: (node.enum ?? []).map(String),
  unit: unitOf(node),
  examples: (node.examples ?? []).map(yamlOf),
  leftOut: takenWhenLeftOut(path),
  sketch: sketchOf(path),
});

/** Of the value itself, of each of a list, or of one way of writing it. */
function unitOf(node: Node): string | null {
  if (node['x-unit'] !== undefined) return node['x-unit'];
  for (const one of [...itemsOf(node), ...(node.anyOf ?? [])]) {
    const unit = unitOf(one);
    if (unit !== null) return unit;
  }
  return null;
}

/** A mapping whose keys mean something by themselves, as opposed to another way of writing one value. */
const isDescribed = ({ properties = {} }: Node): boolean =>
  Object.values(properties).some(({ description }) => description !== undefined);

const isNode = (items: Node['items']): items is Node =>
  items !== undefined && !Array.isArray(items);

const itemsOf = ({ items = [] }: Node): readonly Node[] => (isNode(items) ? [items] : items);

/** A value in the short form of YAML. */
function yamlOf(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(yamlOf).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${yamlOf(inner)}`)
      .join(', ')}}`;
  return String(value);
}
