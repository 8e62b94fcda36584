import type { Edit } from '../../job/edit.ts';
import type { ZeroXy } from '../../job/job.ts';
import { said } from '../../job/text/said.ts';
import { depthCounts } from '../../job/what-counts.ts';
import { criticalPlace, isAboutHeight, isAboutPlan } from '../critical.ts';
import { mirrored, placingsInOrder, tenths } from '../laid.ts';
import { ACTION_MINUTES } from '../numbers.ts';
import { HEIGHT_WAYS, heightEdits, heightWayOf, heightWords } from '../ways/heights.ts';
import { action, type Action, type Case } from './action.ts';
import { zeroEdits } from './stops-actions.ts';

/** What can be done about where the zeros come from. */
export function zeroActions(of: Case): readonly Action[] {
  return [...keepZero(of), ...middle(of), ...touchLevel(of), ...heights(of), ...touchOver(of)];
}

function secondXy({ job }: Case): ZeroXy {
  return (job.first === 'front' ? job.zero.backUp : job.zero.frontUp).xy;
}

function keepZero(of: Case): readonly Action[] {
  const second = secondXy(of);
  const [, placing] = placingsInOrder(of.job);
  if (second.kind === 'kept') {
    if (second.how === 'held') return [];
    const words =
      second.how === 'power-off'
        ? 'Leave the motors powered between the placings and keep the zero'
        : 'Do not home again between the placings: keep the zero';
    return [
      action('keep the zero', words, ['zero'], ACTION_MINUTES.keepZero, [
        { path: ['zero', placing, 'kept'], value: 'held' },
      ]),
    ];
  }
  if (second.kind === 'hole') return [];
  if (of.job.locating === 'nest' && second.kind === 'nest') return [];
  return [
    action(
      'keep the zero',
      'Do not touch the zero again: keep that of the first placing, with the motors held',
      ['zero'],
      ACTION_MINUTES.keepZero,
      zeroEdits(of.variants, placing, 'kept'),
    ),
  ];
}

function middle(of: Case): readonly Action[] {
  const { job, variants } = of;
  if (job.locating !== 'stops' || secondXy(of).kind === 'middle') return [];
  const [first, second] = placingsInOrder(job);
  return [
    action(
      'zero at the middle',
      'Set zero at the middle of the blank both times: touch both edges and halve, so that its size drops out',
      ['size', 'zero', 'where zero is touched'],
      ACTION_MINUTES.middle * 2 * job.parts.count,
      [...zeroEdits(variants, first, 'middle'), ...zeroEdits(variants, second, 'middle')],
    ),
  ];
}

/** X found at the height of what matters, and Y below it: a lean or a turned fence then counts for nothing there. */
function touchLevel({ job }: Case): readonly Action[] {
  const { x, y } = criticalPlace(job, isAboutPlan);
  const edits = (['front-up', 'back-up'] as const).flatMap((placing): readonly Edit[] => {
    const { xy } = placing === 'front-up' ? job.zero.frontUp : job.zero.backUp;
    if (xy.kind !== 'stops' && xy.kind !== 'edges' && xy.kind !== 'middle') return [];
    const [atX, atY] = mirrored([x, y], placing, job.turn, job.blank);
    const now = xy.at ?? (xy.kind === 'middle' ? halves(job.blank) : null);
    if (now !== null && Math.abs(now.x - atX) < 2 && Math.abs(now.y - atY) < 2) return [];
    return [{ path: ['zero', placing, 'xy-touched'], value: [tenths(atX), tenths(atY)] }];
  });
  if (edits.length === 0) return [];
  return [
    action(
      'touch level with it',
      `Touch X level with what matters (y = ${said(tenths(y))} mm) and Y in line with it, where a lean has done nothing yet`,
      ['where zero is touched'],
      ACTION_MINUTES.touchElsewhere,
      edits,
    ),
  ];
}

const halves = ({ widthMm, heightMm }: Case['job']['blank']) => ({
  x: widthMm / 2,
  y: heightMm / 2,
});

function heights({ job, variants }: Case): readonly Action[] {
  if (!depthCounts(job)) return [];
  const now = heightWayOf(job);
  return HEIGHT_WAYS.filter((way) => way[0] !== now[0] || way[1] !== now[1]).map((way) =>
    action(
      `heights ${way.join(', ')}`,
      `Touch ${heightWords(way)}`,
      ['heights', 'thickness'],
      ACTION_MINUTES.heights,
      heightEdits(variants, way),
    ),
  );
}

function touchOver({ job }: Case): readonly Action[] {
  if (!depthCounts(job) || !job.needs.some(isAboutHeight)) return [];
  const { x, y } = criticalPlace(job, isAboutHeight);
  const edits = (['front-up', 'back-up'] as const).flatMap((placing): readonly Edit[] => {
    const { at } = (placing === 'front-up' ? job.zero.frontUp : job.zero.backUp).z;
    const [atX, atY] = mirrored([x, y], placing, job.turn, job.blank);
    if (at !== null && Math.abs(at.x - atX) < 2 && Math.abs(at.y - atY) < 2) return [];
    return [{ path: ['zero', placing, 'z-touched'], value: [tenths(atX), tenths(atY)] }];
  });
  if (edits.length === 0) return [];
  return [
    action(
      'touch Z over it',
      `Touch Z where it matters, over [${said(tenths(x))}, ${said(tenths(y))}] of the blank, so that bed and cup count for nothing there`,
      ['where height is touched'],
      ACTION_MINUTES.touchElsewhere,
      edits,
    ),
  ];
}
