import type { Edit } from '../../job/edit.ts';
import { dowelHolesIn } from '../../job/located.ts';
import { limitsOf } from '../../num/spread-of.ts';
import { hasWaste } from '../dowel-places.ts';
import { ACTION_MINUTES, CARE } from '../numbers.ts';
import { editsOfWay } from '../ways/edits-of-way.ts';
import { wayOf, type Located, type Way } from '../ways/way.ts';
import { locatedWords } from '../ways/words.ts';
import type { Variants } from '../../job/variants.ts';
import { action, type Action, type Case, type Target } from './action.ts';

/** What can be done with dowels, and the other turn. */
export function looseActions(of: Case): readonly Action[] {
  return [...dowelsInstead(of), ...otherTurn(of), ...takeUp(of), ...clearance(of)];
}

/** Everything that hangs on stops goes with them. */
const OF_STOPS: readonly Target[] = [
  'locating',
  'size',
  'edges',
  'stops made',
  'contact height',
  'fence contacts',
  'side contact',
  'seat',
  'zero',
  'where zero is touched',
];

function dowelsInstead({ job, variants }: Case): readonly Action[] {
  if (job.locating === 'dowels') return dowelsFarApart({ job, variants });
  // Holes that stay in the part are no advice; compare shows what they would do.
  if (!hasWaste(job)) return [];
  const way: Way = { turn: job.turn, located: { kind: 'dowels', layout: 'line' }, zero: 'kept' };
  const edits = editsOfWay(variants, way);
  if ('because' in edits) return [];
  return [
    action(
      'dowels',
      'Stand two dowels on the turn line, far apart, through holes drilled through blank and bed in one clamping, and push the blank one way on them',
      OF_STOPS,
      2 * ACTION_MINUTES.drillDowels * job.parts.count,
      edits,
    ),
  ];
}

/** Two dowels that stand nearer than they could. */
function dowelsFarApart({ job, variants }: Pick<Case, 'job' | 'variants'>): readonly Action[] {
  if (job.locating !== 'dowels') return [];
  const way: Way = { ...wayOf(job), located: { kind: 'dowels', layout: 'line' } };
  const edits = editsOfWay(variants, way);
  if ('because' in edits) return [];
  const at = edits.find(({ path }) => path.length === 1 && path[0] === 'dowels')?.value;
  const places = (at as { readonly at?: unknown } | undefined)?.at;
  if (!Array.isArray(places)) return [];
  return [
    action(
      'dowels far apart',
      `Stand two dowels on the turn line as far apart as they go: ${JSON.stringify(places).replaceAll(',', ', ').slice(1, -1)}`,
      ['dowel play'],
      0,
      [{ path: ['dowels', 'at'], value: places as Edit['value'] }],
    ),
  ];
}

function otherTurn({ job, variants }: Case): readonly Action[] {
  const turn = job.turn === 'about-y' ? 'about-x' : 'about-y';
  const now = wayOf(job);
  return turned(now.located).flatMap((located) => {
    const edits = editsOfWay(variants, { turn, located, zero: now.zero });
    if ('because' in edits) return [];
    const axis = turn === 'about-y' ? 'Y' : 'X';
    return [
      action(
        'the other turn',
        `Turn it about ${axis} instead: ${locatedWords(located)}`,
        ['turn', ...OF_STOPS, 'dowel play'],
        0,
        edits,
      ),
    ];
  });
}

/** The same way of locating, as far as the other turn allows. */
function turned(located: Located): readonly Located[] {
  if (located.kind === 'stops') return [{ ...located, backUp: located.frontUp }];
  return located.kind === 'dowels' && located.layout === 'line' ? [located] : [];
}

function looseKeys(variants: Variants): Edit['path'] | null {
  if (variants.written(['dowels']) !== undefined) return ['dowels'];
  if (variants.written(['stops', 'dowel']) !== undefined) return ['stops', 'dowel'];
  return variants.written(['nest']) === undefined ? null : ['nest'];
}

/** Pushed along the turn line, so that play comes back to the same side of the blank. */
function takeUp({ job, variants }: Case): readonly Action[] {
  const keys = looseKeys(variants);
  if (keys === null) return [];
  const written = variants.written([...keys, 'take-up']);
  if (written !== undefined && written !== 'anywhere') return [];
  const way = job.turn === 'about-y' ? 'near' : 'left';
  const along = keys.length === 2 ? (job.turn === 'about-y' ? 'left' : 'near') : way;
  return [
    action(
      'push it one way',
      `Push the blank the same way in both placings, to the ${along} side, until the play is taken up`,
      ['dowel play'],
      job.parts.count,
      [{ path: [...keys, 'take-up'], value: along }],
    ),
  ];
}

function clearance({ job, variants }: Case): readonly Action[] {
  const holes = dowelHolesIn(job);
  const keys = looseKeys(variants);
  if (holes === null || keys === null || holes.clearance.kind !== 'stated') return [];
  const [low, high] = limitsOf(holes.clearance.spread.distribution);
  if (high - low < 0.05) return [];
  return [
    action(
      'choose the dowels',
      'Measure dowels and a trial hole, and choose those that go in with 0.02 to 0.06 mm of play',
      ['seat'],
      ACTION_MINUTES.measurePins,
      [{ path: [...keys, 'clearance'], value: CARE.measuredClearance }],
    ),
  ];
}
