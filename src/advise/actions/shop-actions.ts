import type { Edit } from '../../job/edit.ts';
import { depthCounts, outlinesThatCount } from '../../job/what-counts.ts';
import { isAboutPlan } from '../critical.ts';
import { ACTION_MINUTES, CARE } from '../numbers.ts';
import { action, type Action, type Case } from './action.ts';

/** What can be done about machine, bed, cutters and clamps. */
export function shopActions(of: Case): readonly Action[] {
  const { job } = of;
  const plan = job.needs.some((need) => isAboutPlan(need) || need.kind === 'goes-on');
  return [
    ...(plan ? machine() : []),
    ...(depthCounts(job) ? bed() : []),
    ...oneCutter(of),
    ...pusher(of),
    ...testPiece(of),
  ];
}

const at = (key: string, value: string, group = 'machine'): Edit => ({ path: [group, key], value });

function machine(): readonly Action[] {
  return [
    action(
      'square the machine',
      'Square the machine: measure how its Y axis leans (flipwright square) and take it out, or let the programs allow for it',
      ['machine lean'],
      ACTION_MINUTES.squareMachine,
      [at('lean', CARE.squaredLean)],
    ),
    action(
      'measure the scales',
      'Measure how long both axes travel (flipwright square) and put the steps right',
      ['machine scale'],
      ACTION_MINUTES.measureScale,
      [at('scale-x', CARE.measuredScale), at('scale-y', CARE.measuredScale)],
    ),
    action(
      'square the cutter',
      'Set the spindle square to the bed both ways',
      ['cutter lean'],
      ACTION_MINUTES.tramCutter,
      [at('cutter-lean-x', CARE.trammed), at('cutter-lean-y', CARE.trammed)],
    ),
    action(
      'take up the play',
      'Take the play out of the drives, or come to every cut that matters from the same side',
      ['lost motion'],
      ACTION_MINUTES.takeUpPlay,
      [at('lost-motion', CARE.lostMotion)],
    ),
  ];
}

function bed(): readonly Action[] {
  return [
    action(
      'level the bed',
      'Skim the spoilboard, or shim it (flipwright bed), so that it is level and flat under the travel',
      ['bed'],
      ACTION_MINUTES.skimBed,
      [
        at('lean-x', CARE.skimmedLean, 'bed'),
        at('lean-y', CARE.skimmedLean, 'bed'),
        at('unevenness', CARE.skimmedUnevenness, 'bed'),
      ],
    ),
  ];
}

/** Outlines that some need compares, cut with cutters of more than one name. */
function oneCutter({ job, variants }: Case): readonly Action[] {
  const flat = outlinesThatCount(job).filter(({ cutter }) => cutter.kind === 'flat');
  const names = [...new Set(flat.map(({ cutter }) => cutter.name))];
  if (names.length < 2) return [];
  return names.map((name) => {
    const edits = (['front', 'back'] as const).flatMap((face) => {
      const list = variants.written([face]);
      if (!Array.isArray(list)) return [];
      return (list as readonly { readonly name?: unknown; readonly cutter?: unknown }[]).flatMap(
        (one, k): readonly Edit[] =>
          flat.some((feature) => feature.name.replace(/ \(\d+,\d+\)$/, '') === one.name) &&
          one.cutter !== name
            ? [{ path: [face, k, 'cutter'], value: name }]
            : [],
      );
    });
    return action(
      `one cutter: ${name}`,
      `Cut with the same cutter from both faces, ${name}, so that its size counts the same on both`,
      ['cutters'],
      ACTION_MINUTES.sameCutter,
      edits,
    );
  });
}

function pusher({ job, variants }: Case): readonly Action[] {
  if (job.hold.pusher !== 'none' || job.locating === 'nest') return [];
  const drag: readonly Edit[] =
    variants.written(['hold', 'clamp-drag']) === undefined
      ? []
      : [{ path: ['hold', 'clamp-drag'], value: null }];
  return [
    action(
      'a pusher',
      'Push the blank against the stops with a cam or a wedge while it is clamped',
      ['clamping'],
      ACTION_MINUTES.pusher,
      [{ path: ['hold', 'pusher'], value: 'towards-stops' }, ...drag],
    ),
  ];
}

/** So many turns of a test piece; more than these only show more of its own scatter. */
const TURNS = [1, 3] as const;

function testPiece({ job }: Case): readonly Action[] {
  const isDialled = job.needs.some(({ kind }) =>
    ['concentric', 'misalignment', 'web'].includes(kind),
  );
  if (!isDialled) return [];
  return TURNS.map((turns): Action => ({
    name: turns === 1 ? 'a test piece' : `a test piece, ${turns} turns`,
    words: `Cut a test piece in the same set-up, turn it ${turns === 1 ? 'once' : `${turns} times`}, and dial in the offset it shows (flipwright learn)`,
    targets: ['test piece'],
    edits: [],
    dialledTurns: turns,
    minutes: ACTION_MINUTES.testPiece + turns * ACTION_MINUTES.turnTestPiece,
    changes: 'the work',
  }));
}
