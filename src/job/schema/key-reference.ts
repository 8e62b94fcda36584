import { jobSchema, shopSchema } from './published.ts';

interface Node {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: Node | boolean;
  readonly items?: Node | readonly Node[];
  readonly anyOf?: readonly Node[];
}

/** The key reference, Markdown: every key of both files, what it means, an example. Made from the JSON Schemas. */
export function keyReference(): string {
  const shop = new Set(Object.keys((shopSchema() as Node).properties ?? {}));
  const job = rows(jobSchema() as Node, '').filter(
    ({ path }) => path === 'name' || !shop.has(path.split(/[.[]/)[0] ?? ''),
  );
  return [
    '# Keys',
    '',
    'Made from the schemas in `schema/`; a test keeps it up to date. **Bold**: must be there (when the group it stands in is). `[ ]`: each of a list. `< >`: a name of your own.',
    '',
    'Lengths: mm, or with a unit (`1/4 in`, `3/8"`, `1 1/2 in`, `25 thou`, `5 µm`). Slopes: `0.3 per 200` or `0.4 deg`. Spreads: `±0.4`, `±0.4 triangular`, `±0.2 95%`, `0.05 sd`, `half-normal 0.03`, `0..0.2`, `arcsine ±0.1`, `{readings: [0.04, -0.01, 0.02]}`, `{gauge: caliper}`, `{spread: ±0.3, recurs: setup}`; `0` switches a source off.',
    '',
    '## Job file',
    '',
    ...table(job),
    '',
    '## Shop file',
    '',
    'A job file may hold any of these too; what it says counts for that job.',
    '',
    ...table(rows(shopSchema(), '')),
    '',
  ].join('\n');
}

interface Row {
  readonly path: string;
  readonly isNeeded: boolean;
  readonly node: Node;
}

/** The long form of a spread is explained once, above the tables. */
const isLongSpread = (node: Node): boolean => node.properties?.['readings'] !== undefined;

function rows(node: Node, path: string): readonly Row[] {
  if (isLongSpread(node)) return [];
  const own = Object.entries(node.properties ?? {}).flatMap(([key, child]) => {
    const inner = path === '' ? key : `${path}.${key}`;
    const row: Row = { path: inner, isNeeded: node.required?.includes(key) ?? false, node: child };
    return [row, ...rows(child, inner)];
  });
  const { items, additionalProperties: named } = node;
  const listed = isNode(items) ? rows(items, `${path}[ ]`) : [];
  const byName = typeof named === 'object' ? rows(named, `${path}.< >`) : [];
  const either = (node.anyOf ?? []).filter(isDescribed).flatMap((one) => rows(one, path));
  return [...own, ...listed, ...byName, ...either];
}

/** A mapping whose keys mean something by themselves, as opposed to another way of writing one value. */
const isDescribed = ({ properties = {} }: Node): boolean =>
  Object.values(properties).some(({ description }) => description !== undefined);

const isNode = (items: Node['items']): items is Node =>
  items !== undefined && !Array.isArray(items);

const table = (of: readonly Row[]): readonly string[] => [
  '| key | means | for example |',
  '|---|---|---|',
  ...of.map(({ path, isNeeded, node }) => {
    const key = isNeeded ? `**\`${path}\`**` : `\`${path}\``;
    const words = (node.enum ?? []).map((word) => `\`${String(word)}\``).join(', ');
    const means = [node.description ?? '', words].filter((part) => part !== '').join(': ');
    const example = (node.examples ?? []).map((one) => `\`${yamlOf(one)}\``).join(', ');
    return `| ${key} | ${means} | ${example} |`;
  }),
];

/** A value in the short form of YAML. */
function yamlOf(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(yamlOf).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${yamlOf(inner)}`)
      .join(', ')}}`;
  return String(value);
}
