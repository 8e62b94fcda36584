import type { Job, Zero } from '../../job/job.ts';
import type { Source } from '../../sources/source.ts';

/** Sources that one thing in the shop makes larger or smaller together. */
export interface Group {
  /** Stable, for programs. */
  readonly id: string;
  /** For the middle of a sentence. */
  readonly words: string;
  readonly sources: readonly Source[];
  readonly measure: Measure;
}

/**
 * By what it is measured: a length, a lean (over the length of its `per`), a height or travel under a dial, a gap, a cutter's
 * diameter, a touch-off; or nothing that a shop has.
 */
export type Measure =
  | 'length'
  | 'small length'
  | 'lean'
  | 'edge lean'
  | 'swept lean'
  | 'gap'
  | 'diameter'
  | 'touch'
  | 'none';

/** Every source that has a size, in groups; where a blank comes to rest in its play has none. */
export function groupsOf(job: Job, sources: readonly Source[]): readonly Group[] {
  const groups = new Map<string, Group & { sources: Source[] }>();
  for (const source of sources) {
    if (FIXED.some((pattern) => pattern.test(source.id))) continue;
    const { id, words } = groupOf(job, source);
    const known = groups.get(id);
    if (known === undefined)
      groups.set(id, { id, words, sources: [source], measure: measureOf(id) });
    else known.sources.push(source);
  }
  return [...groups.values()];
}

const FIXED: readonly RegExp[] = [/^rocking$/, /^side of the cup$/, /^play /];

function groupOf(job: Job, source: Source): { readonly id: string; readonly words: string } {
  if (source.id === 'milled faces')
    return { id: 'repeatability', words: "the machine's repeatability" };
  const touched = /^(z|zero) touch (front-up|back-up)/.exec(source.id);
  if (touched === null) return { id: source.id, words: source.words };
  const zero: Zero = touched[2] === 'front-up' ? job.zero.frontUp : job.zero.backUp;
  const tool = touched[1] === 'z' ? zero.z.tool : 'tool' in zero.xy ? zero.xy.tool : null;
  if (tool === null) return { id: source.id, words: source.words };
  const sameName = source.text === tool.spread.text;
  return {
    id: `touch-off with ${tool.name}${sameName ? '' : ` ${source.text}`}`,
    words: `touching off with ${tool.name}`,
  };
}

const MEASURES: readonly (readonly [RegExp, Measure])[] = [
  [/^blank (width|height|thickness)$|^stop spacing$|^drilling$/, 'length'],
  [/^blank square$|^taper|^thickness taper|^bevel$|^crook$/, 'edge lean'],
  [/^machine lean$|^fence angle$|^stop square$|^laid$|^scale/, 'lean'],
  [/^bed lean|^cutter lean/, 'swept lean'],
  [/^seat gaps$|^cup$/, 'gap'],
  [/^radius of |^dowel |^hole diameter$|^nest clearance$/, 'diameter'],
  [/^touch-off |^zero return$/, 'touch'],
  [
    /^repeatability$|^lost motion$|^local error$|^bed unevenness$|^stop give$|^clamp drag$/,
    'small length',
  ],
];

const measureOf = (id: string): Measure =>
  MEASURES.find(([pattern]) => pattern.test(id))?.[1] ?? 'none';
