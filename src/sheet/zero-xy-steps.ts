import type { Job, Zero, ZeroXy } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import type { Placing } from '../setup/placing.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Laid } from './place-words.ts';
import { fromLeftWords, fromNearWords, zeroWords } from './place-words.ts';
import { pieceOf } from '../sweep/piece.ts';
import { sideStopName } from './locating/stops/side-stop.ts';
import type { Located } from './locating/way.ts';
import type { Step } from './step.ts';
import { step } from './step.ts';
import { unitText } from './words.ts';

/** X and Y zero as far as it is set before the blank lies there. */
export function zeroBeforeLaying(job: Job, placing: Placing, xy: ZeroXy): Step[] {
  switch (xy.kind) {
    case 'stops':
      return [
        step(
          markup`<b>X and Y zero, before the blank is laid:</b> with ${xy.tool.name}, spindle still, touch the contact faces of the fence and of ${sideStopName(job, placing)}, from the side where the blank will lie${touchedAt(job, placing, xy.at, 'as it will lie')}. Take off what the tool and the cutter's radius add. Zero is ${zeroWords(job, placing)}.`,
        ),
      ];
    case 'milled-stops':
      return [
        step(
          markup`<b>X and Y zero: nothing to touch.</b> It is the zero from which the stops were milled, ${zeroWords(job, placing)}.`,
        ),
      ];
    case 'dowels':
    case 'nest':
      return [
        step(
          markup`<b>X and Y zero: nothing to touch.</b> It is the zero from which ${xy.kind === 'nest' ? 'the nest was cut' : 'the bed was drilled for the dowels'}, ${zeroWords(job, placing)}.`,
        ),
      ];
    case 'kept':
      return [keptZero(job, placing, xy.how)];
    case 'edges':
    case 'middle':
    case 'hole':
      return [];
    default:
      return unreachable(xy);
  }
}

/** X and Y zero as far as it is touched on the blank itself. */
export function zeroAfterLaying(job: Job, placing: Placing, located: Located, xy: ZeroXy): Step[] {
  const unit = unitText(job.shop.units);
  switch (xy.kind) {
    case 'edges':
      return [
        step(
          markup`<b>X and Y zero on the blank's edges:</b> with ${xy.tool.name}, spindle still, touch the ${placing.end.edge} edge and the ${placing.base.edge} edge of the blank ${located.atEdges}${touchedAt(job, placing, xy.at, 'as it lies')}. Take off what the tool and the cutter's radius add. Zero is ${zeroWords(job, placing)}.`,
        ),
      ];
    case 'middle':
      return [
        step(
          markup`<b>X and Y zero at the middle:</b> with ${xy.tool.name}, spindle still, touch left and right edge ${located.atMiddle}${levelWith(job, placing, xy.at, 'y')}; half of their sum is X zero. Touch near and far edge${levelWith(job, placing, xy.at, 'x')}; half of their sum is Y zero. Zero is ${zeroWords(job, placing)}.`,
          ...['left', 'right', 'half sum X', 'near', 'far', 'half sum Y'].map((label) => ({
            label,
            unit,
          })),
        ),
      ];
    case 'hole':
      return [
        step(
          markup`<b>X and Y zero in the hole ${xy.feature}:</b> with ${xy.tool.name}, spindle still, touch its wall left and right, then near and far, at half the blank's thickness; half of each sum is its centre. Zero is ${zeroWords(job, placing)}.`,
          ...['left', 'right', 'half sum X', 'near', 'far', 'half sum Y'].map((label) => ({
            label,
            unit,
          })),
        ),
      ];
    case 'stops':
    case 'milled-stops':
    case 'dowels':
    case 'nest':
    case 'kept':
      return [];
    default:
      return unreachable(xy);
  }
}

/** Written down, a lost zero can be found again, and a wrong one is seen. */
export function noteZero(job: Job, next: Zero | null): Step[] {
  const unit = unitText(job.shop.units);
  const why =
    next?.xy.kind === 'kept'
      ? 'The second placing uses this zero again.'
      : 'A lost step shows here later.';
  return [
    step(
      markup`Write down the machine's own coordinates of X and Y zero. ${why}`,
      { label: 'X', unit },
      { label: 'Y', unit },
    ),
  ];
}

function keptZero(job: Job, placing: Placing, how: 'held' | 're-homed' | 'power-off'): Step {
  const place = zeroWords(job, placing);
  const rest: Record<typeof how, Html> = {
    held: markup`Do not set it again: the motors have held it.`,
    're-homed': markup`The machine was homed again: call up the zero you wrote down, do not touch anything off.`,
    'power-off': markup`The power was off: home, call up the zero you wrote down, and check with the M corner below that no step of the motors is missing.`,
  };
  return step(
    markup`<b>X and Y zero: the one of the first placing</b>, now ${place}. ${rest[how]}`,
  );
}

function touchedAt(job: Job, placing: Placing, at: Point<'layout'> | null, laid: Laid): Html {
  if (at === null) return markup``;
  return markup`, at the crosses of the picture (X: ${fromNearWords(job, placing, at.y)}; Y: ${fromLeftWords(job, placing, at.x, laid)})`;
}

function levelWith(job: Job, placing: Placing, at: Point<'layout'> | null, axis: 'x' | 'y'): Html {
  const { lowX, lowY, highX, highY } = pieceOf(job, placing).box;
  const mm = axis === 'y' ? (at?.y ?? (lowY + highY) / 2) : (at?.x ?? (lowX + highX) / 2);
  return markup`, ${axis === 'y' ? fromNearWords(job, placing, mm) : fromLeftWords(job, placing, mm, 'as it lies')}`;
}
